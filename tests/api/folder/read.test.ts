// What is said of files that are not as they should be: place, value, bound, remedy, and nothing twice.
import { mkdir, mkdtemp, rename, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterAll, beforeAll, expect, test } from 'vitest';
import {
  NEEDED_FILES,
  readFolder,
  readSeason,
  SEASON_FILES,
  writeFolder,
  writeSeason,
} from '../../../api/folder/index.ts';
import { aHouse } from '../../builders/plan.ts';

const encoder = new TextEncoder();
const texts = writeSeason(aHouse());

type File = keyof typeof texts;

/** Reads the season with some files other than they were; null: without the file. */
function reading(changes: { [file in File]?: string | Uint8Array | null }) {
  const all: { [file: string]: string | Uint8Array | null } = { ...texts, ...changes };
  return readSeason(
    Object.fromEntries(
      Object.entries(all).flatMap(([file, text]) =>
        text === null ? [] : [[file, typeof text === 'string' ? encoder.encode(text) : text]],
      ),
    ),
  );
}

const said = (changes: Parameters<typeof reading>[0]) =>
  reading(changes).problems.map(({ code, path, level }) => `${level} ${code} ${path}`);

const textOf = (file: File) => texts[file] ?? '';
const lines = (file: File) => textOf(file).split('\r\n');
const edited = (file: File, from: string | RegExp, to: string) => textOf(file).replace(from, to);

test.each(NEEDED_FILES)('without %s everything else is still read', (file) => {
  const { house, problems } = reading({ [file]: null });
  expect(house).toBeNull();
  expect(problems.map(({ code, path }) => `${code} ${path}`)).toEqual([`missing-file ${file}`]);
});

const COUNTS =
  'yeast,counted_on,harvested_on,stained,total,million_per_ml,source_abv,generation\r\n' +
  'Mill Lane Ale,2027-01-03,2026-12-20,18,200,,,2\r\n';

test('counts.csv is read if it is there', () => {
  expect(reading({}).house?.counts).toEqual([]);
  const { house, problems } = reading({ 'counts.csv': COUNTS });
  expect(problems).toEqual([]);
  expect(house?.counts).toMatchObject([
    { yeast: 'Mill Lane Ale', stained: 18, total: 200, millionPerMl: null, generation: 2 },
  ]);
});

// Each row with one thing that cannot be true.
test.each([
  [',18,200,', ',201,200,', 'contradiction counts.csv:2:stained'],
  [',18,200,', ',18,,', 'half-a-count counts.csv:2:total'],
  [',18,200,', ',,,', 'half-a-count counts.csv:2:stained'],
  ['2027-01-03', '2026-12-19', 'days-out-of-order counts.csv:2:counted_on'],
  ['Mill Lane Ale', 'Mill Lane Ales', 'unknown-yeast counts.csv:2:yeast'],
  [',18,200,', ',18,20.5,', 'bad-invalid-type counts.csv:2:total'],
  [',18,200,,', ',18,200,1200000000,', 'bad-too-big counts.csv:2:million_per_ml'],
])('a count with %s as %s is refused in its place', (from, to, place) => {
  expect(said({ 'counts.csv': COUNTS.replace(from, to) })).toEqual([`error ${place}`]);
});

test('two problems in files that have nothing to do with each other are both said', () => {
  expect(said({ 'jars.csv': null, 'brews.csv': edited('brews.csv', '1.041', '1041') })).toEqual([
    'error bad-too-big brews.csv:2:og',
    'error missing-file jars.csv',
  ]);
});

test('an unknown column is named, and what was most likely meant', () => {
  const { problems } = reading({ 'brews.csv': edited('brews.csv', 'dry_hop_day', 'dryhop day') });
  expect(problems).toMatchObject([
    { code: 'unknown-column', path: 'brews.csv:1:dryhop day', value: 'dryhop day' },
  ]);
  expect(problems[0]?.remedy).toBe('Rename it to dry_hop_day, or remove it.');
});

test('a missing column is said once, not once a row', () => {
  expect(said({ 'brews.csv': edited('brews.csv', ',og,', ',gravity,') })).toEqual([
    'error unknown-column brews.csv:1:gravity',
    'error missing-column brews.csv:1:og',
  ]);
});

test('a column that stands twice is said', () => {
  expect(said({ 'tanks.csv': edited('tanks.csv', 'max_fill_l', 'min_fill_l') })).toEqual([
    'error doubled-column tanks.csv:1:min_fill_l',
    'error missing-column tanks.csv:1:max_fill_l',
  ]);
});

