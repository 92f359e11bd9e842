// Which copies stay, and that none is there by half. The rule is the project's own: 14 days, then the first of each of 8 weeks.
import { existsSync, mkdirSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { createClient } from '@libsql/client';
import fc from 'fast-check';
import { DateTime } from 'luxon';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { KEPT, KEPT_EXTRA, nameFor, readName, toDrop } from '../../../api/backup/copies.ts';
import { createBackups } from '../../../api/backup/index.ts';
import { type OpenApp, openApp } from '../../builders/app.ts';
import { daysAfter } from '../../builders/plan.ts';

let open: OpenApp;
beforeEach(async () => {
  open = await openApp();
});
afterEach(() => open.close());

const named = (days: readonly string[]) => days.map((day) => `barmline-${day}.db`);
const daysOf = (first: string, count: number) =>
  Array.from({ length: count }, (_, index) => daysAfter(first, index));

describe('names', () => {
  test.each([
    ['barmline-2027-01-04.db', { day: '2027-01-04', kind: 'daily' }],
    ['barmline-2027-01-04.json', { day: '2027-01-04', kind: 'daily' }],
    ['barmline-2027-01-04-093015.db', { day: '2027-01-04', kind: 'by-hand' }],
    ['barmline-2027-01-04-093015-before-restore.db', { day: '2027-01-04', kind: 'before-restore' }],
    ['barmline-2027-02-30.db', null],
    ['barmline.db', null],
    ['../barmline-2027-01-04.db', null],
    ['barmline-2027-01-04.db/..', null],
    ['.barmline-2027-01-04.db.77.part', null],
  ])('%s', (name, read) => expect(readName(name)).toEqual(read));

  test("the day is the house's own, in a half-hour zone too", () => {
    // 19:00 UTC is 00:30 of the next day in India (5 h 30 min ahead).
    const late = new Date('2027-01-04T19:00:00Z');
    expect(nameFor(late, 'Asia/Kolkata', 'daily', 'db')).toBe('barmline-2027-01-05.db');
    expect(nameFor(late, 'Europe/Dublin', 'daily', 'db')).toBe('barmline-2027-01-04.db');
    expect(nameFor(late, 'Asia/Kolkata', 'by-hand', 'db')).toBe('barmline-2027-01-05-003000.db');
  });
});

describe('what stays', () => {
  test('fourteen days: all of them; a fifteenth that begins a week: it, too', () => {
    // 4 January 2027 is a Monday.
    expect(toDrop(named(daysOf('2027-01-04', 14)))).toEqual([]);
    expect(toDrop(named(daysOf('2027-01-04', 15)))).toEqual([]);
    // with 17 January the newest of 16 days, 3 January is the Sunday of the week of 2 January
    expect(toDrop(named(daysOf('2027-01-02', 16)))).toEqual(named(['2027-01-03']));
  });

  test('after a year: 14 days and, of the 8 newest weeks, the Mondays', () => {
    const all = named(daysOf('2026-01-01', 365));
    const dropped = new Set(toDrop(all));
    const stay = all.filter((name) => !dropped.has(name));
    // 31 December 2026 is a Thursday; its week began on 28 December. Fourteen days go back to
    // 18 December; the seven weeks before begin on 21, 14, 7 December and 30, 23, 16, 9 November.
    expect(stay).toEqual(
      named([
        '2026-11-09',
        '2026-11-16',
        '2026-11-23',
        '2026-11-30',
        '2026-12-07',
        '2026-12-14',
        ...daysOf('2026-12-18', 14),
      ]),
    );
  });

  test('day after day, pruned each time: never fewer than there should be', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 1, max: 4 }), { maxLength: 120 }), (gaps) => {
        let day = '2026-10-01';
        let there: string[] = [];
        const made: string[] = [];
        for (const gap of gaps) {
          day = daysAfter(day, gap);
          made.push(day);
          there = [...there, `barmline-${day}.db`];
          const drop = new Set(toDrop(there));
          there = there.filter((name) => !drop.has(name));
        }
        // The newest 14 are always there, and the first of each of the 8 newest weeks.
        for (const one of made.slice(-KEPT.daily)) expect(there).toContain(`barmline-${one}.db`);
        const weeks = new Map<string, string>();
        for (const one of made) {
          const week = DateTime.fromISO(one).toFormat('kkkk-WW');
          if (!weeks.has(week)) weeks.set(week, one);
        }
        for (const one of [...weeks.values()].slice(-KEPT.weekly)) {
          expect(there).toContain(`barmline-${one}.db`);
        }
        expect(there.length).toBeLessThanOrEqual(KEPT.daily + KEPT.weekly);
      }),
    );
  });

  test('a clock that ran years ahead and came back costs no copy of before', () => {
    const before = named(daysOf('2027-01-04', 10));
    expect(toDrop([...before, 'barmline-2040-01-01.db'])).toEqual([]);
  });

  test('copies by hand and from before a restore: the newest ten, and no daily one for them', () => {
    const extra = daysOf('2027-01-01', 12).map((day) => `barmline-${day}-120000.db`);
    expect(toDrop([...extra, 'barmline-2026-01-01.db']).sort()).toEqual(
      extra.slice(0, 12 - KEPT_EXTRA),
    );
  });

  test('what is not ours is not touched', () => {
    expect(toDrop(['notes.txt', 'barmline.db', 'barmline-2027.db'])).toEqual([]);
  });
});

