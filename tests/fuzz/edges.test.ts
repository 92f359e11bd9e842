// The edges where texts of others come in or ours go out, by the grammar of each: season folders (CSV, JSON), tags, calendars.
//
// FUZZ_REQUESTS and FUZZ_SEED choose how many and which, as for the routes.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { calendarText } from '../../api/feed/calendar.ts';
import { CSV_FILES, CSV_LISTS, columnsOf } from '../../api/folder/columns.ts';
import { readSeason, type SeasonBytes, writeSeason } from '../../api/folder/index.ts';
import { namesTag } from '../../api/routes/feed.ts';
import { revisionOf } from '../../api/routes/saving.ts';
import { parseHouse, TaskKind } from '../../planner/index.ts';
import { aTask, readCalendar } from '../builders/calendar.ts';
import { HOSTILE_NAMES, TEN_KILOBYTES } from '../builders/hostile.ts';
import { aHouse } from '../builders/plan.ts';

const MANY = Number(process.env.FUZZ_REQUESTS ?? 2000);
const SEED = Number(process.env.FUZZ_SEED ?? 20_270_104);
const options = (share: number) => ({ numRuns: Math.ceil(MANY / share), seed: SEED });

const texts = writeSeason(aHouse());
const bytesOf = (text: string) => new TextEncoder().encode(text);
const nameOf = fc.constantFrom(...HOSTILE_NAMES, 'Mill Lane Ale', 'Keg A', 'Millrace', 'J1', '');

/** A cell as people and spreadsheets write it, and as neither does. */
const cell = fc.oneof(
  nameOf,
  fc.constantFrom(
    '1.048',
    '1,048',
    '1048',
    '12',
    '-1',
    '1e3',
    '1e999',
    '०',
    '٣',
    'yes',
    'no',
    'NaN',
  ),
  fc.constantFrom(
    '2027-01-09',
    '9.1.2027',
    '2027-02-30',
    '01/09/27',
    'sat|sun',
    '2027-01-09/2027-01-12',
    '|',
    '/',
  ),
  fc.string({ unit: 'binary', maxLength: 12 }),
);

const quoted = (text: string) => `"${text.replaceAll('"', '""')}"`;
const cellText = fc
  .tuple(cell, fc.constantFrom('plain', 'quoted', 'quoted', 'open', 'padded'))
  .map(([text, how]) =>
    how === 'quoted'
      ? quoted(text)
      : how === 'open'
        ? `"${text}`
        : how === 'padded'
          ? ` ${text}\t`
          : text,
  );

/** RFC 4180 and its relatives: separators, line ends, byte-order marks, lines too short and too long, repeated headers. */
const csv = (list: (typeof CSV_LISTS)[number]) => {
  const known = columnsOf(list).map(([, { column }]) => column);
  const header = fc.oneof(
    { weight: 3, arbitrary: fc.constant(known) },
    {
      weight: 1,
      arbitrary: fc.shuffledSubarray([...known, ...known.map((one) => one.toUpperCase()), 'x', '']),
    },
  );
  return fc
    .tuple(
      header,
      fc.array(fc.array(cellText, { maxLength: known.length + 2 }), { maxLength: 5 }),
      fc.constantFrom(',', ';', '\t', '|'),
      fc.constantFrom('\n', '\r\n', '\r', '\n\n'),
      fc.constantFrom('', '\uFEFF', 'sep=;\n', '# note\n', '\n'),
    )
    .map(
      ([head, rows, comma, end, start]) =>
        start + [head, ...rows].map((row) => row.join(comma)).join(end),
    );
};

const encoded = fc.constantFrom('utf8', 'utf8', 'utf8', 'utf16le', 'latin1', 'cut');
const bytes = (text: fc.Arbitrary<string>): fc.Arbitrary<Uint8Array> =>
  fc.tuple(text, encoded, fc.nat(400)).map(([whole, how, at]) => {
    if (how === 'cut') return bytesOf(whole).slice(0, at);
    if (how === 'utf16le') return Buffer.from(`\uFEFF${whole}`, 'utf16le');
    return new Uint8Array(Buffer.from(whole, how === 'latin1' ? 'latin1' : 'utf8'));
  });

/** Our own JSON with marks of the grammar taken out, put in and doubled. */
const json = fc
  .tuple(
    fc.constant(texts['house.json']),
    fc.array(
      fc.record({
        at: fc.nat(2000),
        drop: fc.nat(3),
        put: fc.constantFrom(
          '',
          '{',
          '}',
          '[',
          ']',
          ',',
          ':',
          '"',
          '\\',
          '\\u12',
          '1e999',
          'null',
          '//',
          '\u0000',
          '"__proto__":{},',
          TEN_KILOBYTES,
        ),
      }),
      { minLength: 1, maxLength: 3 },
    ),
  )
  .map(([text, edits]) =>
    edits.reduce((made, { at, drop, put }) => {
      const place = at % (made.length + 1);
      return made.slice(0, place) + put + made.slice(place + drop);
    }, text),
  );

