// Every refusal of every route has the one error shape, and none of them changes anything.
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { OPERATIONS, type Operation } from '../../../api/routes/contract.ts';
import { MAX_BODY_BYTES } from '../../../api/routes/guards.ts';
import { readHouse } from '../../../api/store/house.ts';
import { readPlan } from '../../../api/store/plans.ts';
import { readRecord } from '../../../api/store/record.ts';
import { ErrorBody } from '../../../planner/index.ts';
import { type Answer, type OpenApp, openApp } from '../../builders/app.ts';

let open: OpenApp;
let before = '';
beforeAll(async () => {
  open = await openApp();
  before = await everything();
});
afterAll(() => open.close());

/** All that a refusal must leave alone. */
async function everything(): Promise<string> {
  const { db } = open.parts.store;
  const { text } = await open.ask('GET', '/api/feeds');
  return JSON.stringify([
    await readHouse(db),
    await readRecord(db, 1),
    await readPlan(db, 'in-force'),
    await readPlan(db, 'draft'),
    text,
    open.parts.runs.current(),
  ]);
}

function placeOf(operation: Operation): string {
  const id = operation.path.startsWith('/api/questions/') ? 'jar' : crypto.randomUUID();
  return operation.path.replace(':id', id).replace(':token', 'A'.repeat(43));
}

