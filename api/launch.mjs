// What `node api/start.mjs` does once the version of Node is known to do: prepare, then run a part of the build.
import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import {
  buildPage,
  buildServer,
  installPackages,
  PrepareError,
  root,
  serverDir,
} from './prepare.mjs';

const load = (entry) => import(pathToFileURL(join(serverDir, `${entry}.js`)).href);

/** `npm run` starts everything in the project's folder; paths are meant from where the user stands. */
function standWhereTheUserStands() {
  const { npm_lifecycle_event: script, INIT_CWD: from } = process.env;
  if ((script === 'plan' || script === 'schema') && from) process.chdir(from);
}

/**
 * npm hands a signal only to the shell it runs us in, and a shell that dies of it leaves us behind:
 * then we stop as if the signal had been ours.
 */
function stopWhenLeftBehind() {
  if (process.env.npm_lifecycle_event !== 'start') return;
  const parent = process.ppid;
  const look = () => {
    if (process.ppid !== parent) process.kill(process.pid, 'SIGTERM');
  };
  setInterval(look, 500).unref();
}

async function serve() {
  stopWhenLeftBehind();
  await installPackages();
  await Promise.all([buildServer(), buildPage()]);
  await load('main');
}

/** The commands share one shape: arguments in, exit code out; see api/plan-command.ts. */
async function command(entry, args) {
  await installPackages();
  await buildServer();
  standWhereTheUserStands();
  // A reader that has seen enough (`… | head`) is no failure of ours.
  process.stdout.on('error', (error) => process.exit(error.code === 'EPIPE' ? 0 : 1));
  const { run } = await load(entry);
  process.exitCode = await run(args);
}

/** Server and page rebuilt as they are saved; the page at Vite's address hands /api and /feed on. */
async function develop(args) {
  await installPackages();
  await Promise.all([buildServer(), buildPage()]);
  const node = (...words) => spawn(process.execPath, words, { cwd: root, stdio: 'inherit' });
  const vite = join(root, 'node_modules', 'vite', 'bin', 'vite.js');
  const parts = [
    node(vite, 'build', '--config', 'api/vite.config.ts', '--watch', '--logLevel', 'warn'),
    node('--watch', join(serverDir, 'main.js'), ...args),
    node(vite, '--config', 'app/vite.config.ts'),
  ];
  const stop = () => {
    for (const part of parts) part.kill();
  };
  process.on('SIGINT', stop).on('SIGTERM', stop);
  await Promise.race(parts.map((part) => new Promise((over) => part.on('exit', over))));
  stop();
}

/** Runs what the arguments ask for; whatever fails in preparing ends in a sentence and code 1. */
export async function launch(args) {
  try {
    const [first, ...rest] = args;
    if (first === 'plan') await command('plan-command', rest);
    else if (first === 'schema') await command('schema-command', rest);
    else if (first === 'dev') await develop(rest);
    else await serve();
  } catch (error) {
    if (!(error instanceof PrepareError)) throw error;
    process.stderr.write(`${error.message}\n`);
    process.exitCode = 1;
  }
}
