// The house over HTTP: stale edits are told apart, what has happened cannot be edited away, seasons come in and go out.
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { z } from 'zod';
import { writeSeason } from '../../../api/folder/index.ts';
import { ImportAnswer } from '../../../api/routes/import-shapes.ts';
import { HouseAnswer } from '../../../api/routes/shapes.ts';
import { addEntry } from '../../../api/store/record.ts';
import { ErrorBody, type House, type RecordEntry } from '../../../planner/index.ts';
import { type OpenApp, openApp } from '../../builders/app.ts';
import { aBrew, aHouse, aTank } from '../../builders/plan.ts';

let open: OpenApp;
beforeEach(async () => {
  open = await openApp();
});
afterEach(() => open.close());

const put = (house: unknown, revision: string | number | null, query = '') =>
  open.ask(
    'PUT',
    `/api/house${query}`,
    house,
    revision === null ? {} : { 'If-Match': String(revision) },
  );
const read = async () => HouseAnswer.parse((await open.ask('GET', '/api/house')).json);
const errorOf = (answer: { json: unknown }) => ErrorBody.parse(answer.json).error;

const FILES = ['house.json', 'brews.csv', 'tanks.csv', 'yeasts.csv', 'jars.csv'];
function season(name: 'lantern-shed' | 'quay-seven'): Record<string, string> {
  const folder = new URL(`../../seasons/${name}/`, import.meta.url);
  return Object.fromEntries(
    FILES.map((file) => [file, readFileSync(fileURLToPath(new URL(file, folder)), 'utf8')]),
  );
}

describe('an edit', () => {
  test('is saved under the next revision', async () => {
    const answer = await put(aHouse({ name: 'New name' }), '"1"');
    expect(answer.status).toBe(200);
    expect(HouseAnswer.parse(answer.json)).toMatchObject({ revision: 2, demo: false });
    expect((await read()).house?.name).toBe('New name');
  });

  test('has to say which revision was edited', async () => {
    expect((await put(aHouse(), null)).status).toBe(428);
    expect((await put(aHouse(), 'new')).status).toBe(400);
    expect((await read()).revision).toBe(1);
  });

  test('on a stale revision is refused, with what changed since, by name', async () => {
    const house = aHouse();
    const [first, ...rest] = house.brews;
    if (first === undefined) throw new Error('no brew');
    await put(
      {
        ...house,
        tanks: [...house.tanks, aTank({ tank: 'Keg C' })],
        brews: [...rest, { ...first, volumeL: 18 }],
      },
      1,
    );
    const late = await put(aHouse({ name: 'Mine' }), 1);
    expect(late.status).toBe(409);
    const { code, problems } = errorOf(late);
    expect(code).toBe('stale-revision');
    const volume = problems.find(({ path }) => path === 'brews[Millrace].volumeL');
    expect(volume).toMatchObject({ bound: '20', value: '18' });
    expect(problems.some(({ path }) => path === 'tanks[Keg C].maxFillL')).toBe(true);
    // moved to another row, but not changed
    expect(problems.some(({ path }) => path.startsWith('brews[Quill]'))).toBe(false);
    expect((await read()).house?.name).toBe('Slate Yard');
  });

  test('two at once: one lands, the other is told', async () => {
    const answers = await Promise.all(
      ['One', 'Two', 'Three'].map((name) => put(aHouse({ name }), 1)),
    );
    expect(answers.map(({ status }) => status).sort()).toEqual([200, 409, 409]);
    expect((await read()).revision).toBe(2);
  });

  test('of a revision that is yet to come is refused', async () => {
    expect((await put(aHouse(), 7)).status).toBe(409);
  });

  test('names every problem at once and changes nothing', async () => {
    const bad = {
      ...aHouse(),
      brewDays: [],
      brews: [aBrew({ yeasts: ['Nobody'] }), { ...aBrew({ brew: 'Strong' }), og: 1.5 }],
    };
    const answer = await put(bad, 1);
    expect(answer.status).toBe(400);
    const paths = errorOf(answer).problems.map(({ path }) => path);
    for (const path of ['brewDays', 'brews[0].yeasts', 'brews[1].og']) {
      expect(
        paths.some((one) => one.startsWith(path)),
        path,
      ).toBe(true);
    }
    expect((await read()).revision).toBe(1);
  });

  test('into an empty database is made on revision 0', async () => {
    const empty = await openApp({ house: null });
    try {
      const before = HouseAnswer.parse((await empty.ask('GET', '/api/house')).json);
      expect(before).toMatchObject({ house: null, revision: 0 });
      const headers = { 'If-Match': '0' };
      expect((await empty.ask('PUT', '/api/house', aHouse(), headers)).status).toBe(200);
    } finally {
      await empty.close();
    }
  });
});