function expectRefusal(answer: Answer, status?: number): ErrorBody['error'] {
  if (status === undefined) {
    expect(answer.status).toBeGreaterThanOrEqual(400);
    expect(answer.status).toBeLessThan(500);
  } else {
    expect(answer.status).toBe(status);
  }
  expect(answer.headers.get('Content-Type')).toMatch(/^application\/json/);
  const { error } = ErrorBody.parse(answer.json);
  // Nothing of the inside shows: no stack, no path, no half-formed value.
  expect(answer.text).not.toMatch(/node_modules|\.ts:\d|\bat \w+ \(|\bNaN\b|\[object|undefined/);
  expect(error.message.length).toBeGreaterThan(10);
  return error;
}

const METHODS = ['GET', 'PUT', 'POST', 'DELETE', 'PATCH', 'OPTIONS'];
const withBody = OPERATIONS.filter((operation) => operation.body !== undefined);
const named = (operations: readonly Operation[]) =>
  operations.map((operation) => [`${operation.method} ${operation.path}`, operation] as const);

test.each([
  '/',
  '/api',
  '/api/',
  '/api/nothing',
  '/api/house/nothing',
  '/feed',
  '/feed/x.ics',
  '/feed/../api/house/x',
  '/%00',
  '/%E0%A4%A',
])('nothing is there: %s', async (path) => {
  expectRefusal(await open.ask('GET', path), 404);
});

test.each([...new Set(OPERATIONS.map(({ path }) => path))])(
  'a wrong method is told which ones would do: %s',
  async (path) => {
    const known = OPERATIONS.filter((operation) => operation.path === path);
    const right = known.map(({ method }) => method.toUpperCase());
    const [operation] = known;
    if (operation === undefined) throw new Error('no operation');
    for (const method of METHODS.filter((one) => !right.includes(one))) {
      const answer = await open.ask(method, placeOf(operation));
      expect(expectRefusal(answer, 405).code).toBe('wrong-method');
      for (const allowed of right) expect(answer.headers.get('Allow')).toContain(allowed);
    }
  },
);

/** What tells one kind of body from another: without it nothing else of the body can be judged. */
const KNOWN: Record<string, object> = {
  '/api/news': { kind: 'unpinned', brew: 'Quill' },
  '/api/surveys': { kind: 'limits' },
};

describe.each(named(withBody))('%s', (_name, operation) => {
  const send = (body: unknown, headers: Record<string, string> = {}) =>
    open.ask(operation.method.toUpperCase(), placeOf(operation), body, {
      'If-Match': '1',
      ...headers,
    });

  test.each([
    ['no JSON', '{"a":'],
    ['an empty body', ' '],
    ['JSON that is no object', '42'],
    ['null', 'null'],
    ['a list', '[]'],
    ['very deep nesting', `${'['.repeat(100_000)}${']'.repeat(100_000)}`],
    ['a prototype', '{"__proto__":{"x":1},"constructor":1}'],
  ])('refuses %s', async (_what, body) => {
    expectRefusal(await send(body));
  });

  test('names an unknown field', async () => {
    const known = KNOWN[operation.path] ?? {};
    const error = expectRefusal(await send({ ...known, surprise: 1 }));
    expect(error.problems.map(({ path }) => path)).toContain('surprise');
  });

  test('refuses what does not say that it is JSON', async () => {
    expectRefusal(await send('{}', { 'Content-Type': 'text/plain' }), 415);
  });

  test('refuses what is too large, whether it says so or not', async () => {
    const large = `{"x":"${'x'.repeat(MAX_BODY_BYTES)}"}`;
    expectRefusal(await send(large), 413);
    const length = { 'Content-Length': String(MAX_BODY_BYTES + 1) };
    expectRefusal(await send('{}', length), 413);
  });
});

describe('who may ask', () => {
  test.each(['evil.example', 'evil.example:8642', '127.0.0.1.evil.example', ''])(
    'a host of another name gets nothing: "%s"',
    async (host) => {
      for (const path of ['/api/house', '/api/feeds', `/feed/${'A'.repeat(43)}.ics`]) {
        expectRefusal(await open.ask('GET', path, undefined, { Host: host }), 421);
      }
    },
  );

  test('the names of this machine get an answer', async () => {
    for (const host of ['localhost:8642', '127.0.0.1:8642', '[::1]:8642']) {
      expect((await open.ask('GET', '/api/health', undefined, { Host: host })).status).toBe(200);
    }
  });

  const changing = named(OPERATIONS.filter(({ method }) => method !== 'get'));
  test.each(changing)('a page of another site changes nothing: %s', async (_name, operation) => {
    const ask = (headers: Record<string, string>) =>
      open.ask(operation.method.toUpperCase(), placeOf(operation), undefined, {
        Host: 'localhost:8642',
        ...headers,
      });
    expectRefusal(await ask({ Origin: 'https://evil.example' }), 403);
    expectRefusal(await ask({ Origin: 'null' }), 403);
    expectRefusal(await ask({ Origin: 'http://localhost:9999' }), 403);
    expectRefusal(await ask({ 'Sec-Fetch-Site': 'cross-site' }), 403);
  });
});

describe('things that are not there', () => {
  test.each([
    ['POST', '/api/runs/:id/stop', undefined],
    ['GET', '/api/runs/:id/events', undefined],
    ['DELETE', '/api/feeds/:id', undefined],
    ['POST', '/api/questions/:id', {}],
    ['POST', '/api/draft/adopt', { draft: crypto.randomUUID() }],
    ['POST', '/api/draft/dismiss', { draft: crypto.randomUUID() }],
    ['GET', `/feed/${'A'.repeat(43)}.ics`, undefined],
  ])('%s %s', async (method, path, body) => {
    expectRefusal(await open.ask(method, path.replace(':id', crypto.randomUUID()), body), 404);
  });

  test('an id that is none', async () => {
    expectRefusal(await open.ask('GET', '/api/runs/none/events'), 400);
    expectRefusal(await open.ask('DELETE', '/api/feeds/1'), 400);
  });

  test('an empty database answers, and refuses with sentences what needs a house', async () => {
    const empty = await openApp({ house: null });
    try {
      for (const path of ['/api/house', '/api/plan', '/api/tasks', '/api/record', '/api/draft']) {
        expect((await empty.ask('GET', path)).status).toBe(200);
      }
      expectRefusal(await empty.ask('POST', '/api/runs', {}), 409);
      expectRefusal(await empty.ask('GET', '/api/house/export'), 404);
      const news = { kind: 'slipped', brew: 'Quill', to: '2027-02-06' };
      expectRefusal(await empty.ask('POST', '/api/news', news), 409);
    } finally {
      await empty.close();
    }
  });
});

test('days of a question have to be days, in order', async () => {
  for (const query of [
    'from=2027-02-30',
    'from=yesterday',
    'to=1',
    'from=2027-02-02&to=2027-02-01',
    'x=1',
    'from=2027-01-01&from=2027-01-02',
  ]) {
    expectRefusal(await open.ask('GET', `/api/tasks?${query}`), 400);
  }
});

test('whatever is sent: an answer that is promised or a refusal, never an error of the server', async () => {
  const bodies = fc.oneof(
    fc.jsonValue(),
    fc.record({
      kind: fc.constantFrom('slipped', 'brewed', 'pinned', 'x'),
      brew: fc.string(),
      to: fc.string(),
    }),
    fc.record({ kinds: fc.array(fc.string()), alarm: fc.jsonValue() }),
    fc.record({ files: fc.dictionary(fc.string(), fc.string()), apply: fc.boolean() }),
  );
  await fc.assert(
    fc.asyncProperty(
      fc.constantFrom(...withBody),
      bodies,
      fc.string(),
      async (operation, body, tag) => {
        const headers = { 'If-Match': tag.replaceAll(/[^\x21-\x7e]/g, '') || '0' };
        const answer = await open.ask(
          operation.method.toUpperCase(),
          placeOf(operation),
          JSON.stringify(body),
          headers,
        );
        if (answer.status >= 400) expectRefusal(answer);
        else expect(Object.keys(operation.answers)).toContain(String(answer.status));
      },
    ),
    { numRuns: 400 },
  );
  expect(open.reported).toEqual([]);
});

test('after all these refusals everything is as it was', async () => {
  // The free-for-all above may have made feeds and runs, which it is allowed to.
  const parse = (text: string) => (JSON.parse(text) as unknown[]).slice(0, 4);
  expect(parse(await everything())).toEqual(parse(before));
});
