// Calendar programs that the project did not write: vdirsyncer fetches the feed of the running server, khal shows it, two parsers read every feed.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { calendarText } from '../../../api/feed/calendar.ts';
import { looseEntries } from '../../../api/feed/entries.ts';
import { readFolder } from '../../../api/folder/index.ts';
import { buildServer } from '../../../api/prepare.mjs';
import { defaultToday, plan, TASK_KINDS, tasks } from '../../../planner/index.ts';
import { readCalendar } from '../../builders/calendar.ts';
import { type Server, startServer } from '../../kill/server.ts';
import {
  hasIcalendar,
  hasPrograms,
  INSTALL,
  readWithPython,
  type Seen,
  subscribe,
} from './programs.ts';

const missing = (there: boolean, what: string) =>
  there ? what : `${what} (skipped, not installed here: ${INSTALL})`;

const folder = mkdtempSync(join(tmpdir(), 'barmline-clients-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const ALARM = { minutesBefore: 30, daysBefore: 1, atTime: '18:00' };
const PLAIN = { allDay: false, volume: 'metric', gravity: 'sg' } as const;
const LOOKS = [
  PLAIN,
  { ...PLAIN, allDay: true },
  { ...PLAIN, volume: 'us', gravity: 'plato' },
] as const;

describe.each(['lantern-shed', 'quay-seven'])('every feed of %s', (season) => {
  const feeds: { name: string; text: string }[] = [];

  beforeAll(async () => {
    const { house } = await readFolder(join(import.meta.dirname, '../../seasons', season));
    if (house === null) throw new Error(`${season} cannot be read`);
    const made = plan({ house, today: defaultToday(house), steps: 100 });
    const all = looseEntries(tasks(made, house), house.name, new Date('2027-01-04T08:00:00Z'));
    const shared = {
      name: house.name,
      timeZone: house.timeZone,
      base: 'https://brewhouse.example',
    };
    for (const kind of [null, ...TASK_KINDS]) {
      const entries = all.filter(({ task }) => kind === null || task.kind === kind);
      for (const [index, look] of LOOKS.entries()) {
        for (const alarm of [null, ALARM]) {
          const name = `${kind ?? 'all'}-${index}-${alarm === null ? 'silent' : 'loud'}`;
          feeds.push({ name, text: calendarText({ ...shared, entries, alarm, look }) });
        }
      }
    }
  }, 240_000);

  test('ical.js reads it strictly', () => {
    // 13 kinds and all of them, 3 looks, with and without alarms
    expect(feeds).toHaveLength((TASK_KINDS.length + 1) * 3 * 2);
    for (const { name, text } of feeds) {
      const { events } = readCalendar(text);
      expect(new Set(events.map(({ uid }) => uid)).size, name).toBe(events.length);
      if (name.startsWith('all')) expect(events.length).toBeGreaterThan(100);
      for (const { start, end } of events) expect(end > start, name).toBe(true);
    }
  });

  test.skipIf(!hasIcalendar)(
    missing(hasIcalendar, 'python3-icalendar reads it strictly, and sees what ical.js sees'),
    () => {
      const files = feeds.map(({ name, text }) => {
        const file = join(folder, `${season}-${name}.ics`);
        writeFileSync(file, text);
        return file;
      });
      const read = readWithPython(files);
      feeds.forEach(({ name, text }, index) => {
        const ours = readCalendar(text).events.map((event) => ({
          uid: event.uid,
          summary: event.summary,
          description: event.description,
          start: event.start,
          end: event.end,
          sequence: event.sequence,
          alarms: event.alarms.length,
        }));
        expect(read[index], name).toEqual(ours);
      });
    },
  );
});

type Row = { uid: string; day: string; time: string | null; title: string; key: string };

describe.skipIf(!hasPrograms)(
  missing(
    hasPrograms,
    'vdirsyncer and khal, subscribed to a server in Auckland of a house in Dublin',
  ),
  () => {
    let server: Server;
    let feed = '';

    const ask = async <T>(method: string, path: string, body?: object): Promise<T> => {
      const response = await fetch(`${server.base}${path}`, {
        method,
        headers: { 'Content-Type': 'application/json' },
        ...(body === undefined ? {} : { body: JSON.stringify(body) }),
      });
      if (!response.ok) throw new Error(`${path}: ${await response.text()}`);
      return (await response.json()) as T;
    };
    const rows = async () => (await ask<{ tasks: Row[] }>('GET', '/api/tasks')).tasks;

    beforeAll(async () => {
      if (!hasPrograms) return;
      await buildServer();
      server = await startServer(join(folder, 'data'), {
        BARMLINE_TODAY: '2027-01-02',
        TZ: 'Pacific/Auckland',
      });
      await server.up;
      const made = await ask<{ made: { address: string } }>('POST', '/api/feeds', {});
      feed = made.made.address;
    }, 300_000);
    afterAll(async () => {
      server?.child.kill('SIGINT');
      await server?.gone;
    });

    const at = ({ day, time }: Row) => (time === null ? day : `${day}T${time}`);
    const YEAR = ['2026-12-01', '2027-12-31'] as const;

    /** khal's list against the task list: the same entries, each once, at the house's own day and clock time. */
    function expectShown(shown: Seen[], wanted: Row[]) {
      expect(shown.map(({ start, title }) => `${start} ${title}`).sort()).toEqual(
        wanted.map((row) => `${at(row)} ${row.title}`).sort(),
      );
    }

    test('see the plan, and a re-plan that moves entries in place, without a duplicate, over the change of clocks', async () => {
      const client = await subscribe(join(folder, 'client'), feed, 'Europe/Dublin');
      await client.sync();
      const own = await subscribe(join(folder, 'own'), feed, 'Europe/Dublin');
      await own.take(await fetched());
      const before = await rows();
      // The clocks go forward in Dublin on 28 March 2027: the season lies on both sides, with clock times.
      const timed = before.filter(({ time }) => time !== null).map(({ day }) => day);
      expect(timed.some((day) => day < '2027-03-28')).toBe(true);
      expect(timed.some((day) => day > '2027-03-28')).toBe(true);
      expectShown(await client.list(...YEAR), before);

      type Plan = { plan: { brews: { brew: string; day: string }[] } };
      const { plan: inForce } = await ask<Plan>('GET', '/api/plan');
      const first = [...inForce.brews].sort((a, b) => (a.day < b.day ? -1 : 1))[0];
      await ask('POST', '/api/news', {
        kind: 'slipped',
        brew: first?.brew,
        to: dayAfter(first?.day ?? ''),
      });
      const draft = await draftOf();
      await ask('POST', '/api/draft/adopt', { draft });
      const after = await rows();
      const moved = after.filter((row) =>
        before.some((was) => was.uid === row.uid && (was.day !== row.day || was.time !== row.time)),
      );
      expect(moved.length).toBeGreaterThan(0);
      await client.sync();
      expectShown(await client.list(...YEAR), after);

      // By UID: what moved stands at its new time and nowhere else.
      await own.take(await fetched());
      const shown = await own.list(...YEAR);
      for (const row of moved) {
        const found = shown.filter(({ uid }) => uid === row.uid).map(({ start }) => start);
        expect(found, row.title).toEqual([at(row)]);
      }
      const again = await client.sync();
      expect(again).not.toMatch(/Copying|Deleting/);
    }, 300_000);

    async function fetched(): Promise<string> {
      const file = join(folder, 'fetched.ics');
      writeFileSync(file, await (await fetch(feed)).text());
      return file;
    }

    async function draftOf(): Promise<string> {
      for (let tries = 0; tries < 1200; tries += 1) {
        const { draft } = await ask<{ draft: { id: string } | null }>('GET', '/api/draft');
        if (draft !== null) return draft.id;
        await new Promise((resolve) => setTimeout(resolve, 100));
      }
      throw new Error('no draft came');
    }
  },
);

function dayAfter(day: string): string {
  return new Date(new Date(`${day}T12:00:00Z`).getTime() + 86_400_000).toISOString().slice(0, 10);
}
