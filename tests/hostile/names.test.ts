// A name is data: whatever it is made of comes back as the same text on every surface and does nothing on any.
import Papa from 'papaparse';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { planLines } from '../../api/welcome.ts';
import { ErrorBody, type House, type Plan, plan } from '../../planner/index.ts';
import { type OpenApp, openApp } from '../builders/app.ts';
import { readCalendar } from '../builders/calendar.ts';
import { HOSTILE_NAMES, TEN_KILOBYTES } from '../builders/hostile.ts';
import { aHouse } from '../builders/plan.ts';

/** A house in which everything that has a name has this one. */
function houseOf(name: string): House {
  const plain = aHouse();
  const renamed = <T extends object>(rows: readonly T[], key: keyof T) =>
    rows.map((row, at) => (at === 0 ? { ...row, [key]: name } : row));
  const [first] = plain.yeasts;
  const yeastOf = (yeast: string) => (yeast === first?.yeast ? name : yeast);
  return aHouse({
    ...plain,
    name,
    tanks: renamed(plain.tanks, 'tank'),
    yeasts: renamed(plain.yeasts, 'yeast'),
    jars: renamed(plain.jars, 'jar').map((row) => ({ ...row, yeast: yeastOf(row.yeast) })),
    brews: renamed(plain.brews, 'brew').map((row) => ({
      ...row,
      style: name,
      yeasts: row.yeasts.map(yeastOf),
    })),
  });
}

describe.each(HOSTILE_NAMES.map((name) => [JSON.stringify(name).slice(0, 60), name] as const))(
  '%s',
  (_shown, name) => {
    const house = houseOf(name);
    let made: Plan;
    let open: OpenApp;
    beforeAll(async () => {
      made = plan({ house, today: '2027-01-04', seed: 1, steps: 20 });
      open = await openApp({ house, plan: made });
    });
    afterAll(() => open.close());

    test('API and whole-house JSON: the very text, and never HTML', async () => {
      for (const path of ['/api/house', '/api/plan', '/api/tasks', '/api/backups/house.json']) {
        const answer = await open.ask('GET', path);
        expect(answer.status, path).toBe(200);
        expect(answer.headers.get('Content-Type'), path).toMatch(/^application\/json/);
        expect(answer.headers.get('X-Content-Type-Options'), path).toBe('nosniff');
      }
      const { json } = await open.ask('GET', '/api/house');
      expect((json as { house: House }).house).toEqual(house);
      const saved = await open.ask('PUT', '/api/house', house, { 'If-Match': '1' });
      expect((saved.json as { house: House }).house).toEqual(house);
    });

    test('calendar: as many entries as tasks, each with its text whole, read by ical.js', async () => {
      const { json } = await open.ask('POST', '/api/feeds', {});
      const { address } = (json as { made: { address: string } }).made;
      const feed = await open.ask('GET', new URL(address).pathname);
      expect(feed.status).toBe(200);
      for (const line of feed.text.split('\r\n')) {
        expect(line).not.toMatch(/[\r\n]/);
        expect(Buffer.byteLength(line)).toBeLessThanOrEqual(75);
      }
      const { events, calendar } = readCalendar(feed.text);
      const { tasks } = (await open.ask('GET', '/api/tasks')).json as {
        tasks: { uid: string; title: string }[];
      };
      expect(events.map(({ uid }) => uid).sort()).toEqual(tasks.map(({ uid }) => uid).sort());
      for (const { uid, title } of tasks)
        expect(events.find((event) => event.uid === uid)?.summary).toBe(title);
      expect(tasks.some(({ title }) => title.includes(name))).toBe(true);
      // ical.js hands an extension over as it stands; RFC 5545 §3.3.11 says how its text was escaped.
      const called = String(calendar.getFirstPropertyValue('x-wr-calname'));
      expect(called.replaceAll(/\\([\\;,])/g, '$1')).toContain(name);
    });

    test('CSV export: no cell is a formula to a spreadsheet, and the import is the same house', async () => {
      const { files } = (await open.ask('GET', '/api/house/export')).json as {
        files: Record<string, string>;
      };
      for (const [file, text] of Object.entries(files)) {
        if (!file.endsWith('.csv')) continue;
        const cells = Papa.parse<string[]>(text).data.flat();
        // OWASP, CSV Injection: a cell must not begin with = + - @, a tab or a carriage return; a plain number may.
        for (const cell of cells) {
          if (!/^[-+]?\d+(\.\d+)?$/.test(cell)) expect(cell, file).not.toMatch(/^[=+\-@\t\r]/);
        }
      }
      const read = await open.ask('POST', '/api/house/import', { files });
      expect((read.json as { house: House }).house).toEqual(house);
    });

    test('as the name of a file that is brought in: left aside, said back as text, looked up on no disk', async () => {
      const answer = await open.ask('POST', '/api/house/import', { files: { [name]: 'x' } });
      expect([200, 400]).toContain(answer.status);
      expect(answer.text).not.toMatch(/root:|ENOENT|EACCES/);
    });

    test('in a path: not found, in the one shape', async () => {
      const answer = await open.ask('GET', `/api/${encodeURIComponent(name)}`);
      expect(answer.status).toBe(404);
      ErrorBody.parse(answer.json);
    });

    test('terminal: nothing that steers it', () => {
      for (const line of planLines(made, [])) expect(line).not.toMatch(/\p{Cc}/u);
    });
  },
);

describe('what no name may be', () => {
  let open: OpenApp;
  beforeAll(async () => {
    open = await openApp();
  });
  afterAll(() => open.close());

  const put = (name: string) =>
    open.ask('PUT', '/api/house', { ...aHouse(), name }, { 'If-Match': '1' });

  test.each([
    ['ten kilobytes', TEN_KILOBYTES],
    ['a line break', 'a\nDTSTART:19700101'],
    ['a carriage return', 'a\rb'],
    ['a zero byte', 'a\u0000b'],
    ['an escape sequence of a terminal', '\u001b[2Jgone'],
    ['half a character', '\uD800'],
    ['nothing', '   '],
  ])('%s: refused, the field named, and not said back at length', async (_what, name) => {
    const answer = await put(name);
    expect(answer.status).toBe(400);
    const { error } = ErrorBody.parse(answer.json);
    expect(error.problems.map(({ path }) => path)).toContain('name');
    expect(answer.text.length).toBeLessThan(2000);
  });

  test('file names that climb out of a folder are read for their last part alone', async () => {
    const { files } = (await open.ask('GET', '/api/house/export')).json as {
      files: Record<string, string>;
    };
    const climbing = Object.fromEntries(
      Object.entries(files).map(([file, text]) => [`../../../etc/${file}`, text]),
    );
    const read = await open.ask('POST', '/api/house/import', { files: climbing });
    expect((read.json as { house: House }).house).toEqual(aHouse());
    const windows = Object.fromEntries(
      Object.entries(files).map(([file, text]) => [`C:\\..\\${file}`, text]),
    );
    const again = await open.ask('POST', '/api/house/import', { files: windows });
    expect((again.json as { house: House }).house).toEqual(aHouse());
  });
});
