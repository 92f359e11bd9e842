// Gets a clone ready to run: packages installed, server and page built, each only where it is not so already.
//
// Plain JavaScript on Node's own modules: it runs before anything is installed. All that it and the
// programs it starts have to say goes to stderr, so that stdout stays free for a plan.
import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import {
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { basename, dirname, join, relative, sep } from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = fileURLToPath(new URL('..', import.meta.url));
export const serverDir = join(root, '.build', 'server');
export const pageDir = join(root, '.build', 'app');

/** A step of the preparation failed; the message is a sentence for whoever started it. */
export class PrepareError extends Error {}

const say = (line) => process.stderr.write(`${line}\n`);

/**
 * Runs a program to its end and gives back its exit code. Its stdout goes to our stderr unless
 * `stdio` says otherwise; a signal that stops us stops it too.
 */
export function run(program, args, options = {}) {
  const { stdio = ['ignore', 2, 2], env = {}, timeoutMs = 0, cwd = root } = options;
  return new Promise((resolve, reject) => {
    const child = spawn(program, args, {
      cwd,
      stdio,
      timeout: timeoutMs,
      env: { ...process.env, ...env },
      shell: process.platform === 'win32' && program === 'npm',
    });
    const stop = (signal) => {
      child.kill(signal);
      process.exit(signal === 'SIGINT' ? 130 : 143);
    };
    process.on('SIGINT', stop).on('SIGTERM', stop);
    const over = () => process.off('SIGINT', stop).off('SIGTERM', stop);
    child.on('error', (error) => {
      over();
      reject(error);
    });
    child.on('exit', (code, signal) => {
      over();
      resolve(code ?? (signal === 'SIGINT' ? 130 : 1));
    });
  });
}

/** Runs one of the installed JavaScript tools, by its file under node_modules. */
export const runTool = (file, args, options) =>
  run(process.execPath, [join(root, 'node_modules', file), ...args], options);

function readJson(file) {
  try {
    return JSON.parse(readFileSync(file, 'utf8'));
  } catch {
    return null;
  }
}

/**
 * Whether node_modules holds what package-lock.json asks for. npm writes its own list of what it
 * installed when it is done, so a broken-off install does not count. Optional packages are not
 * looked at: most of them are for other machines.
 */
function packagesFit() {
  const wanted = readJson(join(root, 'package-lock.json'))?.packages ?? {};
  const there = readJson(join(root, 'node_modules', '.package-lock.json'))?.packages;
  if (!there) return false;
  const fits = (path, entry) => there[path] && there[path].integrity === entry.integrity;
  return Object.entries(wanted).every(
    ([path, entry]) => path === '' || entry.optional || fits(path, entry),
  );
}

/** Installs the packages of the lock file, unless they are there. */
export async function installPackages() {
  if (packagesFit()) return;
  say('Installing packages (npm ci); the first time this takes a minute …');
  // Development packages are wanted too: the build is made with them. No package needs its
  // install script, and some machines refuse them.
  const args = ['ci', '--include=dev', '--include=optional', '--ignore-scripts'];
  args.push('--no-audit', '--no-fund', '--loglevel=error');
  const cli = process.env.npm_execpath;
  const viaNode = cli?.endsWith('npm-cli.js') && existsSync(cli);
  const code = await run(viaNode ? process.execPath : 'npm', viaNode ? [cli, ...args] : args);
  if (code !== 0 || !packagesFit()) {
    throw new PrepareError(
      `Installing packages failed (npm ci ended with code ${code}). What npm said stands above; ` +
        'check the network connection and the free disk space, then start again.',
    );
  }
}

function filesUnder(folder) {
  if (!existsSync(folder)) return [];
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const path = join(folder, entry.name);
    return entry.isDirectory() ? filesUnder(path) : [path];
  });
}

/** One text for all the sources that a build is made of: the same text, the same build. */
function fingerprint(sources) {
  const hash = createHash('sha256');
  const files = sources.flatMap((source) => {
    const path = join(root, source);
    return source.includes('.') ? [path] : filesUnder(path);
  });
  for (const file of files.sort()) {
    hash.update(`${relative(root, file).split(sep).join('/')}\0`);
    hash.update(readFileSync(file));
    hash.update('\0');
  }
  return hash.digest('hex');
}

const STAMP = '.sources';

function stampOf(folder) {
  try {
    return readFileSync(join(folder, STAMP), 'utf8');
  } catch {
    return null;
  }
}

/** The next start builds this anew, whatever the sources. */
export const forgetBuild = (folder) => rmSync(join(folder, STAMP), { force: true });

function isRunning(pid) {
  try {
    process.kill(pid, 0);
    return true;
  } catch {
    return false;
  }
}

/** Folders of builds that were broken off bear the number of a process that is gone. */
function sweep(target) {
  for (const name of readdirSync(dirname(target))) {
    const pid = /^\w+-(\d+)(?:-old)?$/.exec(name)?.[1];
    if (pid === undefined || !name.startsWith(basename(target)) || isRunning(Number(pid))) continue;
    rmSync(join(dirname(target), name), { recursive: true, force: true });
  }
}

/** Builds into a folder beside the target and then swaps them: nobody sees half a build. */
async function build({ what, target, config, sources }) {
  const print = fingerprint(sources);
  if (stampOf(target) === print) return;
  say(`Building the ${what} …`);
  sweep(target);
  const fresh = `${target}-${process.pid}`;
  const args = [
    'build',
    '--config',
    config,
    '--outDir',
    fresh,
    '--emptyOutDir',
    '--logLevel',
    'warn',
  ];
  const code = await runTool('vite/bin/vite.js', args);
  if (code !== 0) {
    rmSync(fresh, { recursive: true, force: true });
    throw new PrepareError(`Building the ${what} failed; what went wrong stands above.`);
  }
  writeFileSync(join(fresh, STAMP), print);
  const old = `${fresh}-old`;
  for (let attempt = 0; attempt < 5; attempt += 1) {
    if (existsSync(target)) renameSync(target, old);
    rmSync(old, { recursive: true, force: true });
    try {
      renameSync(fresh, target);
      return;
    } catch (error) {
      // Somebody else has built the same at the same time and was first.
      if (error.code !== 'ENOTEMPTY' && error.code !== 'EEXIST') throw error;
    }
  }
  throw new PrepareError(`Could not put the built ${what} into ${target}: it is in use.`);
}

const SHARED_SOURCES = ['api', 'planner', 'package.json', 'package-lock.json', 'tsconfig.json'];

/** Builds the server and the commands, unless their sources are as they were. */
export function buildServer() {
  mkdirSync(join(root, '.build'), { recursive: true });
  return build({
    what: 'server',
    target: serverDir,
    config: 'api/vite.config.ts',
    sources: SHARED_SOURCES,
  });
}

/** Builds the page, unless its sources are as they were. */
export function buildPage() {
  mkdirSync(join(root, '.build'), { recursive: true });
  return build({
    what: 'page',
    target: pageDir,
    config: 'app/vite.config.ts',
    sources: ['app', ...SHARED_SOURCES],
  });
}
