// The list of operations is the app's own: every route is in it, and every answer is of the promised shape.
import { afterAll, beforeAll, expect, test } from 'vitest';
import { z } from 'zod';
import { OPERATIONS } from '../../../api/routes/contract.ts';
import { openApi } from '../../../api/routes/openapi.ts';
import { type OpenApp, openApp } from '../../builders/app.ts';
import { aHouse } from '../../builders/plan.ts';

let open: OpenApp;
beforeAll(async () => {
  open = await openApp();
});
afterAll(() => open.close());

test('the operations are the routes of the app', () => {
  const routes = open.app.routes
    .filter(({ method, path }) => method !== 'ALL' && !path.includes('*'))
    .map(({ method, path }) => `${method} ${path.replace(/:file\{.*\}$/, ':token.ics')}`);
  const operations = OPERATIONS.map(({ method, path }) => `${method.toUpperCase()} ${path}`);
  expect([...new Set(routes)].sort()).toEqual(operations.sort());
});

/** The promised shape of an answer. */
function shapeOf(method: string, path: string, status: number): z.ZodType {
  const operation = OPERATIONS.find((one) => one.method === method && one.path === path);
  const shape = operation?.answers[status];
  if (!(shape instanceof z.ZodType)) throw new Error(`${method} ${path} promises no ${status}`);
  return shape;
}

const plainGets = OPERATIONS.filter(({ method, path }) => method === 'get' && !path.includes(':'));
test.each(plainGets.map(({ path }) => path))('GET %s answers as promised', async (path) => {
  const answer = await open.ask('GET', path);
  expect(answer.status).toBe(200);
  shapeOf('get', path, 200).parse(answer.json);
  // HEAD answers alike, without the body (RFC 9110 §9.3.2)
  const head = await open.ask('HEAD', path);
  expect(head.status).toBe(200);
  expect(head.text).toBe('');
  expect(head.headers.get('Content-Type')).toBe(answer.headers.get('Content-Type'));
});

test('PUT /api/house, POST and DELETE /api/feeds answer as promised', async () => {
  const put = await open.ask('PUT', '/api/house', aHouse(), { 'If-Match': '"1"' });
  expect(put.status).toBe(200);
  shapeOf('put', '/api/house', 200).parse(put.json);
  const made = await open.ask('POST', '/api/feeds', {});
  expect(made.status).toBe(201);
  const { made: feed } = shapeOf('post', '/api/feeds', 201).parse(made.json) as {
    made: { id: string };
  };
  const gone = await open.ask('DELETE', `/api/feeds/${feed.id}`);
  expect(gone.status).toBe(200);
  shapeOf('delete', '/api/feeds/:id', 200).parse(gone.json);
});

test('every answer carries the headers that keep a page to itself', async () => {
  for (const path of ['/api/health', '/api/nothing', `/feed/${'A'.repeat(43)}.ics`]) {
    const { headers } = await open.ask('GET', path);
    expect(headers.get('X-Content-Type-Options')).toBe('nosniff');
    expect(headers.get('Referrer-Policy')).toBe('no-referrer');
    const policy = headers.get('Content-Security-Policy') ?? '';
    expect(policy).toContain("default-src 'none'");
    expect(policy).toContain("script-src 'self'");
    expect(policy).toContain("frame-ancestors 'none'");
    expect(policy).not.toContain('unsafe');
  }
});

/** Every $ref of a document. */
function refsOf(value: unknown): string[] {
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) =>
    key === '$ref' && typeof inner === 'string' ? [inner] : refsOf(inner),
  );
}

test('the OpenAPI document lists them all and points nowhere that is not there', () => {
  const document = openApi('1.0.0') as {
    openapi: string;
    paths: Record<string, Record<string, unknown>>;
    components: { schemas: Record<string, unknown> };
  };
  expect(document.openapi).toMatch(/^3\.1\./);
  const listed = Object.entries(document.paths).flatMap(([path, methods]) =>
    Object.keys(methods).map((method) => `${method} ${path}`),
  );
  expect(listed.sort()).toEqual(
    OPERATIONS.map(({ method, path }) => `${method} ${path.replace(/:([a-z]+)/g, '{$1}')}`).sort(),
  );
  for (const ref of refsOf(document)) {
    expect(ref).toMatch(/^#\/components\/schemas\//);
    expect(Object.keys(document.components.schemas)).toContain(ref.split('/').at(-1));
  }
  for (const name of ['House', 'HouseInput', 'Plan', 'ErrorBody', 'NewsInput', 'TaskRow']) {
    expect(Object.keys(document.components.schemas)).toContain(name);
  }
});
