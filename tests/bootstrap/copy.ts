// A copy of the project in a folder of its own, and ways to run its programs.
import { spawn } from 'node:child_process';
import { cpSync, mkdtempSync, rmSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = fileURLToPath(new URL('../..', import.meta.url));

const SOURCES = ['api', 'app', 'planner', 'package.json', 'package-lock.json', 'tsconfig.json'];

/** The sources as they are now, beside the installed packages of this project; nothing built. */
export function copyOfProject(): string {
  const folder = mkdtempSync(join(tmpdir(), 'barmline-copy-'));
  for (const source of SOURCES) {
    cpSync(join(root, source), join(folder, source), { recursive: true });
  }
  symlinkSync(join(root, 'node_modules'), join(folder, 'node_modules'), 'junction');
  return folder;
}

export const remove = (folder: string) => rmSync(folder, { recursive: true, force: true });

export type Ended = { code: number | null; stdout: string; stderr: string; seconds: number };

export type Running = {
  /** Resolves when stdout holds this text; rejects when the program ends before. */
  until: (text: string) => Promise<void>;
  kill: (signal: NodeJS.Signals) => void;
  ended: Promise<Ended>;
};

/** Starts Node with these arguments; what npm told the tests' own process is kept from it. */
export function start(
  args: readonly string[],
  cwd: string,
  variables: NodeJS.ProcessEnv = {},
): Running {
  const from = performance.now();
  const inherited = Object.entries(process.env).filter(([name]) => !name.startsWith('npm_'));
  const child = spawn(process.execPath, [...args], {
    cwd,
    env: { ...Object.fromEntries(inherited), ...variables },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let stdout = '';
  let stderr = '';
  let look = (): void => undefined;
  child.stdout.setEncoding('utf8').on('data', (text) => {
    stdout += text;
    look();
  });
  child.stderr.setEncoding('utf8').on('data', (text) => {
    stderr += text;
  });
  const ended = new Promise<Ended>((resolve, reject) => {
    child.on('error', reject);
    child.on('close', (code) => {
      resolve({ code, stdout, stderr, seconds: (performance.now() - from) / 1000 });
    });
  });
  const until = (text: string) =>
    new Promise<void>((resolve, reject) => {
      look = () => {
        if (stdout.includes(text)) resolve();
      };
      look();
      void ended.then(() => reject(new Error(`ended without “${text}”: ${stdout}${stderr}`)));
    });
  return { until, kill: (signal) => child.kill(signal), ended };
}

/** As `start`, to the end. */
export const ran = (args: readonly string[], cwd: string, variables?: NodeJS.ProcessEnv) =>
  start(args, cwd, variables).ended;