test('a file without its header is not read as rows', () => {
  expect(said({ 'yeasts.csv': lines('yeasts.csv').slice(1).join('\n') })).toEqual([
    'error no-header yeasts.csv:1',
  ]);
  expect(said({ 'yeasts.csv': '' })).toEqual(['error no-header yeasts.csv:1']);
});

test('a row with a comma too many is said once, and its shifted cells are not judged', () => {
  const broken = edited('brews.csv', 'Best bitter', 'Best, bitter');
  expect(said({ 'brews.csv': broken })).toEqual(['error too-many-cells brews.csv:2']);
});

test('a quote that is not closed is said at its line', () => {
  const broken = edited('brews.csv', 'German pils', '"German pils');
  expect(said({ 'brews.csv': broken })).toEqual(['error broken-quotes brews.csv:4']);
});

test('line numbers count the lines of the file, blank ones and broken cells included', () => {
  const [head = '', first = '', ...rest] = lines('brews.csv');
  const spread = [head, '', first.replace('Best bitter', '"Best  bitter"'), ',,,', ...rest].join(
    '\n',
  );
  // header 1, blank 2, Millrace 3, blank cells 4, Quill 5
  expect(said({ 'brews.csv': spread.replace('1.054', '1054') })).toEqual([
    'error bad-too-big brews.csv:5:og',
  ]);
});

test('a byte-order mark, CRLF and LF are all read', () => {
  const lf = texts['brews.csv'].replaceAll('\r\n', '\n');
  expect(reading({ 'brews.csv': `\uFEFF${lf}` }).house).toEqual(aHouse());
  expect(reading({ 'house.json': `\uFEFF${texts['house.json']}` }).house).toEqual(aHouse());
});

test('semicolons and decimal commas are read, and said', () => {
  const german = texts['brews.csv'].replaceAll(',', ';').replace(/(\d)\.(\d)/g, '$1,$2');
  const { house, problems } = reading({ 'brews.csv': german });
  expect(house).toEqual(aHouse());
  expect(problems).toMatchObject([
    { code: 'other-separator', level: 'warning', value: 'semicolons' },
  ]);
});

test('a decimal comma between commas is an error with its remedy', () => {
  const { problems } = reading({ 'tanks.csv': edited('tanks.csv', '12,21', '"12,5",21') });
  expect(problems).toMatchObject([
    {
      path: 'tanks.csv:2:min_fill_l',
      value: '12,5',
      remedy: 'Write the number with a point: 12.5.',
    },
  ]);
});

test('an old Windows encoding is read, and said', () => {
  const latin = Uint8Array.from(texts['brews.csv'].replace('Best bitter', 'K\xf6lsch'), (letter) =>
    letter.charCodeAt(0),
  );
  const { house, problems } = reading({ 'brews.csv': latin });
  expect(house?.brews[0]?.style).toBe('Kölsch');
  expect(problems).toMatchObject([{ code: 'other-encoding', level: 'warning' }]);
});

test('UTF-16, as a spreadsheet may save it, is read, and said', () => {
  const utf16 = new Uint8Array(Buffer.from(`\uFEFF${texts['brews.csv']}`, 'utf16le'));
  const { house, problems } = reading({ 'brews.csv': utf16 });
  expect(house).toEqual(aHouse());
  expect(problems).toMatchObject([{ code: 'other-encoding', value: 'UTF-16', level: 'warning' }]);
});

test('a spreadsheet’s own file under the name of a CSV file is said to be one', () => {
  expect(said({ 'jars.csv': Uint8Array.of(0x50, 0x4b, 3, 4, 0, 0) })).toEqual([
    'error not-text jars.csv',
  ]);
});

test.each([
  ['a comma too many', /"name": "Slate Yard",/, '"name": "Slate Yard",,', 'house.json:2:24'],
  ['a comma too few', /"kind": "home",/, '"kind": "home"', 'house.json:4:3'],
  ['a brace too few', /\}\s*$/, '', 'house.json:'],
  ['a comment', /"kind"/, '// kind\n"kind"', 'house.json:3:3'],
  ['single quotes', /"home"/, "'home'", 'house.json:3:11'],
])('house.json with %s is no JSON from there on', (_what, from, to, path) => {
  const { problems } = reading({ 'house.json': edited('house.json', from, to) });
  expect(problems).toMatchObject([{ code: 'not-json' }]);
  expect(problems[0]?.path.startsWith(path)).toBe(true);
});

test('a key of house.json is placed by its line', () => {
  const wrong = edited('house.json', '"tempC": 3', '"tempC": 300');
  const line = wrong.split('\n').findIndex((text) => text.includes('"tempC"')) + 1;
  expect(said({ 'house.json': wrong })).toEqual([
    `error bad-too-big house.json:${line}:store.tempC`,
  ]);
});

