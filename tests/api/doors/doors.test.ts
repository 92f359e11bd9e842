// The doors: what is shut without a session, how one is opened, kept, listed and ended, and how often one may guess.
import { hash } from '@node-rs/argon2';
import { afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { OPERATIONS } from '../../../api/routes/contract.ts';
import type { DoorsAnswer } from '../../../api/routes/door-shapes.ts';
import { session } from '../../../api/store/tables.ts';
import { ErrorBody } from '../../../planner/index.ts';
import { type Answer, type OpenApp, openApp } from '../../builders/app.ts';

const PASSWORD = 'four unrelated words';
// Cheap on purpose: how costly the real one is has a test of its own.
const CHEAP = { memoryCost: 64, timeCost: 1 };
const ORIGIN = { Origin: 'http://localhost' };
let stored: string | null = null;
let firstHash = '';
let open: OpenApp;

beforeAll(async () => {
  firstHash = await hash(PASSWORD, CHEAP);
});
beforeEach(async () => {
  stored = firstHash;
  open = await openApp({ doors: { password: () => stored } });
});
afterEach(() => open.close());

const cookieOf = (answer: Answer) => (answer.headers.get('Set-Cookie') ?? '').split(';')[0] ?? '';
const signIn = (password: unknown, headers: Record<string, string> = {}, at = open) =>
  at.ask('POST', '/api/doors/sign-in', { password }, headers);

/** Signed in: the headers that a browser sends from then on. */
async function signedIn(browser = 'A browser', at = open): Promise<Record<string, string>> {
  const answer = await signIn(PASSWORD, { 'User-Agent': browser }, at);
  expect(answer.status).toBe(200);
  return { Cookie: cookieOf(answer), ...ORIGIN };
}

const doors = async (headers: Record<string, string> = {}) =>
  (await open.ask('GET', '/api/doors', undefined, headers)).json as DoorsAnswer;

function refused(answer: Answer, status: number): string {
  expect(answer.status).toBe(status);
  return ErrorBody.parse(answer.json).error.code;
}

const placeOf = (path: string) =>
  path.replace(':token', 'A'.repeat(43)).replace(/:[a-z]+/g, crypto.randomUUID());
const named = OPERATIONS.map((one) => [`${one.method.toUpperCase()} ${one.path}`, one] as const);
const closed = named.filter(([, one]) => one.open !== true);

describe('without a session', () => {
  test.each(closed)('nothing is told and nothing done: %s', async (_name, operation) => {
    const method = operation.method.toUpperCase();
    const methods = method === 'GET' ? ['GET', 'HEAD'] : [method];
    for (const one of methods) {
      const answer = await open.ask(one, placeOf(operation.path));
      expect(answer.status).toBe(401);
      expect(answer.headers.get('WWW-Authenticate')).toBeTruthy();
      if (one !== 'HEAD') expect(refused(answer, 401)).toBe('signed-out');
    }
  });

  test('open are health, the state of the doors, signing in and the calendar, and nothing else', () => {
    expect(named.filter(([, one]) => one.open).map(([name]) => name)).toEqual([
      'GET /api/health',
      'GET /api/doors',
      'POST /api/doors/sign-in',
      'GET /feed/:token.ics',
    ]);
  });

  test.each([
    '/api',
    '/api/',
    '/api/nothing',
    '/api/house/',
    '/api//house',
    '/%61pi/house',
    '/api/h%6Fuse',
    '/api/doors/../house',
    '/api/health/../house',
    '/api/health/x',
    '/api/house?x=/api/health',
    '/api/house#/api/health',
  ])('no way around: %s', async (path) => {
    refused(await open.ask('GET', path), 401);
  });

  test('methods that nobody expects are no way around', async () => {
    for (const method of ['OPTIONS', 'PATCH', 'PUT', 'DELETE', 'POST', 'PROPFIND']) {
      refused(await open.ask(method, '/api/plan'), 401);
    }
    const override = { 'X-HTTP-Method-Override': 'GET', 'X-Original-URL': '/api/health' };
    refused(await open.ask('GET', '/api/plan', undefined, override), 401);
  });

  test('the calendar is reached by its token alone', async () => {
    const made = await open.ask('POST', '/api/feeds', {}, await signedIn());
    const { address } = (made.json as { made: { address: string } }).made;
    const path = new URL(address).pathname;
    const answer = await open.ask('GET', path);
    expect(answer.status).toBe(200);
    expect(answer.text).toContain('BEGIN:VCALENDAR');
    expect(refused(await open.ask('GET', `/feed/${'A'.repeat(43)}.ics`), 404)).toBe('no-such-feed');
  });

  test('who is signed in is not told', async () => {
    await signedIn();
    expect(await doors()).toEqual({ shut: true, signedIn: false, sessions: [] });
  });
});

test('where no password is set and only this machine gets in, everything answers and there is nothing to sign in to', async () => {
  stored = null;
  expect((await open.ask('GET', '/api/plan')).status).toBe(200);
  expect(await doors()).toEqual({ shut: false, signedIn: false, sessions: [] });
  expect(refused(await signIn(PASSWORD), 409)).toBe('no-password');
});

test('where others can reach it, it stays shut even when the password file is lost', async () => {
  const lost = await openApp({ doors: { password: () => null, reachable: true } });
  try {
    refused(await lost.ask('GET', '/api/plan'), 401);
    expect((await lost.ask('GET', '/api/health')).status).toBe(200);
  } finally {
    await lost.close();
  }
});

describe('signing in', () => {
  test('the right password opens every place', async () => {
    const headers = await signedIn();
    for (const [, { method, path }] of closed) {
      if (method !== 'get' || path.includes(':')) continue;
      expect((await open.ask('GET', path, undefined, headers)).status, path).toBe(200);
    }
  });

  test('the cookie holds 256 random bits, for no script, no other site; its hash alone is stored', async () => {
    const one = await signIn(PASSWORD);
    const two = await signIn(PASSWORD);
    const line = one.headers.get('Set-Cookie') ?? '';
    expect(line).toMatch(/^barmline=[A-Za-z0-9_-]{43};/);
    for (const part of ['HttpOnly', 'SameSite=Strict', 'Path=/']) expect(line).toContain(part);
    expect(line).not.toContain('Domain');
    expect(cookieOf(one)).not.toBe(cookieOf(two));
    const rows = JSON.stringify(await open.parts.store.db.select().from(session));
    expect(rows).not.toContain(cookieOf(one).slice('barmline='.length));
    expect(one.text).not.toContain(cookieOf(one).slice('barmline='.length));
  });

  test('over https the cookie is Secure and bound to the host', async () => {
    const https = await openApp({
      base: 'https://brewhouse.example',
      doors: { password: () => stored, reachable: true },
    });
    try {
      const answer = await signIn(PASSWORD, { Origin: 'https://brewhouse.example' }, https);
      const line = answer.headers.get('Set-Cookie') ?? '';
      expect(line).toMatch(/^__Host-barmline=/);
      expect(line).toContain('Secure');
      const headers = { Cookie: cookieOf(answer) };
      expect((await https.ask('GET', '/api/plan', undefined, headers)).status).toBe(200);
      // A cookie that a page over http could have planted does not count.
      const planted = { Cookie: cookieOf(answer).replace('__Host-', '') };
      refused(await https.ask('GET', '/api/plan', undefined, planted), 401);
    } finally {
      await https.close();
    }
  });

  test.each([
    ['wrong', 'four unrelated word'],
    ['empty', ''],
    ['the stored hash', () => firstHash],
    ['very long', 'x'.repeat(100_000)],
    ['with a nought in it', `${PASSWORD}\u0000`],
  ])('refused: %s', async (_what, password) => {
    const answer = await signIn(typeof password === 'function' ? password() : password);
    expect(refused(answer, 401)).toBe('wrong-password');
    expect(answer.headers.get('Set-Cookie')).toBeNull();
  });

  test('a refusal never says back what may be a password', async () => {
    for (const body of [
      { password: ['four unrelated words'] },
      { password: 'four unrelated words', user: 'me' },
      { password: { x: 'four unrelated words' } },
      { Password: 1 },
    ]) {
      const answer = await open.ask('POST', '/api/doors/sign-in', body);
      expect(refused(answer, 400)).toBe('bad-request');
      expect(answer.text).not.toContain('unrelated');
    }
    expect(open.reported).toEqual([]);
  });

  test.each([
    'barmline=',
    'barmline=x',
    `barmline=${'A'.repeat(43)}`,
    `barmline=${"' OR 1=1 --".padEnd(43, 'A')}`,
    `barmline=${'A'.repeat(10_000)}`,
    'barmline=%E0%A4%A',
  ])('a cookie that is no session opens nothing: %s', async (cookie) => {
    refused(await open.ask('GET', '/api/plan', undefined, { Cookie: cookie }), 401);
  });

  test('a token that the browser brought along is not taken over', async () => {
    const brought = `barmline=${'B'.repeat(43)}`;
    const answer = await signIn(PASSWORD, { Cookie: brought, ...ORIGIN });
    expect(cookieOf(answer)).not.toBe(brought);
    refused(await open.ask('GET', '/api/plan', undefined, { Cookie: brought }), 401);
  });
});

describe('guessing', () => {
  test('five wrong ones, then none for a while: not even the right one, and it says how long', async () => {
    for (let at = 0; at < 5; at += 1) refused(await signIn('wrong password'), 401);
    const answer = await signIn(PASSWORD);
    expect(refused(answer, 429)).toBe('too-many-tries');
    const wait = Number(answer.headers.get('Retry-After'));
    expect(wait).toBeGreaterThan(0);
    expect(wait).toBeLessThanOrEqual(15 * 60);
  });

  test('many at once are no way around', async () => {
    const answers = await Promise.all(Array.from({ length: 30 }, () => signIn('wrong password')));
    expect(answers.filter(({ status }) => status === 401)).toHaveLength(5);
    expect(answers.filter(({ status }) => status === 429)).toHaveLength(25);
  });

  test('the right one forgets the wrong ones before it; who is signed in stays so', async () => {
    for (let at = 0; at < 4; at += 1) await signIn('wrong password');
    const headers = await signedIn();
    for (let at = 0; at < 5; at += 1) refused(await signIn('wrong password'), 401);
    refused(await signIn('wrong password'), 429);
    expect((await open.ask('GET', '/api/plan', undefined, headers)).status).toBe(200);
  });

  test('X-Forwarded-For of a stranger does not make a new address', async () => {
    for (let at = 0; at < 5; at += 1) await signIn('wrong', { 'X-Forwarded-For': `10.0.0.${at}` });
    refused(await signIn('wrong', { 'X-Forwarded-For': '10.0.0.99' }), 429);
  });
});

describe('changes from a browser that is signed in', () => {
  test('need to say from which page: silence, another site and another port are refused', async () => {
    const { Cookie = '' } = await signedIn();
    const make = (headers: Record<string, string>) =>
      open.ask('POST', '/api/feeds', {}, { Cookie, ...headers });
    expect(refused(await make({}), 403)).toBe('foreign-page');
    expect(refused(await make({ Origin: 'https://evil.example' }), 403)).toBe('foreign-page');
    expect(refused(await make({ Origin: 'http://localhost:9' }), 403)).toBe('foreign-page');
    expect(refused(await make({ Origin: 'null' }), 403)).toBe('foreign-page');
    expect(refused(await make({ 'Sec-Fetch-Site': 'same-site' }), 403)).toBe('foreign-page');
    expect((await make(ORIGIN)).status).toBe(201);
    expect((await make({ 'Sec-Fetch-Site': 'same-origin' })).status).toBe(201);
  });

  test('through a proxy that names its own host, the base is the page', async () => {
    const proxied = await openApp({
      base: 'https://brewhouse.example',
      doors: { password: () => stored, reachable: true },
    });
    try {
      const headers = { Host: '127.0.0.1:8642', Origin: 'https://brewhouse.example' };
      expect((await signIn(PASSWORD, headers, proxied)).status).toBe(200);
      const foreign = { Host: '127.0.0.1:8642', Origin: 'http://brewhouse.example' };
      expect((await signIn(PASSWORD, foreign, proxied)).status).toBe(403);
    } finally {
      await proxied.close();
    }
  });
});

describe('sessions', () => {
  test('are listed with their browsers, and one can be ended from another', async () => {
    const phone = await signedIn('A phone');
    const laptop = await signedIn('A laptop');
    const { sessions } = await doors(laptop);
    expect(sessions.map(({ browser, here }) => [browser, here]).sort()).toEqual([
      ['A laptop', true],
      ['A phone', false],
    ]);
    const other = sessions.find(({ here }) => !here)?.id;
    const ended = await open.ask('DELETE', `/api/doors/sessions/${other}`, undefined, laptop);
    expect((ended.json as DoorsAnswer).sessions).toHaveLength(1);
    refused(await open.ask('GET', '/api/plan', undefined, phone), 401);
    expect((await open.ask('GET', '/api/plan', undefined, laptop)).status).toBe(200);
    const again = await open.ask('DELETE', `/api/doors/sessions/${other}`, undefined, laptop);
    expect(refused(again, 404)).toBe('no-such-session');
  });

  test('signing out ends the session on the server too, not only the cookie', async () => {
    const headers = await signedIn();
    const out = await open.ask('POST', '/api/doors/sign-out', undefined, headers);
    expect(out.json).toEqual({ shut: true, signedIn: false, sessions: [] });
    expect(out.headers.get('Set-Cookie')).toMatch(/^barmline=; Max-Age=0/);
    refused(await open.ask('GET', '/api/plan', undefined, headers), 401);
  });

  test('another password ends them all, at once', async () => {
    const headers = await signedIn();
    stored = await hash('another password', CHEAP);
    refused(await open.ask('GET', '/api/plan', undefined, headers), 401);
    // Even the same password under a new hash is a new one.
    stored = await hash(PASSWORD, CHEAP);
    refused(await open.ask('GET', '/api/plan', undefined, headers), 401);
    expect((await doors(await signedIn())).sessions).toHaveLength(1);
  });

  test('one that is not used for 30 days is over; one that is used lasts 180', async () => {
    const idle = await signedIn('Idle');
    open.setNow('2027-02-03T07:59:00Z');
    expect((await doors(idle)).signedIn).toBe(true);
    // Used on 3 February, so 30 days more: until 5 March.
    open.setNow('2027-03-05T07:58:00Z');
    expect((await doors(idle)).signedIn).toBe(true);
    open.setNow('2027-04-04T08:00:00Z');
    expect((await doors(idle)).signedIn).toBe(false);

    open.setNow('2027-01-04T08:00:00Z');
    const used = await signedIn('Used');
    // 180 days after 4 January 2027 is 3 July 2027.
    for (const day of ['02-01', '03-01', '03-29', '04-26', '05-24', '06-21', '07-03']) {
      open.setNow(`2027-${day}T08:00:00Z`);
      expect((await doors(used)).signedIn, day).toBe(true);
    }
    open.setNow('2027-07-03T08:00:01Z');
    expect((await doors(used)).signedIn).toBe(false);
  });

  test('at most fifty are kept', async () => {
    const first = await signedIn('First');
    open.setNow('2027-01-04T08:01:00Z');
    let last = first;
    for (let at = 0; at < 50; at += 1) last = await signedIn(`Number ${at}`);
    expect((await doors(last)).sessions).toHaveLength(50);
    expect((await doors(first)).signedIn).toBe(false);
  });

  test('what a browser calls itself is data', async () => {
    const name = '<script>alert(1)</script>'.padEnd(5000, 'x');
    const headers = await signedIn(name);
    const [shown] = (await doors(headers)).sessions;
    expect(shown?.browser).toBe(name.slice(0, 200));
  });
});
