// Points 12 to 20 of the house's list of what calendar programs have tripped over, one test each, by name, over the real app.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { calendarText } from '../../../api/feed/calendar.ts';
import { matches } from '../../../api/feed/token.ts';
import { type OpenApp, openApp } from '../../builders/app.ts';
import { aTask, readCalendar } from '../../builders/calendar.ts';
import { aPlan, aPlannedBrew, daysAfter, quill } from '../../builders/plan.ts';
import { readBack } from '../../builders/record.ts';

let open: OpenApp;
let path = '';
beforeEach(async () => {
  open = await openApp();
  path = await aFeed();
});
afterEach(() => open.close());

async function aFeed(wanted: object = {}): Promise<string> {
  const { json } = await open.ask('POST', '/api/feeds', wanted);
  return new URL((json as { made: { address: string } }).made.address).pathname;
}

const get = (headers: Record<string, string> = {}) => open.ask('GET', path, undefined, headers);
const events = async () => readCalendar((await get()).text).events;
const lines = async () => (await get()).text.replaceAll('\r\n ', '').split('\r\n');

/** Quill a week later; everything of the other brews stays. */
async function moveQuill(): Promise<void> {
  const moved = quill({ day: '2027-02-06', emptiedOn: '2027-02-20', dryHopOn: '2027-02-14' });
  const made = aPlan();
  const brews = made.brews.map((brew) => (brew.brew === 'Quill' ? moved : brew));
  await open.putInForce({ ...made, brews });
}