test('a key that stands twice, and lists that belong in the CSV files', () => {
  expect(
    said({
      'house.json': edited('house.json', '"name"', '"tanks": [],\n  "name": "A",\n  "name"'),
    }),
  ).toEqual(['error belongs-elsewhere house.json:2:tanks', 'error doubled-key house.json:4:name']);
});

test('the sound rest is the house without the rows that are wrong and those that need them', () => {
  // without Harbour Lager, Heron has no yeast
  const { house, rest } = reading({
    'yeasts.csv': edited('yeasts.csv', 'lager,liquid', 'lagr,liquid'),
  });
  expect(house).toBeNull();
  expect(rest?.yeasts.map((row) => row.yeast)).toEqual(['Mill Lane Ale']);
  expect(rest?.brews.map((row) => row.brew)).toEqual(['Millrace', 'Quill']);
  expect(rest?.tanks).toEqual(aHouse().tanks);
});

test('a yeast row that is wrong is not said to be missing for the brews that name it', () => {
  expect(said({ 'yeasts.csv': edited('yeasts.csv', 'lager,liquid', 'lagr,liquid') })).toEqual([
    'error bad-invalid-value yeasts.csv:3:kind',
  ]);
});

test('a house whose settings are wrong is shown with the defaults in their place', () => {
  const wrong = texts['house.json'].replace(
    /\}\s*$/,
    ', "rules": { "maxJars": 3 }, "relaxed": ["x"] }',
  );
  const { rest, house } = reading({ 'house.json': wrong });
  expect(house).toBeNull();
  expect(rest).toEqual(aHouse());
});

let folder = '';
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'barmline-read-'));
});
afterAll(() => rm(folder, { recursive: true }));

test('a folder that is not there, or is a file, is a sentence', async () => {
  const nowhere = await readFolder(join(folder, 'nowhere'));
  expect(nowhere).toMatchObject({ house: null, rest: null, problems: [{ code: 'no-folder' }] });
  await writeFile(join(folder, 'file'), '');
  const file = await readFolder(join(folder, 'file'));
  expect(file.problems).toMatchObject([
    { code: 'unreadable-folder', remedy: 'Name the folder that it lies in.' },
  ]);
});

test('a file under a name in other capitals is said to want renaming', async () => {
  const here = join(folder, 'capitals');
  await writeFolder(here, aHouse());
  await rename(join(here, 'jars.csv'), join(here, 'Jars.CSV'));
  const { problems } = await readFolder(here);
  expect(problems).toMatchObject([
    { code: 'missing-file', remedy: 'Rename Jars.CSV to jars.csv.' },
  ]);
});

test('a folder in the place of a file is said', async () => {
  const here = join(folder, 'nested');
  await writeFolder(here, aHouse());
  await rm(join(here, 'jars.csv'));
  await mkdir(join(here, 'jars.csv'));
  const { problems } = await readFolder(here);
  expect(problems.map(({ code, path }) => `${code} ${path}`)).toEqual(['unreadable-file jars.csv']);
});

// Bytes as a fallen-over editor, a spreadsheet or a cat on the keyboard may leave them.
const anyBytes = fc.oneof(
  fc.uint8Array({ maxLength: 200 }),
  fc
    .string({ unit: fc.constantFrom(...'",;\t\r\n|\\{}[]:0a'), maxLength: 80 })
    .map((text) => encoder.encode(text)),
);

test('any bytes in any file are answered in sentences', () => {
  fc.assert(
    fc.property(fc.constantFrom(...SEASON_FILES), anyBytes, (file, bytes) => {
      const { problems } = reading({ [file]: bytes });
      for (const problem of problems) {
        expect(problem.path.startsWith(file)).toBe(true);
        expect(problem.message).toMatch(/\S.*\.$/s);
        expect(problem.remedy).not.toBe('');
      }
      expect(problems.some((problem) => problem.level === 'error')).toBe(true);
    }),
    { seed: 20270109, numRuns: 150 },
  );
});

test('a row cut off, doubled or shuffled inside a sound file is answered in sentences', () => {
  const brews = texts['brews.csv'];
  fc.assert(
    fc.property(fc.nat(brews.length), fc.nat(40), fc.string({ maxLength: 3 }), (at, gap, put) => {
      const cut = brews.slice(0, at) + put + brews.slice(at + gap);
      const { house, problems } = reading({ 'brews.csv': cut });
      expect(house === null).toBe(problems.some((problem) => problem.level === 'error'));
      for (const problem of problems) expect(problem.message).toMatch(/\S.*\.$/s);
    }),
    { seed: 20270109, numRuns: 150 },
  );
});
