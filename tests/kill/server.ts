// The built server as a process of its own on a data folder, so that it can be killed and started again.
import { type ChildProcess, spawn } from 'node:child_process';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { serverDir } from '../../api/prepare.mjs';

export type Server = {
  child: ChildProcess;
  base: string;
  /** Resolves once it answers; rejects with what it said when it ends before. */
  up: Promise<void>;
  gone: Promise<void>;
  said: () => string;
};

export function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.on('error', reject);
    probe.listen(0, '127.0.0.1', () => {
      const address = probe.address();
      probe.close(() => resolve(typeof address === 'object' ? (address?.port ?? 0) : 0));
    });
  });
}

/** Starts `.build/server/main.js`; `buildServer` has to have run. */
export async function startServer(
  dataFolder: string,
  variables: Readonly<Record<string, string>> = {},
): Promise<Server> {
  const port = await freePort();
  const child = spawn(process.execPath, [join(serverDir, 'main.js')], {
    stdio: ['ignore', 'pipe', 'pipe'],
    env: {
      ...process.env,
      BARMLINE_PORT: String(port),
      BARMLINE_DATA: dataFolder,
      ...variables,
    },
  });
  let said = '';
  child.stdout.on('data', (chunk) => {
    said += chunk;
  });
  child.stderr.on('data', (chunk) => {
    said += chunk;
  });
  let ended = false;
  const gone = new Promise<void>((resolve) =>
    child.on('exit', () => {
      ended = true;
      resolve();
    }),
  );
  const base = `http://127.0.0.1:${port}`;
  const up = (async () => {
    const end = Date.now() + 120_000;
    while (Date.now() < end && !ended) {
      const answer = await fetch(`${base}/api/plan`)
        .then((response) => response.json() as Promise<{ plan: unknown }>)
        .catch(() => null);
      if (answer?.plan) return;
      await new Promise((resolve) => setTimeout(resolve, 20));
    }
    throw new Error(`the server did not come up: ${said}`);
  })();
  // Whoever kills it before it is up does not wait for it.
  up.catch(() => undefined);
  return { child, base, up, gone, said: () => said };
}
