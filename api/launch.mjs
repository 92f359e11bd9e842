// What `node api/start.mjs` does once the version of Node is known to do: prepare, then run a part of the build.
import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import {
  buildPage,
  buildServer,
  forgetBuild,
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

/**
 * Server and page rebuilt as they are saved: the server restarts, and the page at Vite's own address
 * renews itself and hands /api and /feed on to the server.
 */
async function develop() {
  await installPackages();
  await Promise.all([buildServer(), buildPage()]);
  // From here on the build changes without its stamp: the next start has to build anew.
  forgetBuild(serverDir);
  const port = process.env.BARMLINE_PORT ?? '8642';
  const env = { ...process.env, BARMLINE_DEV_API: `http://127.0.0.1:${port}` };
  const node = (...words) => spawn(process.execPath, words, { cwd: root, stdio: 'inherit', env });
  const vite = join(root, 'node_modules', 'vite', 'bin', 'vite.js');
  const rebuild = ['build', '--config', 'api/vite.config.ts', '--watch', '--emptyOutDir', 'false'];
  const parts = [
    node(vite, ...rebuild, '--logLevel', 'warn'),
    node('--watch', '--watch-preserve-output', join(serverDir, 'main.js')),
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
    else if (first === 'password') await command('password-command', rest);
    else if (first === 'dev') await develop();
    else await serve();
  } catch (error) {
    if (!(error instanceof PrepareError)) throw error;
    process.stderr.write(`${error.message}\n`);
    process.exitCode = 1;
  }
}
