// What docs/trust.md promises of the doors, one test a promise where no other file has it by name.
import { readFileSync } from 'node:fs';
import { Hono } from 'hono';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { addressOf } from '../../../api/doors/address.ts';
import { hashOf, matches, tokenOf } from '../../../api/feed/token.ts';
import { MAX_BODY_BYTES, MAX_NESTING } from '../../../api/routes/guards.ts';
import { feed } from '../../../api/store/tables.ts';
import { ErrorBody } from '../../../planner/index.ts';
import { type OpenApp, openApp } from '../../builders/app.ts';

let open: OpenApp;
beforeAll(async () => {
  open = await openApp();
});
afterAll(() => open.close());

const codeOf = (json: unknown) => ErrorBody.parse(json).error.code;

describe('headers of every answer, refusals too', () => {
  const places = ['/api/health', '/api/house', '/api/nothing', `/feed/${'A'.repeat(43)}.ics`, '/x'];
  test.each([
    ["default-src 'none'", 'nothing is loaded that is not named'],
    ["script-src 'self'", 'no inline script'],
    ["frame-ancestors 'none'", 'nobody frames it'],
    ["base-uri 'none'", 'no other base'],
    ["form-action 'self'", 'forms stay here'],
    ["object-src 'none'", 'no plug-ins'],
    ["connect-src 'self'", 'it calls nobody else'],
  ])('policy: %s (%s)', async (part) => {
    for (const place of places) {
      const { headers } = await open.ask('GET', place);
      expect(headers.get('Content-Security-Policy')?.split('; '), place).toContain(part);
      expect(headers.get('Content-Security-Policy'), place).not.toContain('unsafe');
    }
  });

  test.each([
    ['X-Content-Type-Options', 'nosniff'],
    ['Referrer-Policy', 'no-referrer'],
    ['Cross-Origin-Resource-Policy', 'same-origin'],
    ['Cross-Origin-Opener-Policy', 'same-origin'],
  ])('%s: %s', async (name, value) => {
    for (const place of places)
      expect((await open.ask('GET', place)).headers.get(name)).toBe(value);
  });

  test('no other origin is let in, and nothing says what the server is made of', async () => {
    const { headers } = await open.ask('GET', '/api/house', undefined, {
      Origin: 'https://evil.example',
    });
    for (const name of ['Access-Control-Allow-Origin', 'Server', 'X-Powered-By'])
      expect(headers.get(name)).toBeNull();
  });
});

describe('limits', () => {
  test('a body: one byte more than is taken', async () => {
    const frame = '{"x":""}'.length;
    const most = `{"x":"${'x'.repeat(MAX_BODY_BYTES - frame)}"}`;
    expect(Buffer.byteLength(most)).toBe(MAX_BODY_BYTES);
    expect((await open.ask('POST', '/api/news', most)).status).toBe(400);
    const more = await open.ask('POST', '/api/news', most.replace('x"}', 'xx"}'));
    expect([more.status, codeOf(more.json)]).toEqual([413, 'too-large']);
  });

  test('nesting: as deep as is taken, and one deeper', async () => {
    const nested = (deep: number) => `${'['.repeat(deep)}${']'.repeat(deep)}`;
    expect(codeOf((await open.ask('POST', '/api/news', nested(MAX_NESTING))).json)).toBe(
      'bad-request',
    );
    expect(codeOf((await open.ask('POST', '/api/news', nested(MAX_NESTING + 1))).json)).toBe(
      'too-deep',
    );
    // Brackets inside a text nest nothing.
    const text = JSON.stringify({ kind: '['.repeat(1000) });
    expect(codeOf((await open.ask('POST', '/api/news', text)).json)).toBe('bad-request');
  });

  test('files: a form of 101 parts', async () => {
    const form = new FormData();
    for (let at = 0; at < 101; at += 1) form.append(`f${at}`, new File(['x'], `${at}.csv`));
    const answer = await open.ask('POST', '/api/house/import', form);
    expect([answer.status, codeOf(answer.json)]).toEqual([413, 'too-many-parts']);
  });

  test('fields: of very many that are wrong 200 are listed, and it says so', async () => {
    const house = Object.fromEntries(Array.from({ length: 5000 }, (_, at) => [`f${at}`, at]));
    const answer = await open.ask('PUT', '/api/house', house, { 'If-Match': '1' });
    expect(answer.status).toBe(400);
    expect(ErrorBody.parse(answer.json).error.problems.length).toBeLessThanOrEqual(201);
  });

  test('an import that is only looked at: 200 problems are listed, errors first, and it says how many more', async () => {
    const { json: exported } = await open.ask('GET', '/api/house/export');
    const { files } = exported as { files: Record<string, string> };
    const head = 'tank,min_fill_l,max_fill_l,min_c,max_c,turnaround_days,bottom_outlet';
    // One wrong cell a row: at least as many errors as rows.
    const rows = Array.from({ length: 300 }, (_, at) => `T${at},12,x,2,24,1,no`);
    const body = {
      files: {
        ...files,
        'tanks.csv': [head, ...rows].join('\r\n'),
        'notes.txt': 'a file of no season, which is a warning',
      },
    };
    const { status, json } = await open.ask('POST', '/api/house/import', body);
    const { problems } = json as { problems: { code: string; level: string; message: string }[] };
    expect([status, problems.length]).toEqual([200, 201]);
    expect(new Set(problems.map(({ level }) => level))).toEqual(new Set(['error']));
    expect(problems.at(-1)).toMatchObject({ code: 'more-problems' });
    const more = Number(/^(\d+) more problems/.exec(problems.at(-1)?.message ?? '')?.[1]);
    expect(more).toBeGreaterThanOrEqual(101);
  });
});