describe('what has happened', () => {
  const brewed: RecordEntry = {
    no: 1,
    news: { kind: 'brewed', brew: 'Millrace', day: '2027-01-09', tank: null, drawnMl: null },
    fact: {
      kind: 'brewed',
      brewed: {
        brew: 'Millrace',
        day: '2027-01-09',
        tank: 'Keg A',
        yeast: 'Mill Lane Ale',
        source: { kind: 'jar', jar: 'J1', drawMl: 100 },
        starterLitres: 0,
        generation: 3,
        pitchedB: 150,
        emptiedOn: null,
        state: 'sound' as const,
      },
    },
  };
  beforeEach(() =>
    open.parts.store.write((tx) => addEntry(tx, 1, new Date('2027-01-09T18:00:00Z'), brewed)),
  );
  const without = (part: Partial<House>) => ({ ...aHouse(), ...part });

  test.each<[string, () => unknown]>([
    [
      'the brew',
      () => without({ brews: aHouse().brews.filter(({ brew }) => brew !== 'Millrace') }),
    ],
    ['its tank', () => without({ tanks: aHouse().tanks.filter(({ tank }) => tank !== 'Keg A') })],
    ['its jar', () => without({ jars: [] })],
  ])('cannot be edited away: %s', async (_what, house) => {
    const answer = await put(house(), 1);
    expect(answer.status).toBe(409);
    expect(errorOf(answer).problems[0]?.message).toContain('Millrace was brewed on 2027-01-09');
  });

  test('does not bind a new season', async () => {
    const house = without({ jars: [] });
    expect((await put(house, 1, '?startOver=true')).status).toBe(200);
  });

  test('does not bind the rest of the house', async () => {
    const house = without({ brews: aHouse().brews.filter(({ brew }) => brew !== 'Heron') });
    expect((await put(house, 1)).status).toBe(200);
  });
});

describe('a season folder', () => {
  const bring = (request: unknown, headers = {}) =>
    open.ask('POST', '/api/house/import', request, headers);

  test('is shown before it is saved', async () => {
    const answer = ImportAnswer.parse((await bring({ files: season('lantern-shed') })).json);
    expect(answer).toMatchObject({ applied: false, revision: 1 });
    expect(answer.house?.brews).toHaveLength(24);
    expect(answer.problems.filter(({ level }) => level === 'error')).toEqual([]);
    expect((await read()).house?.name).toBe('Slate Yard');
  });

  test.each(['lantern-shed', 'quay-seven'] as const)(
    '%s goes in and comes out the same',
    async (name) => {
      const files = season(name);
      const request = { files, apply: true, startOver: true };
      const answer = await bring(request, { 'If-Match': '1' });
      expect(answer.status, answer.text).toBe(200);
      const before = await read();
      const out = (await open.ask('GET', '/api/house/export')).json as z.infer<
        z.ZodObject<{ files: z.ZodRecord<z.ZodString, z.ZodString> }>
      >;
      expect(Object.keys(out.files).sort()).toEqual([...FILES].sort());
      const again = { ...request, files: out.files };
      expect((await bring(again, { 'If-Match': '2' })).status).toBe(200);
      expect((await read()).house).toEqual(before.house);
    },
  );

  test('comes as a form, too, whatever path its names claim', async () => {
    const form = new FormData();
    for (const [name, text] of Object.entries(season('lantern-shed'))) {
      form.append('files', new File([text], `../../etc/${name.toUpperCase()}`));
    }
    form.append('files', new File(['x'], '../../../etc/passwd'));
    const answer = ImportAnswer.parse((await bring(form)).json);
    expect(answer.house?.brews).toHaveLength(24);
    expect(answer.problems.map(({ code, path }) => [code, path])).toContainEqual([
      'unknown-file',
      'passwd',
    ]);
  });

  test('with bad cells: each is placed, the good rest is shown, and nothing is saved', async () => {
    const files = season('lantern-shed');
    files['brews.csv'] = String(files['brews.csv'])
      .replace('Rushlight,Helles,Harbour Lager,20,1.045', 'Rushlight,Helles,Harbour Lager,20,1045')
      .replace('Heron,German pils,Harbour Lager', 'Heron,German pils,Nobody');
    const preview = ImportAnswer.parse((await bring({ files })).json);
    const places = preview.problems.map(({ path }) => path);
    // line 1 is the header; Rushlight is in the second row after it, Heron in the fourth
    expect(places).toContain('brews.csv:3:og');
    expect(places.some((path) => path.startsWith('brews.csv:5'))).toBe(true);
    expect(preview.house?.brews).toHaveLength(22);
    const refused = await bring({ files, apply: true }, { 'If-Match': '1' });
    expect(refused.status).toBe(422);
    expect(errorOf(refused).problems.map(({ path }) => path)).toContain('brews.csv:3:og');
    expect((await read()).revision).toBe(1);
  });

  test('that is missing says so file by file', async () => {
    const preview = ImportAnswer.parse((await bring({ files: {} })).json);
    expect(preview.house).toBeNull();
    expect(preview.problems.map(({ path }) => path)).toEqual(
      expect.arrayContaining(['house.json', 'brews.csv']),
    );
  });

  test('is saved against a revision only', async () => {
    const request = { files: season('lantern-shed'), apply: true };
    expect((await bring(request)).status).toBe(428);
    expect((await bring(request, { 'If-Match': '3' })).status).toBe(409);
  });
});

