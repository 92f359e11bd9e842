// A season folder to a house and back: nothing is lost, whatever the names look like.
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { afterAll, expect, test } from 'vitest';
import {
  NEEDED_FILES,
  readFolder,
  readSeason,
  writeFolder,
  writeSeason,
} from '../../../api/folder/index.ts';
import type { House } from '../../../planner/index.ts';
import { aBrew, aHouse, aJar, aTank, aYeast } from '../../builders/plan.ts';

const seasons = fileURLToPath(new URL('../../seasons/', import.meta.url));
const encoder = new TextEncoder();

const bytesOf = (texts: { readonly [file: string]: string }) =>
  Object.fromEntries(Object.entries(texts).map(([file, text]) => [file, encoder.encode(text)]));

const readBack = (house: House) => readSeason(bytesOf(writeSeason(house)));

test.each([
  ['=cmd()', "'=cmd()"],
  ['+1', "'+1"],
  ['-2', "'-2"],
  ['@SUM(A1)', "'@SUM(A1)"],
  ["'=twice", "''=twice"],
  ["'tis", "'tis"],
  ['a=b', 'a=b'],
])('a name %s is written as %s, which no spreadsheet runs (OWASP, CSV injection)', (name, cell) => {
  const house = aHouse({ brews: [aBrew({ brew: name, additions: [name] })] });
  const text = writeSeason(house)['brews.csv'];
  const [, row = ''] = text.split('\r\n');
  expect(row.startsWith(`${cell},`) || row.startsWith(`"${cell}",`)).toBe(true);
  expect(readBack(house).house).toEqual(house);
});

const folders: string[] = [];
afterAll(() => Promise.all(folders.map((folder) => rm(folder, { recursive: true }))));

test.each(['lantern-shed', 'quay-seven'])(
  '%s is written as it was read, byte for byte',
  async (name) => {
    const { house, problems } = await readFolder(join(seasons, name));
    expect(problems).toEqual([]);
    if (house === null) throw new Error('not read');
    const folder = await mkdtemp(join(tmpdir(), 'barmline-folder-'));
    folders.push(folder);
    await writeFolder(folder, house);
    await expect(readFile(join(folder, 'counts.csv'))).rejects.toThrow('ENOENT');
    for (const file of NEEDED_FILES) {
      const written = await readFile(join(folder, file), 'utf8');
      expect(written, file).toBe(await readFile(join(seasons, name, file), 'utf8'));
    }
    expect((await readFolder(folder)).house).toEqual(house);
  },
);

test('what the shared columns do not hold goes through columns and keys of its own', () => {
  const house = aHouse({
    relaxed: ['gravity-ceiling'],
    weights: { 'dark-to-light': 0.5 },
    rules: { maxGeneration: 4 },
    starterDays: ['fri'],
    conditioningRoomL: 200,
    brewLengthL: 25,
    tanks: [
      aTank({
        outOfUse: [
          { from: '2027-02-01', to: '2027-02-07' },
          { from: '2027-03-01', to: '2027-03-01' },
        ],
      }),
    ],
    jars: [
      aJar({
        state: 'watch',
        sourceDryHopped: true,
        sourceAdditions: ['fruit', 'spice'],
        sourceSouring: 'kettle',
        measuredViability: 0.9,
        measuredOn: '2026-12-24',
      }),
    ],
    brews: [
      aBrew({ fades: true }),
      aBrew({ brew: 'Keeper', fades: false }),
      aBrew({ brew: 'Plain' }),
      aBrew({ brew: 'Bold', needMPerMlP: 1.75 }),
    ],
    counts: [
      {
        yeast: 'Mill Lane Ale',
        countedOn: '2027-01-03',
        harvestedOn: '2026-12-20',
        stained: 18,
        total: 200,
      },
      {
        yeast: 'Mill Lane Ale',
        countedOn: '2026-12-22',
        harvestedOn: '2026-12-20',
        millionPerMl: 1850.5,
        sourceAbv: 6.4,
        generation: 3,
      },
    ],
  });
  const texts = writeSeason(house);
  expect(texts['brews.csv'].split('\r\n')[0]).toMatch(/,fades,pitch_rate$/);
  expect(texts['counts.csv']?.split('\r\n')).toEqual([
    'yeast,counted_on,harvested_on,stained,total,million_per_ml,source_abv,generation',
    'Mill Lane Ale,2027-01-03,2026-12-20,18,200,,,1',
    'Mill Lane Ale,2026-12-22,2026-12-20,,,1850.5,6.4,3',
    '',
  ]);
  expect(texts['tanks.csv']).toContain('2027-02-01/2027-02-07|2027-03-01/2027-03-01');
  expect(readSeason(bytesOf(texts))).toMatchObject({ house, problems: [] });
});

test('columns of its own are not written where nothing stands in them', () => {
  const texts = writeSeason(aHouse());
  expect(texts['brews.csv']).not.toContain('fades');
  expect(texts['brews.csv']).not.toContain('pitch_rate');
  expect(Object.keys(texts)).not.toContain('counts.csv');
  expect(texts['tanks.csv']).not.toContain('out_of_use');
});

test('a single day is a stretch of its own', () => {
  const texts = writeSeason(aHouse());
  const [head = '', first = '', ...rest] = texts['tanks.csv'].split('\r\n');
  const tanks = [`${head},out_of_use`, `${first},2027-02-01`, ...rest].join('\r\n');
  const { house } = readSeason(bytesOf({ ...texts, 'tanks.csv': tanks }));
  expect(house?.tanks[0]?.outOfUse).toEqual([{ from: '2027-02-01', to: '2027-02-01' }]);
});

// Names as people and spreadsheets can make them: separators, quotes, backslashes, signs of formulas.
const name = fc
  .string({
    unit: fc.oneof(
      fc.constantFrom(...'|\\,;"\'=+-@ äß✓🍺'),
      fc.string({ minLength: 1, maxLength: 1, unit: 'grapheme' }),
    ),
    minLength: 1,
    maxLength: 12,
  })
  .map((text) => text.replace(/[\p{Cc}\p{Cs}]/gu, '').trim())
  .filter((text) => text.length > 0 && text.length <= 200);

test('any names come back as they were', () => {
  fc.assert(
    fc.property(
      fc.uniqueArray(name, { minLength: 2, maxLength: 5 }),
      fc.array(name, { maxLength: 3 }),
      fc.double({ min: 1.001, max: 1.2, noNaN: true }),
      fc.double({ min: 0, max: 1_000_000, noNaN: true }),
      (names, additions, og, value) => {
        const house = aHouse({
          name: names[0] ?? 'A',
          tanks: names.map((tank) => aTank({ tank })),
          yeasts: names.map((yeast) => aYeast({ yeast })),
          jars: names.map((jar) =>
            aJar({ jar, yeast: names[1] ?? jar, sourceAdditions: additions }),
          ),
          brews: names.map((brew) =>
            aBrew({ brew, style: names[0] ?? '', yeasts: names, additions, og, fg: 1, value }),
          ),
        });
        const { house: back, problems } = readBack(house);
        expect(problems.filter((problem) => problem.level === 'error')).toEqual([]);
        expect(back).toEqual(house);
      },
    ),
    { seed: 20270109, numRuns: 100 },
  );
});