describe('calendar addresses', () => {
  const make = async () => {
    const { json } = await open.ask('POST', '/api/feeds', {});
    const { id, address } = (json as { made: { id: string; address: string } }).made;
    return {
      id,
      path: new URL(address).pathname,
      token: /feed\/(.*)\.ics$/.exec(address)?.[1] ?? '',
    };
  };

  test('hold 256 bits that nobody can count up to', async () => {
    const [one, two] = [await make(), await make()];
    expect(Buffer.from(one.token, 'base64url')).toHaveLength(32);
    expect(one.token).not.toBe(two.token);
    // Without the key of the data folder an id tells nothing of its token.
    expect(tokenOf(Buffer.alloc(32), one.id)).not.toBe(one.token);
  });

  test('are stored as a hash', async () => {
    const { id, token } = await make();
    const rows = await open.parts.store.db.select().from(feed);
    expect(JSON.stringify(rows)).not.toContain(token);
    expect(rows.find((row) => row.id === id)?.tokenHash).toBe(hashOf(token));
  });

  test('are compared in constant time: by timingSafeEqual, over hashes, all of them each time', async () => {
    const { token } = await make();
    expect(matches(token, hashOf(token))).toBe(true);
    expect(matches(`${token.slice(0, -1)}A`, hashOf(token))).toBe(false);
    expect(matches(token, 'short')).toBe(false);
    // What a clock cannot tell reliably the source does: no other comparison is there.
    const source = readFileSync(new URL('../../../api/feed/token.ts', import.meta.url), 'utf8');
    expect(source).toMatch(/timingSafeEqual\(given, stored\)/);
    expect(
      readFileSync(new URL('../../../api/routes/feed.ts', import.meta.url), 'utf8'),
    ).not.toMatch(/tokenHash\s*={2,3}|={2,3}\s*\w*\.?tokenHash/);
  });

  test('are revoked for good', async () => {
    const { id, path } = await make();
    expect((await open.ask('GET', path)).status).toBe(200);
    await open.ask('DELETE', `/api/feeds/${id}`);
    expect((await open.ask('GET', path)).status).toBe(404);
  });
});

test('an error of the inside shows no trace outside, and neither it nor a refusal writes a secret to the terminal', async () => {
  const broken = await openApp();
  const token = 'T'.repeat(43);
  try {
    broken.parts.store.close();
    for (const [method, path, body] of [
      ['GET', `/feed/${token}.ics`, undefined],
      ['GET', '/api/house', undefined],
      ['POST', '/api/doors/sign-in', { password: 'four unrelated words' }],
    ] as const) {
      const answer = await broken.ask(method, path, body, { 'If-Match': '1' });
      expect(answer.status).toBeGreaterThanOrEqual(400);
      expect(answer.text).not.toMatch(/\bat \w+ \(|node_modules|\.ts:\d|sqlite|libsql/i);
      ErrorBody.parse(answer.json);
    }
    expect(broken.reported.length).toBeGreaterThan(0);
    const said = broken.reported.join('\n');
    for (const secret of [token, 'unrelated', broken.parts.feedKey.toString('base64url')])
      expect(said).not.toContain(secret);
  } finally {
    await broken.close().catch(() => undefined);
  }
});

describe('where a request comes from', () => {
  const ask = async (peer: string | undefined, proxies: string[], forwarded?: string) => {
    const app = new Hono().get('/', (c) => c.text(addressOf(c, proxies)));
    const env = {
      incoming: { socket: { remoteAddress: peer, remotePort: 1, remoteFamily: 'IPv4' } },
    };
    const headers = forwarded === undefined ? {} : { 'X-Forwarded-For': forwarded };
    return (await app.request('/', { headers }, env)).text();
  };

  test.each([
    ['no proxy is named: the peer, whatever it says', '10.0.0.9', [], '1.2.3.4', '10.0.0.9'],
    ['a stranger beside the proxy', '10.0.0.9', ['127.0.0.1'], '1.2.3.4', '10.0.0.9'],
    ['the proxy', '127.0.0.1', ['127.0.0.1'], '1.2.3.4', '1.2.3.4'],
    [
      'what stands before the last anybody wrote',
      '127.0.0.1',
      ['127.0.0.1'],
      '6.6.6.6, 1.2.3.4',
      '1.2.3.4',
    ],
    [
      'two proxies',
      '127.0.0.1',
      ['127.0.0.1', '10.0.0.2'],
      '6.6.6.6, 1.2.3.4, 10.0.0.2',
      '1.2.3.4',
    ],
    ['a proxy that says nothing', '127.0.0.1', ['127.0.0.1'], undefined, '127.0.0.1'],
    ['an old address over a new socket', '::ffff:127.0.0.1', ['127.0.0.1'], '1.2.3.4', '1.2.3.4'],
    ['nobody knows', undefined, ['127.0.0.1'], '1.2.3.4', 'unknown'],
  ])('%s', async (_what, peer, proxies, forwarded, address) => {
    expect(await ask(peer, proxies, forwarded)).toBe(address);
  });
});