describe('making one', () => {
  test('the copy opens by itself and holds what the database holds, also while it is written to', async () => {
    const { store, backups } = open.parts;
    const writing = Promise.all(
      Array.from({ length: 20 }, () => open.ask('POST', '/api/feeds', {})),
    );
    const name = await backups.make('by-hand');
    await writing;
    const client = createClient({ url: `file:${join(backups.folder, name)}` });
    expect((await client.execute('PRAGMA integrity_check')).rows[0]?.integrity_check).toBe('ok');
    const houses = await client.execute('SELECT count(*) AS n FROM house');
    expect(houses.rows[0]?.n).toBe(1);
    client.close();
    expect((await store.db.query.house.findMany()).length).toBe(1);
  });

  test('one a day, by the day of the house; a second look makes none', async () => {
    const { backups } = open.parts;
    await backups.ifDue();
    open.setNow('2027-01-04T21:00:00Z');
    await backups.ifDue();
    expect((await backups.list()).map(({ name }) => name)).toEqual(['barmline-2027-01-04.db']);
    open.setNow('2027-01-05T09:00:00Z');
    await backups.ifDue();
    expect((await backups.list()).map(({ name }) => name)).toEqual([
      'barmline-2027-01-05.db',
      'barmline-2027-01-04.db',
    ]);
  });

  test('what was left half-way is swept away, what is whole stays', async () => {
    const { backups } = open.parts;
    mkdirSync(backups.folder);
    writeFileSync(join(backups.folder, '.barmline-2027-01-03.db.99.part'), 'half');
    writeFileSync(join(backups.folder, 'my notes.txt'), 'mine');
    await backups.make('daily');
    expect(readdirSync(backups.folder).sort()).toEqual(['barmline-2027-01-04.db', 'my notes.txt']);
  });

  test('a folder that cannot be made: said once, shown, and nothing else stops', async () => {
    const { store } = open.parts;
    const blocked = join(open.folder, 'a-file');
    writeFileSync(blocked, '');
    const said: string[] = [];
    const folder = join(blocked, 'backups');
    const backups = createBackups({ store, folder, kept: KEPT, report: (line) => said.push(line) });
    await backups.ifDue();
    await backups.ifDue();
    expect(said).toHaveLength(1);
    expect(backups.failure()).toContain(`No copy of today could be made in ${folder}`);
    rmSync(blocked);
    await backups.ifDue();
    expect(backups.failure()).toBeNull();
    expect(existsSync(join(folder, 'barmline-2027-01-04.db'))).toBe(true);
    await backups.close();
  });

  test('an empty database is not copied', async () => {
    const empty = await openApp({ house: null });
    try {
      await empty.parts.backups.ifDue();
      expect(await empty.parts.backups.list()).toEqual([]);
      expect((await empty.ask('POST', '/api/backups')).status).toBe(404);
    } finally {
      await empty.close();
    }
  });
});