/** Whatever came in: a house that holds, or problems that say where and what to do. */
function expectReading(files: SeasonBytes): void {
  const { house, problems } = readSeason(files);
  for (const { path, message, remedy, value } of problems) {
    expect(path.length).toBeGreaterThan(0);
    expect(message).not.toMatch(/\bundefined\b|\[object|\bat \w+ \(/);
    expect(remedy.length).toBeGreaterThan(5);
    expect((value ?? '').length).toBeLessThan(500);
  }
  if (house === null) expect(problems.some(({ level }) => level === 'error')).toBe(true);
  else expect(parseHouse(house).house).toEqual(house);
}

const whole = Object.fromEntries(
  Object.entries(texts).map(([file, text]) => [file, bytesOf(text ?? '')]),
) as SeasonBytes;

test('the folder that the files are made from is read without a problem', () => {
  expect(readSeason(whole)).toMatchObject({ house: aHouse() });
});

test.each(CSV_LISTS.map((list) => [CSV_FILES[list].file, list] as const))(
  'CSV: %s of any make is read or told apart by its problems',
  (file, list) => {
    fc.assert(
      fc.property(bytes(csv(list)), (made) => expectReading({ ...whole, [file]: made })),
      options(25),
    );
  },
);

test('JSON: house.json of any make', () => {
  fc.assert(
    fc.property(bytes(json), (made) => expectReading({ ...whole, 'house.json': made })),
    options(20),
  );
});

test('bytes that are no text at all', () => {
  fc.assert(
    fc.property(
      fc.uint8Array({ maxLength: 300 }),
      fc.constantFrom(...Object.keys(whole)),
      (made, file) => expectReading({ ...whole, [file]: made }),
    ),
    options(25),
  );
});

const anyText = fc.oneof(
  nameOf,
  fc.string({ unit: 'binary', maxLength: 60 }),
  fc.constant(TEN_KILOBYTES),
);

test('calendar: any task of any text makes one entry that another parser reads, in lines of 75 octets', () => {
  const task = fc.record({
    title: anyText,
    why: anyText,
    caution: fc.option(anyText),
    goodLooksLike: anyText,
    steps: fc.array(anyText, { maxLength: 3 }),
    haveReady: fc.array(anyText, { maxLength: 2 }),
    kind: fc.constantFrom(...TaskKind.options),
    time: fc.constantFrom(null, '00:00', '08:00', '23:59'),
    minutes: fc.constantFrom(0, 1, 30, 2000),
    day: fc.constantFrom('2027-01-23', '2027-03-28', '2027-10-31', '2028-02-29', '2027-12-31'),
  });
  const zones = fc.constantFrom('Europe/Dublin', 'Asia/Kathmandu', 'America/St_Johns', 'utc');
  fc.assert(
    fc.property(fc.array(task, { maxLength: 3 }), anyText, zones, (tasks, name, timeZone) => {
      const entries = tasks.map((part, at) => ({
        uid: `0b9f6a9e-5f0f-4f0b-9a55-0c6f6f1c2f1${at}`,
        sequence: at,
        changedAt: new Date('2027-01-04T08:00:00Z'),
        task: aTask({ ...part, key: `task ${at} ${[...part.title].slice(0, 20).join('')}` }),
      }));
      const text = calendarText({ name, timeZone, base: 'http://127.0.0.1:8642', entries });
      expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
      for (const line of text.split('\r\n'))
        expect(Buffer.byteLength(line)).toBeLessThanOrEqual(75);
      const { events } = readCalendar(text);
      expect(events.map(({ uid }) => uid).sort()).toEqual(entries.map(({ uid }) => uid).sort());
    }),
    options(25),
  );
});

test('If-None-Match and If-Match of any make are answered, never stumbled over', () => {
  const tag = fc.oneof(
    fc.constantFrom(
      '*',
      '""',
      'W/',
      'W/"',
      '"a"',
      'W/"a"',
      ',',
      ' , ',
      '"a","b"',
      '"'.repeat(5000),
    ),
    fc.string({ maxLength: 30 }),
  );
  const list = fc.array(tag, { maxLength: 4 }).map((tags) => tags.join(','));
  fc.assert(
    fc.property(list, (sent) => {
      expect(typeof namesTag(sent, '"a"')).toBe('boolean');
      try {
        expect(Number.isSafeInteger(revisionOf(sent))).toBe(true);
      } catch (error) {
        expect(error).toMatchObject({ name: 'Refusal', status: 400 });
      }
    }),
    options(2),
  );
});
