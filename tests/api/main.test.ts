// The built server as a process of its own: first start, second start, a taken port, a stop.
import { type ChildProcess, spawn } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, rmSync, statSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeAll, beforeEach, expect, test } from 'vitest';
import { buildServer, serverDir } from '../../api/prepare.mjs';
import { readCalendar } from '../builders/calendar.ts';

let folder = '';
let port = 0;
const running = new Set<ChildProcess>();

beforeAll(() => buildServer(), 180_000);
beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'barmline-main-'));
  port = await freePort();
});
afterEach(async () => {
  for (const child of running) child.kill('SIGKILL');
  rmSync(folder, { recursive: true, force: true });
});

function freePort(): Promise<number> {
  return new Promise((resolve) => {
    const probe = createServer();
    probe.listen(0, '127.0.0.1', () => {
      const address = probe.address();
      probe.close(() => resolve(typeof address === 'object' ? (address?.port ?? 0) : 0));
    });
  });
}

function start(variables: Record<string, string> = {}) {
  const child = spawn(process.execPath, [join(serverDir, 'main.js')], {
    env: {
      ...process.env,
      BARMLINE_PORT: String(port),
      BARMLINE_DATA: join(folder, 'data'),
      BARMLINE_TODAY: '2027-01-01',
      ...variables,
    },
  });
  running.add(child);
  let out = '';
  let err = '';
  child.stdout.on('data', (chunk) => {
    out += chunk;
  });
  child.stderr.on('data', (chunk) => {
    err += chunk;
  });
  const ended = new Promise<number | null>((resolve) => {
    child.on('exit', (code) => {
      running.delete(child);
      resolve(code);
    });
  });
  const said = async (words: string) => {
    while (!out.includes(words)) {
      if (child.exitCode !== null) throw new Error(`ended early: ${out}${err}`);
      await new Promise((resolve) => setTimeout(resolve, 50));
    }
    return out;
  };
  return { child, ended, said, out: () => out, err: () => err };
}

test('an empty folder: the demo house is planned, shown and served; a second start plans nothing anew', async () => {
  const first = start();
  const shown = await first.said('Ctrl-C stops it.');
  for (const words of [
    'the demo house is put in and planned',
    'Lantern Shed: 24 of 24 brews placed',
    'Where the yeast goes:',
    'Next tasks:',
    'Cash saved against buying fresh: €',
    `Page:      http://127.0.0.1:${port}/`,
    'a phone cannot subscribe',
  ]) {
    expect(shown).toContain(words);
  }
  const address = /Calendar: {2}(\S+)/.exec(shown)?.[1] ?? '';
  const feed = await fetch(address);
  expect(feed.status).toBe(200);
  const text = await feed.text();
  expect(readCalendar(text).events.length).toBeGreaterThan(100);
  const plan = (await (await fetch(`http://127.0.0.1:${port}/api/plan`)).json()) as { id: string };
  // Over a socket: no body at all, an empty one, and one that does not say what it is.
  const nobody = `http://127.0.0.1:${port}/api/runs/${crypto.randomUUID()}/stop`;
  expect((await fetch(nobody, { method: 'POST' })).status).toBe(404);
  expect((await fetch(nobody, { method: 'POST', body: '' })).status).toBe(415);
  const dismiss = `http://127.0.0.1:${port}/api/draft/dismiss`;
  expect((await fetch(dismiss, { method: 'POST' })).status).toBe(400);
  expect((await fetch(dismiss, { method: 'POST', body: '{}' })).status).toBe(415);
  // A page of another site that a browser would let send this without asking first:
  const foreign = { Origin: 'https://evil.example' };
  expect((await fetch(dismiss, { method: 'POST', headers: foreign })).status).toBe(403);
  // Nobody else on this machine reads what lies in the data folder.
  expect(statSync(join(folder, 'data')).mode & 0o077).toBe(0);

  first.child.kill('SIGINT');
  expect(await first.ended).toBe(0);
  expect(first.err()).toBe('');

  const again = start();
  const shownAgain = await again.said('Ctrl-C stops it.');
  expect(shownAgain).not.toContain('planned …');
  expect(shownAgain).toContain(address);
  const planAgain = (await (await fetch(`http://127.0.0.1:${port}/api/plan`)).json()) as {
    id: string;
  };
  expect(planAgain.id).toBe(plan.id);
  expect(await (await fetch(address)).text()).toBe(text);
  again.child.kill('SIGTERM');
  expect(await again.ended).toBe(0);
}, 180_000);

test('a stop in the middle of planning is clean, and the next start plans', async () => {
  const first = start();
  await first.said('the demo house is put in');
  first.child.kill('SIGINT');
  expect(await first.ended).toBe(0);
  expect(first.err()).toBe('');
  const again = start();
  expect(await again.said('Ctrl-C stops it.')).toContain('24 of 24 brews placed');
  again.child.kill('SIGINT');
  expect(await again.ended).toBe(0);
}, 180_000);

test('a taken port: a sentence, the next free one as a command, and nothing is made', async () => {
  const taken = createServer();
  await new Promise<void>((resolve) => taken.listen(port, '127.0.0.1', () => resolve()));
  try {
    const second = start();
    expect(await second.ended).toBe(1);
    expect(second.err()).toContain(`Port ${port} on 127.0.0.1 is taken`);
    const offered = Number(/BARMLINE_PORT=(\d+) npm start/.exec(second.err())?.[1]);
    expect(offered).toBeGreaterThan(port);
    expect(second.err()).not.toMatch(/\bat .*\.js:\d/);
    expect(existsSync(join(folder, 'data'))).toBe(false);
  } finally {
    taken.close();
  }
});

test('what the environment may not say is refused before anything is made', async () => {
  const child = start({ BARMLINE_HOST: '0.0.0.0', BARMLINE_TODAY: 'soon' });
  expect(await child.ended).toBe(1);
  expect(child.err()).toContain('A password comes first');
  expect(child.err()).toContain('BARMLINE_TODAY is "soon"');
  expect(readdirSync(folder)).toEqual([]);
});
