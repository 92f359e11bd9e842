// Finds a Chromium for the browser tests and the pictures, or gets one where the machine allows it.
import { execFileSync } from 'node:child_process';
import { accessSync, constants, existsSync, readdirSync } from 'node:fs';
import { homedir } from 'node:os';
import { delimiter, join } from 'node:path';
import { root, run, runTool } from '../../api/prepare.mjs';

/** What Chromium is started with: as root it needs no sandbox, and it is not to talk to the world. */
export const BROWSER_ARGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-dev-shm-usage',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

const NAMES = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'chrome'];

const PLACES = [
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
];

function runnable(path) {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

function onPath() {
  const folders = (process.env.PATH ?? '').split(delimiter).filter(Boolean);
  return NAMES.flatMap((name) => folders.map((folder) => join(folder, name)));
}

/** Browsers that Playwright has downloaded before, the newest first. */
function inPlaywrightsCache() {
  const caches = [
    process.env.PLAYWRIGHT_BROWSERS_PATH,
    join(homedir(), '.cache', 'ms-playwright'),
    join(homedir(), 'Library', 'Caches', 'ms-playwright'),
  ].filter((folder) => folder && existsSync(folder));
  const inside = [
    'chrome-linux/chrome',
    'chrome-linux64/chrome',
    'chrome-mac/Chromium.app/Contents/MacOS/Chromium',
  ];
  return caches.flatMap((cache) =>
    readdirSync(cache)
      .filter((name) => /^chromium-\d+$/.test(name))
      .sort((a, b) => Number(b.slice(9)) - Number(a.slice(9)))
      .flatMap((name) => inside.map((path) => join(cache, name, path))),
  );
}

/** A stub that only says how to install the real thing is executable too: ask for the version. */
function works(path) {
  try {
    const args = process.platform === 'win32' ? [] : ['--version', '--no-sandbox'];
    if (args.length > 0) execFileSync(path, args, { stdio: 'ignore', timeout: 30_000 });
    return true;
  } catch {
    return false;
  }
}

/** The path of a Chromium that runs, or null. CHROMIUM_PATH in the environment goes before all. */
export function findBrowser() {
  const named = process.env.CHROMIUM_PATH;
  if (named) return runnable(named) && works(named) ? named : null;
  const candidates = [...onPath(), ...PLACES, ...inPlaywrightsCache()];
  return candidates.find((path) => runnable(path) && works(path)) ?? null;
}

/** On a Debian where we are root, the distribution's own package brings its libraries along. */
async function fromDebian() {
  if (process.getuid?.() !== 0 || !existsSync('/usr/bin/apt-get')) return;
  const env = { DEBIAN_FRONTEND: 'noninteractive' };
  const options = { env, timeoutMs: 10 * 60_000 };
  // without a font of its own a bare machine shows boxes for letters
  const packages = ['chromium', 'fonts-liberation'];
  await run('apt-get', ['-q', 'update'], options);
  await run('apt-get', ['-q', 'install', '-y', '--no-install-recommends', ...packages], options);
}

async function fromPlaywright() {
  const args = ['install', 'chromium'];
  await runTool('playwright-core/cli.js', args, { timeoutMs: 10 * 60_000, cwd: root });
}

/** As findBrowser, but fetches a browser when there is none. Throws a sentence when that fails too. */
export async function findOrGetBrowser() {
  const there = findBrowser();
  if (there) return there;
  if (process.env.CHROMIUM_PATH) {
    throw new Error(
      `CHROMIUM_PATH names ${process.env.CHROMIUM_PATH}, which does not run as a browser: ` +
        'correct it, or unset it to have one looked for.',
    );
  }
  process.stderr.write('No Chromium found; getting one …\n');
  for (const get of [fromDebian, fromPlaywright]) {
    await get().catch((error) => process.stderr.write(`${error.message}\n`));
    const got = findBrowser();
    if (got) return got;
  }
  throw new Error(
    'No Chromium found and none could be fetched: install one (on Debian: apt-get install chromium), ' +
      'or name it in the environment variable CHROMIUM_PATH.',
  );
}
