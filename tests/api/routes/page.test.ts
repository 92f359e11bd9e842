// The built page as it is served: its headers, its files, and nothing from outside its folder.
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { createApp } from '../../../api/app.ts';
import { ErrorBody } from '../../../planner/index.ts';
import { type OpenApp, openApp } from '../../builders/app.ts';

let open: OpenApp;
let app: ReturnType<typeof createApp>;
let folder = '';

beforeAll(async () => {
  const outer = mkdtempSync(join(tmpdir(), 'barmline-page-'));
  folder = join(outer, 'app');
  mkdirSync(join(folder, 'assets'), { recursive: true });
  writeFileSync(join(outer, 'secret.txt'), 'secret');
  writeFileSync(
    join(folder, 'index.html'),
    '<!doctype html><html><head></head><body></body></html>',
  );
  writeFileSync(join(folder, 'assets', 'index-abc.js'), 'export {};');
  writeFileSync(join(folder, 'mark.svg'), '<svg xmlns="http://www.w3.org/2000/svg"/>');
  open = await openApp();
  app = createApp({ ...open.parts, pageFolder: folder });
});
afterAll(async () => {
  await open.close();
  rmSync(join(folder, '..'), { recursive: true, force: true });
});

test('the first page runs no inline script, is framed by nobody, and styles only under a fresh nonce', async () => {
  const [one, two] = [await app.request('/'), await app.request('/')];
  expect(one.status).toBe(200);
  expect(one.headers.get('Content-Type')).toMatch(/^text\/html/);
  const policy = one.headers.get('Content-Security-Policy') ?? '';
  for (const part of [
    "default-src 'none'",
    "script-src 'self'",
    "frame-ancestors 'none'",
    "base-uri 'none'",
  ]) {
    expect(policy.split('; ')).toContain(part);
  }
  expect(policy).not.toContain('unsafe');
  expect(policy).not.toBe(two.headers.get('Content-Security-Policy'));
  const nonce = /'nonce-([\w-]{22})'/.exec(policy)?.[1];
  expect(await one.text()).toContain(`<meta property="csp-nonce" content="${nonce}">`);
  expect(one.headers.get('X-Content-Type-Options')).toBe('nosniff');
  expect(one.headers.get('Referrer-Policy')).toBe('no-referrer');
});

test('files with a hash in their names are kept for good, the others are asked for again', async () => {
  const script = await app.request('/assets/index-abc.js');
  expect(script.status).toBe(200);
  expect(script.headers.get('Content-Type')).toMatch(/^text\/javascript/);
  expect(script.headers.get('Cache-Control')).toContain('immutable');
  const mark = await app.request('/mark.svg');
  expect(mark.headers.get('Content-Type')).toMatch(/^image\/svg/);
  expect(mark.headers.get('Cache-Control')).toBe('no-cache');
});

test.each([
  '/secret.txt',
  '/../secret.txt',
  '/%2e%2e/secret.txt',
  '/assets/..%2f..%2fsecret.txt',
  '/assets/%2e%2e/%2e%2e/secret.txt',
  '/assets/..\\..\\secret.txt',
  '/assets/nothing.js',
  '/%00',
])('nothing from outside the folder: %s', async (path) => {
  const answer = await app.request(path);
  expect(answer.status).toBe(404);
  ErrorBody.parse(await answer.json());
});

test('the API is not shadowed by the page', async () => {
  expect((await app.request('/api/health')).status).toBe(200);
  expect((await app.request('/api/nothing')).status).toBe(404);
  expect((await app.request('/api/health', { method: 'POST' })).status).toBe(405);
});