describe('an import of a part', () => {
  const bring = (body: unknown) => open.ask('POST', '/api/house/import', body);
  const rows = 'Beer,Original Gravity,volume_l\nHeron,1048,20\n';

  test('takes what is missing from the house it is brought onto, and says only what was brought', async () => {
    const [brew] = aHouse().brews;
    const onto = { ...aHouse(), brews: [], tanks: [], name: 7 };
    const csv = writeSeason({ ...aHouse(), brews: brew ? [{ ...brew, brew: 'Heron' }] : [] })[
      'brews.csv'
    ];
    const answer = ImportAnswer.parse(
      (await bring({ files: { 'brews.csv': csv }, onto: aHouse() })).json,
    );
    expect(answer.problems).toEqual([]);
    expect(answer.house?.brews.map((row) => row.brew)).toEqual(['Heron']);
    expect(answer.house?.tanks).toEqual(aHouse().tanks);
    // a house of which not even the name is sound gives nothing, and nothing is said of it
    const { problems } = ImportAnswer.parse(
      (await bring({ files: { 'brews.csv': csv }, onto })).json,
    );
    expect(problems.map(({ path }) => path.split(':')[0])).not.toContain('house.name');
  });

  test('shows the cells as they were read, with a guess at each strange column', async () => {
    const { tables } = ImportAnswer.parse(
      (await bring({ files: { 'brews.csv': rows }, onto: aHouse() })).json,
    );
    expect(tables[0]?.header).toEqual([
      { cell: 'Beer', column: null, guess: 'brew' },
      { cell: 'Original Gravity', column: null, guess: 'og' },
      { cell: 'volume_l', column: 'volume_l', guess: null },
    ]);
    expect(tables[0]?.rows).toEqual([{ line: 2, cells: ['Heron', '1048', '20'] }]);
  });

  test('reads columns under the names they were given, and cells as they were corrected', async () => {
    const columns = { 'brews.csv': { Beer: 'brew', 'Original Gravity': 'og' } };
    const files = { 'brews.csv': rows };
    const first = ImportAnswer.parse((await bring({ files, columns, onto: aHouse() })).json);
    expect(first.problems.map(({ path }) => path)).toContain('brews.csv:2:og');
    const corrections = [{ file: 'brews.csv', line: 2, column: 'og', text: '1.048' }];
    const then = ImportAnswer.parse(
      (await bring({ files, columns, corrections, onto: aHouse() })).json,
    );
    expect(then.problems.map(({ path }) => path)).not.toContain('brews.csv:2:og');
    expect(then.tables[0]?.rows[0]?.cells[1]).toBe('1.048');
  });

  test('leaves a column aside that is said to mean nothing', async () => {
    const columns = { 'brews.csv': { Beer: 'brew', 'Original Gravity': '' } };
    const { problems } = ImportAnswer.parse(
      (await bring({ files: { 'brews.csv': rows }, columns, onto: aHouse() })).json,
    );
    expect(problems.map(({ code }) => code)).not.toContain('unknown-column');
  });
});

test('the demo house is put in as a new season, against a revision only', async () => {
  expect((await open.ask('POST', '/api/house/demo')).status).toBe(428);
  expect((await open.ask('POST', '/api/house/demo', undefined, { 'If-Match': '9' })).status).toBe(
    409,
  );
  const put = await open.ask('POST', '/api/house/demo', undefined, { 'If-Match': '1' });
  const answer = HouseAnswer.parse(put.json);
  expect(answer.demo).toBe(true);
  expect(answer.house?.name).toBe('Lantern Shed');
  expect(answer.problems.filter(({ level }) => level === 'error')).toEqual([]);
  // an edit makes it one's own
  const { house, revision } = answer;
  const own = await open.ask('PUT', '/api/house', house, { 'If-Match': String(revision) });
  expect(HouseAnswer.parse(own.json).demo).toBe(false);
});

test('names are data: markup, formulas, marks of other scripts and long ones come back as they went in', async () => {
  const names = ['<script>alert(1)</script>', '=cmd()', '‮abc', '🍺'.repeat(50), 'a;b,c\\d"e'];
  const [first] = aHouse().brews;
  const brews = names.map((brew) => ({ ...first, brew }));
  expect((await put({ ...aHouse(), brews }, 1)).status).toBe(200);
  expect((await read()).house?.brews.map(({ brew }) => brew)).toEqual(names);
  const { files } = (await open.ask('GET', '/api/house/export')).json as {
    files: Record<string, string>;
  };
  const back = await open.ask('POST', '/api/house/import', { files });
  expect(ImportAnswer.parse(back.json).house?.brews.map(({ brew }) => brew)).toEqual(names);
});