test('12: the UID is a random UUID, one per step, the same over re-plans, for life', async () => {
  const before = await events();
  const uids = before.map(({ uid }) => uid);
  // RFC 9562 §5.4: version 4 has 122 random bits, so neither a number nor the start is in it.
  for (const uid of uids) {
    expect(uid).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-4[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
  }
  expect(new Set(uids).size).toBe(uids.length);
  await moveQuill();
  const after = await events();
  const keyOf = (event: { url: string }) => event.url.split('/').at(-1);
  for (const event of after) {
    const was = before.find((one) => keyOf(one) === keyOf(event));
    if (was !== undefined) expect(event.uid).toBe(was.uid);
  }
  // Away and back again: what comes back is the entry that it was, told anew.
  await open.putInForce(aPlan({ brews: [], harvests: [], orders: [] }));
  const stayed = (await events()).map(({ uid }) => uid);
  await open.putInForce(aPlan());
  const back = (await events()).filter(({ uid }) => !stayed.includes(uid));
  expect(back.length).toBeGreaterThan(5);
  for (const event of back) {
    const was = after.find(({ uid }) => uid === event.uid);
    const first = before.find(({ uid }) => uid === event.uid);
    expect(keyOf(event)).toBe(keyOf(was ?? first ?? { url: '' }));
    expect(event.sequence).toBeGreaterThan(was?.sequence ?? first?.sequence ?? 0);
  }
});

test('13: no METHOD; DTSTAMP is LAST-MODIFIED is the last change; SEQUENCE rises with the time', async () => {
  const before = new Map((await events()).map((event) => [event.uid, event]));
  open.setNow('2027-01-05T09:00:00Z');
  await moveQuill();
  expect((await lines()).some((line) => line.startsWith('METHOD'))).toBe(false);
  let [moved, still] = [0, 0];
  for (const event of await events()) {
    expect(event.stamp).toBe(event.lastModified);
    const was = before.get(event.uid);
    if (was === undefined) continue;
    if (was.start !== event.start) {
      moved += 1;
      expect(event.sequence).toBe(was.sequence + 1);
      expect(event.stamp).toBe('2027-01-05T09:00:00Z');
    } else if (was.description === event.description && was.summary === event.summary) {
      still += 1;
      expect(event).toEqual(was);
    }
  }
  expect(moved).toBeGreaterThan(0);
  expect(still).toBeGreaterThan(0);
});

test('13, with the clock set back: stamps still go on, never back', async () => {
  const before = new Map((await events()).map((event) => [event.uid, event]));
  open.setNow('2020-01-01T00:00:00Z');
  await moveQuill();
  let moved = 0;
  for (const event of await events()) {
    const was = before.get(event.uid);
    if (was === undefined || was.start === event.start) continue;
    moved += 1;
    expect(event.stamp > was.stamp, `${event.stamp} after ${was.stamp}`).toBe(true);
  }
  expect(moved).toBeGreaterThan(0);
});

test('14: clock times in UTC with Z and without TZID; a day ends with the day after', async () => {
  const all = await lines();
  expect(all.some((line) => /TZID|VTIMEZONE|X-WR-TIMEZONE/.test(line))).toBe(false);
  for (const line of all.filter((one) => /^DT(START|END)/.test(one))) {
    expect(line).toMatch(/^DT(START|END)(;VALUE=DATE:\d{8}|:\d{8}T\d{6}Z)$/);
  }
  const days = (await events()).filter(({ allDay }) => allDay);
  expect(days.length).toBeGreaterThan(0);
  for (const { start, end } of days) expect(end).toBe(daysAfter(start, 1));
});

test('15: an ETag over the bytes, and none of the headers that have bitten; .ics, HEAD, any Accept', async () => {
  const { createHash } = await import('node:crypto');
  const full = await get({ 'Accept-Encoding': 'gzip, br' });
  const hash = createHash('sha256').update(full.text).digest('base64url');
  expect(full.headers.get('ETag')).toBe(`"${hash}"`);
  for (const name of ['Last-Modified', 'Content-Disposition', 'Content-Encoding', 'Vary']) {
    expect(full.headers.get(name), name).toBeNull();
  }
  expect(path).toMatch(/\.ics$/);
  const head = await open.ask('HEAD', path);
  for (const name of ['ETag', 'Content-Type', 'Content-Length']) {
    expect(head.headers.get(name)).toBe(full.headers.get(name));
  }
  for (const accept of ['text/html', 'image/*', 'application/json', '']) {
    const answer = await get({ Accept: accept });
    expect([answer.status, answer.text]).toEqual([200, full.text]);
  }
  expect((await get({ 'If-None-Match': `"${hash}"` })).status).toBe(304);
});

test('16: the token is unguessable, revocable, good for reading alone, and compared in constant time', async () => {
  // 43 characters of base64url are 256 bits.
  expect(path).toMatch(/^\/feed\/[A-Za-z0-9_-]{43}\.ics$/);
  for (const method of ['POST', 'PUT', 'DELETE', 'PATCH']) {
    expect((await open.ask(method, path)).status).toBe(405);
  }
  const token = path.slice('/feed/'.length, -'.ics'.length);
  expect(matches(token, 'ff'.repeat(32))).toBe(false);
  // What compares is Node's own constant-time comparison; there is no other comparison in that file.
  const source = readFileSync(
    fileURLToPath(new URL('../../../api/feed/token.ts', import.meta.url)),
    'utf8',
  );
  expect(source).toContain('timingSafeEqual(given, stored)');
  const { json } = await open.ask('GET', '/api/feeds');
  const [feed] = (json as { feeds: { id: string }[] }).feeds;
  await open.ask('DELETE', `/api/feeds/${feed?.id}`);
  expect((await get()).status).toBe(404);
});

test('17: gone entries are left out and not cancelled, 180 days of history stay, forward there is no cap', async () => {
  const brews = Array.from({ length: 300 }, (_, index) =>
    aPlannedBrew({ brew: `Brew ${index}`, day: daysAfter('2027-01-09', 7 * index) }),
  );
  await open.putInForce(aPlan({ brews, harvests: [], orders: [] }));
  const all = await events();
  expect(all.filter(({ categories }) => categories === 'brew-pitch')).toHaveLength(300);
  const first = all.map(({ start }) => start.slice(0, 10)).sort()[0] ?? '';
  const has = async () => (await events()).some(({ start }) => start.startsWith(first));
  open.setToday(daysAfter(first, 180));
  expect(await has()).toBe(true);
  open.setToday(daysAfter(first, 181));
  expect(await has()).toBe(false);
  await open.putInForce(aPlan({ brews: [], harvests: [], orders: [] }));
  const { text } = await get();
  expect(text).not.toContain('Brew 7:');
  expect(text).not.toContain('STATUS:CANCELLED');
});

test('18: refresh hints are there, and beside the address it is said how slow a calendar may be', async () => {
  const all = await lines();
  expect(all).toContain('REFRESH-INTERVAL;VALUE=DURATION:PT4H');
  expect(all).toContain('X-PUBLISHED-TTL:PT4H');
  const { json } = await open.ask('GET', '/api/feeds');
  const advice = (json as { advice: string[] }).advice.join(' ');
  for (const words of [/only a hint/, /phone or laptop/, /on the web/, /a day or longer/]) {
    expect(advice).toMatch(words);
  }
});

test('19: alarms only where they are asked for; CRLF, 75 octets, escaped', async () => {
  expect((await get()).text).not.toContain('VALARM');
  path = await aFeed({ alarm: { minutesBefore: 20, daysBefore: 0, atTime: '07:00' } });
  expect(
    (await events()).every(({ alarms, summary }) => alarms.length === 1 || /^Done/.test(summary)),
  ).toBe(true);
  const title = 'Fest; bière, \\ 🍺 '.repeat(12).trim();
  const text = calendarText({
    name: title,
    timeZone: 'Europe/Dublin',
    base: 'http://127.0.0.1:8642',
    entries: [
      {
        uid: '0b9f6a9e-5f0f-4f0b-9a55-0c6f6f1c2f11',
        sequence: 0,
        changedAt: new Date('2027-01-04T08:00:00Z'),
        task: aTask({ title }),
      },
    ],
  });
  expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
  for (const line of text.split('\r\n')) {
    expect(Buffer.byteLength(line)).toBeLessThanOrEqual(75);
    expect(line).not.toContain('\ufffd');
  }
  expect(readCalendar(text).events[0]?.summary).toBe(title);
});

test('20: one file alone knows the library; id and stamp are ours, names are escaped, no end before its start', async () => {
  const api = fileURLToPath(new URL('../../../api', import.meta.url));
  const users = readdirSync(api, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts'))
    .filter((name) => readFileSync(join(api, name), 'utf8').includes("'ical-generator'"));
  expect(users).toEqual([join('feed', 'calendar.ts')]);
  const entry = (minutes: number, time: string | null) => ({
    uid: '0b9f6a9e-5f0f-4f0b-9a55-0c6f6f1c2f11',
    sequence: 4,
    changedAt: new Date('2027-01-04T08:00:00Z'),
    task: aTask({ minutes, time }),
  });
  for (const [minutes, time] of [
    [0, '23:59'],
    [0, null],
    [1, '00:00'],
    [900, '12:00'],
  ] as const) {
    const [event] = readCalendar(
      calendarText({
        name: 'a,b;c\\d\ne',
        timeZone: 'Australia/Lord_Howe',
        base: 'http://x.example',
        entries: [entry(minutes, time)],
      }),
    ).events;
    expect(event?.uid).toBe(entry(0, null).uid);
    expect(event?.stamp).toBe('2027-01-04T08:00:00Z');
    expect((event?.end ?? '') > (event?.start ?? '')).toBe(true);
  }
  // Stored and read back, the marks are still those of the entry.
  await readBack(open.parts.store.db, 'UPDATE calendar_entry SET sequence = 41');
  open.setToday('2027-01-05');
  expect(new Set((await events()).map(({ sequence }) => sequence))).toEqual(new Set([41]));
});
