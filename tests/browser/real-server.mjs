// Starts the real, built server on an empty data folder for a browser test or the pictures, and stops it cleanly.
import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { root } from '../../api/prepare.mjs';

/** How long a first start (build and first plan) may take, ms. */
const PATIENCE_MS = 180_000;

function freePort() {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.on('error', reject);
    probe.listen(0, '127.0.0.1', () => {
      const { port } = probe.address();
      probe.close(() => resolve(port));
    });
  });
}

/**
 * Starts `node api/start.mjs` with an empty data folder and waits until its first plan is in force.
 * @param today the day that the server takes for today
 * @param kept a data folder that an earlier server left, to go on with
 * @param envOf what else its environment holds, for the port it gets
 */
export async function startRealServer(today, kept = null, envOf = () => ({})) {
  const port = await freePort();
  const folder = kept ?? mkdtempSync(join(tmpdir(), 'barmline-browser-'));
  const child = spawn(process.execPath, ['api/start.mjs'], {
    cwd: root,
    stdio: ['ignore', 'pipe', 'pipe'],
    env: {
      ...process.env,
      BARMLINE_PORT: String(port),
      BARMLINE_DATA: folder,
      BARMLINE_TODAY: today,
      ...envOf(port),
    },
  });
  let said = '';
  child.stdout.on('data', (chunk) => {
    said += chunk;
  });
  child.stderr.on('data', (chunk) => {
    said += chunk;
  });
  const gone = new Promise((resolve) => child.on('exit', resolve));
  const base = `http://127.0.0.1:${port}`;

  /** @param keep leave the data folder to the next server */
  async function stop(keep = false) {
    child.kill('SIGINT');
    const late = setTimeout(() => child.kill('SIGKILL'), 10_000);
    await gone;
    clearTimeout(late);
    if (!keep) rmSync(folder, { recursive: true, force: true });
  }

  async function read(path) {
    const answer = await fetch(`${base}${path}`);
    if (!answer.ok) throw new Error(`${path} was answered with ${answer.status}`);
    return answer.json();
  }

  const end = Date.now() + PATIENCE_MS;
  while (Date.now() < end && child.exitCode === null) {
    const answer = await fetch(`${base}/api/plan`).catch(() => null);
    // one that is kept shut by a password tells nobody of its plan
    const up = answer?.status === 401 || (answer?.ok && (await answer.json()).plan);
    if (up) return { base, port, folder, read, stop, said: () => said };
    await new Promise((resolve) => setTimeout(resolve, 250));
  }
  await stop();
  throw new Error(`The server did not come up with a plan. It said:\n${said}`);
}
