// The feed as calendars see it, against a real database. Each point of the list that has bitten somebody has its test.
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { TASK_KINDS, type TaskKind } from '../../../planner/index.ts';
import { type OpenApp, openApp } from '../../builders/app.ts';
import { readCalendar } from '../../builders/calendar.ts';
import { aPlan, aPlannedBrew, daysAfter, quill } from '../../builders/plan.ts';

let open: OpenApp;
beforeEach(async () => {
  open = await openApp();
});
afterEach(() => open.close());

type Made = { made: { id: string; address: string; webcal: string } };

/** Makes a feed and gives its path. */
async function aFeed(request: { kinds?: TaskKind[]; alarm?: object; look?: object } = {}) {
  const { json } = await open.ask('POST', '/api/feeds', request);
  const { made } = json as Made;
  return { ...made, path: new URL(made.address).pathname };
}

const get = (path: string, headers: Record<string, string> = {}) =>
  open.ask('GET', path, undefined, headers);

async function eventsOf(path: string) {
  return readCalendar((await get(path)).text).events;
}

describe('the address', () => {
  test('is unguessable, ends in .ics, and is told again alike', async () => {
    const feed = await aFeed();
    // 43 characters of base64url hold 256 bits
    expect(feed.address).toMatch(/^http:\/\/127\.0\.0\.1:8642\/feed\/[A-Za-z0-9_-]{43}\.ics$/);
    expect(feed.webcal).toBe(feed.address.replace('http:', 'webcal:'));
    const { json } = await get('/api/feeds');
    expect((json as { feeds: { address: string }[] }).feeds.map(({ address }) => address)).toEqual([
      feed.address,
    ]);
  });

  test('is not stored: only its hash is', async () => {
    const feed = await aFeed();
    const token = feed.path.slice('/feed/'.length, -'.ics'.length);
    const { readFileSync, readdirSync } = await import('node:fs');
    for (const name of readdirSync(open.folder)) {
      const bytes = readFileSync(`${open.folder}/${name}`);
      expect(bytes.includes(token), name).toBe(false);
    }
  });

  test('is closed for good when it is revoked, and no other with it', async () => {
    const [one, two] = [await aFeed(), await aFeed()];
    expect((await open.ask('DELETE', `/api/feeds/${one.id}`)).status).toBe(200);
    expect((await get(one.path)).status).toBe(404);
    expect((await get(two.path)).status).toBe(200);
    expect((await open.ask('DELETE', `/api/feeds/${one.id}`)).status).toBe(404);
  });

  test.each([
    [
      'one character off',
      (path: string) => path.replace(/.(?=\.ics$)/, (c) => (c === 'A' ? 'E' : 'A')),
    ],
    ['another case', (path: string) => path.toLowerCase()],
    ['without its ending', (path: string) => path.replace('.ics', '')],
    ['with something before it', (path: string) => path.replace('/feed/', '/feed/x')],
  ])('opens nothing: %s', async (_what, change) => {
    expect((await get(change((await aFeed()).path))).status).toBe(404);
  });
});

describe('what is in it', () => {
  test('every task of the plan in force, all the way forward', async () => {
    const { path } = await aFeed();
    const events = await eventsOf(path);
    const { json } = await get('/api/tasks');
    const { tasks } = json as { tasks: { uid: string; title: string; day: string }[] };
    expect(tasks.length).toBeGreaterThan(10);
    expect(events.map(({ uid }) => uid).sort()).toEqual(tasks.map(({ uid }) => uid).sort());
    for (const task of tasks) {
      const event = events.find(({ uid }) => uid === task.uid);
      expect(event?.summary).toBe(task.title);
    }
  });

  test('no cap on a long season', async () => {
    const brews = Array.from({ length: 300 }, (_, index) =>
      aPlannedBrew({ brew: `Brew ${index}`, day: daysAfter('2027-01-09', 7 * index) }),
    );
    await open.putInForce(aPlan({ brews, harvests: [], orders: [] }));
    const pitches = (await eventsOf((await aFeed()).path)).filter(
      ({ categories }) => categories === 'brew-pitch',
    );
    expect(pitches).toHaveLength(300);
  });

  test('by kind: only those', async () => {
    const all = await eventsOf((await aFeed()).path);
    const some = await eventsOf((await aFeed({ kinds: ['harvest', 'order'] })).path);
    expect(new Set(some.map(({ categories }) => categories))).toEqual(
      new Set(['harvest', 'order']),
    );
    const wanted = all.filter(({ categories }) => ['harvest', 'order'].includes(categories));
    expect(some.map(({ uid }) => uid)).toEqual(wanted.map(({ uid }) => uid));
    expect(TASK_KINDS).toContain(all[0]?.categories);
  });

  test('alarms only where they were asked for', async () => {
    const alarm = { minutesBefore: 30, daysBefore: 0, atTime: '08:00' };
    const plain = await eventsOf((await aFeed()).path);
    expect(plain.flatMap(({ alarms }) => alarms)).toEqual([]);
    const loud = await eventsOf((await aFeed({ alarm })).path);
    expect(loud.every(({ alarms }) => alarms.length === 1)).toBe(true);
  });

  test('as whole days and in other units only where it was asked for; the marks stay the same', async () => {
    const plain = await eventsOf((await aFeed()).path);
    const other = await eventsOf(
      (await aFeed({ look: { allDay: true, volume: 'us', gravity: 'plato' } })).path,
    );
    expect(plain.some(({ allDay }) => !allDay)).toBe(true);
    expect(other.every(({ allDay }) => allDay)).toBe(true);
    expect(plain.map(({ description }) => description).join()).toMatch(/\d mL/);
    expect(other.map(({ description }) => description).join()).not.toMatch(/\d (mL|L|°C)\b/);
    const marks = (events: typeof plain) =>
      events.map(({ uid, sequence, stamp }) => [uid, sequence, stamp]);
    expect(marks(other)).toEqual(marks(plain));
  });

  test('history goes back 180 days and no further', async () => {
    const { path } = await aFeed();
    const first = (await eventsOf(path)).map(({ start }) => start.slice(0, 10)).sort()[0] ?? '';
    open.setToday(daysAfter(first, 180));
    expect((await eventsOf(path)).some(({ start }) => start.startsWith(first))).toBe(true);
    open.setToday(daysAfter(first, 181));
    expect((await eventsOf(path)).some(({ start }) => start.startsWith(first))).toBe(false);
  });

  test('links are built on the reachable base', async () => {
    const elsewhere = await openApp({ base: 'https://brewhouse.example' });
    try {
      const { json } = await elsewhere.ask('POST', '/api/feeds', {});
      const { address } = (json as Made).made;
      expect(address).toMatch(/^https:\/\/brewhouse\.example\/feed\//);
      const { text } = await elsewhere.ask('GET', new URL(address).pathname);
      for (const { url } of readCalendar(text).events) {
        expect(url).toMatch(/^https:\/\/brewhouse\.example\/#\/tasks\//);
      }
    } finally {
      await elsewhere.close();
    }
  });
});

describe('after a re-plan', () => {
  test('entries change in place: no UID is lost or doubled, unchanged ones keep their stamps', async () => {
    const { path } = await aFeed();
    const before = await eventsOf(path);
    open.setNow('2027-01-05T09:00:00Z');
    // Quill moves by a week; everything of the other brews stays.
    const moved = quill({ day: '2027-02-06', emptiedOn: '2027-02-20', dryHopOn: '2027-02-14' });
    const plan = aPlan();
    await open.putInForce({
      ...plan,
      brews: plan.brews.map((brew) => (brew.brew === 'Quill' ? moved : brew)),
    });
    const after = await eventsOf(path);
    const old = new Map(before.map((event) => [event.uid, event]));
    let [same, changed] = [0, 0];
    for (const event of after) {
      const was = old.get(event.uid);
      if (was === undefined) continue;
      if (
        was.start === event.start &&
        was.summary === event.summary &&
        was.description === event.description
      ) {
        expect(event).toEqual(was);
        same += 1;
      } else {
        expect(event.stamp).toBe('2027-01-05T09:00:00Z');
        expect(event.sequence).toBe(was.sequence + (was.start === event.start ? 0 : 1));
        changed += 1;
      }
    }
    expect(same).toBeGreaterThan(5);
    expect(changed).toBeGreaterThan(2);
    expect(new Set(after.map(({ uid }) => uid)).size).toBe(after.length);
    const pitch = (events: typeof after) =>
      events.find(({ url }) => decodeURIComponent(url).endsWith('brew-pitch:Quill'));
    expect(pitch(after)?.uid).toBe(pitch(before)?.uid);
    expect(pitch(after)?.start.slice(0, 10)).toBe('2027-02-06');
  });

  test('the same plan once more changes not one byte', async () => {
    const { path } = await aFeed();
    const before = (await get(path)).text;
    open.setNow('2027-01-06T09:00:00Z');
    await open.putInForce(aPlan());
    expect((await get(path)).text).toBe(before);
  });

  test('what is gone is left out, not cancelled', async () => {
    const { path } = await aFeed();
    await open.putInForce(aPlan({ brews: [aPlannedBrew()], harvests: [], orders: [] }));
    const { text } = await get(path);
    expect(text).not.toContain('CANCELLED');
    expect(text).not.toContain('Quill');
  });
});

describe('over HTTP', () => {
  test('an unchanged feed is answered with 304 and nothing else (RFC 9110 §13.1.2, §15.4.5)', async () => {
    const { path } = await aFeed();
    const full = await get(path);
    const tag = full.headers.get('ETag') ?? '';
    expect(tag).toMatch(/^"[A-Za-z0-9_-]+"$/);
    for (const given of [tag, `W/${tag}`, `"x", ${tag}`, '*']) {
      const answer = await get(path, { 'If-None-Match': given });
      expect(answer.status).toBe(304);
      expect(answer.text).toBe('');
      expect(answer.headers.get('ETag')).toBe(tag);
    }
    expect((await get(path, { 'If-None-Match': '"x"' })).status).toBe(200);
    expect((await get(path)).headers.get('ETag')).toBe(tag);
  });

  test('the tag changes with the bytes', async () => {
    const { path } = await aFeed();
    const before = (await get(path)).headers.get('ETag') ?? '';
    await open.putInForce(aPlan({ brews: [aPlannedBrew()], harvests: [], orders: [] }));
    const answer = await get(path, { 'If-None-Match': before });
    expect(answer.status).toBe(200);
    expect(answer.headers.get('ETag')).not.toBe(before);
  });

  test('no header that has bitten somebody', async () => {
    const { path } = await aFeed();
    const { headers } = await get(path, { 'Accept-Encoding': 'gzip, br' });
    expect(headers.get('Content-Type')).toBe('text/calendar; charset=utf-8');
    for (const absent of [
      'Last-Modified',
      'Content-Disposition',
      'Content-Encoding',
      'Set-Cookie',
    ]) {
      expect(headers.get(absent)).toBeNull();
    }
  });

  test('HEAD answers as GET does, and Accept does not matter', async () => {
    const { path } = await aFeed();
    const full = await get(path);
    const head = await open.ask('HEAD', path);
    expect(head.status).toBe(200);
    expect(head.text).toBe('');
    for (const name of ['Content-Type', 'Content-Length', 'ETag']) {
      expect(head.headers.get(name)).toBe(full.headers.get(name));
    }
    expect(Number(head.headers.get('Content-Length'))).toBe(Buffer.byteLength(full.text));
    for (const accept of ['text/html', 'application/json', 'image/png']) {
      expect((await get(path, { Accept: accept })).text).toBe(full.text);
    }
  });
});

test('no address is ever written to the terminal', async () => {
  const { path } = await aFeed();
  await get(path);
  open.parts.store.close();
  await open.parts.store.write(() => Promise.resolve()).catch(() => undefined);
  // With the database gone this is an error of the server: said without the request.
  expect((await get(path)).status).toBe(500);
  expect(open.reported.length).toBeGreaterThan(0);
  expect(open.reported.join('\n')).not.toContain(path.slice('/feed/'.length, -4));
});
