// Starts the server: the one file that reads the environment and opens a port.
import { mkdirSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { getRequestListener } from '@hono/node-server';
import packageFile from '../package.json' with { type: 'json' };
import { createApp, type Parts } from './app.ts';
import { createBackups } from './backup/index.ts';
import { readPassword } from './doors/password.ts';
import { EnvironmentError, readEnvironment, type Settings } from './environment.ts';
import { readFeedKey } from './feed/token.ts';
import { loadDemo, openingLines, planIfNone } from './opening.ts';
import { listen, PortError } from './port.ts';
import { describeError } from './routes/errors.ts';
import { settingsOf } from './routes/settings.ts';
import { createRuns } from './runs/index.ts';
import { todayIn } from './runs/planning.ts';
import { createSurveys } from './runs/surveys.ts';
import { createWhatIfs } from './runs/what-if.ts';
import { openStore, StoreError } from './store/index.ts';

const say = (line: string) => process.stdout.write(`${line}\n`);
const report = (line: string) => process.stderr.write(`${line}\n`);

// The built file lies in .build/server, the source in api.
const root = fileURLToPath(
  new URL(import.meta.url.endsWith('.ts') ? '..' : '../..', import.meta.url),
);

async function openParts(settings: Settings): Promise<Parts> {
  mkdirSync(settings.dataFolder, { recursive: true, mode: 0o700 });
  const { databaseToken } = settings;
  const store = await openStore({
    url: settings.databaseUrl,
    ...(databaseToken === null ? {} : { authToken: databaseToken }),
  });
  const fixedToday = settings.today;
  const { folder, ...kept } = settings.backups;
  return {
    store,
    runs: createRuns({ now: store.now, report }),
    whatIfs: createWhatIfs({ now: store.now, report }),
    surveys: createSurveys({ now: store.now, report }),
    backups: createBackups({ store, folder, kept, report }),
    steps: null,
    today: (timeZone) => fixedToday ?? todayIn(timeZone, store.now()),
    feedKey: readFeedKey(settings.dataFolder),
    base: settings.base,
    hosts: ['127.0.0.1', 'localhost', '[::1]', new URL(settings.base).hostname],
    doors: {
      password: () => readPassword(settings.dataFolder),
      reachable: settings.reachable,
      proxies: settings.proxies,
    },
    pageFolder: join(root, '.build', 'app'),
    version: packageFile.version,
    report,
  };
}

function stopOnSignal(server: Server, parts: Parts): void {
  let stopping = false;
  const stop = async () => {
    if (stopping) return;
    stopping = true;
    say('\nStopping …');
    server.close();
    const { runs, whatIfs, surveys, backups } = parts;
    await Promise.all([runs, whatIfs, surveys, backups].map((part) => part.close()));
    server.closeAllConnections();
    await parts.store.settle().catch(() => undefined);
    parts.store.close();
    process.exit(0);
  };
  process.on('SIGINT', stop).on('SIGTERM', stop);
}

async function start(): Promise<void> {
  const settings = readEnvironment(process.env, root, (folder) => readPassword(folder) !== null);
  // The port first: a start that cannot serve changes nothing.
  const server = createServer();
  await listen(server, settings.port, settings.host);
  const parts = await openParts(settings);
  server.on('request', getRequestListener(createApp(parts).fetch));
  stopOnSignal(server, parts);

  if (await loadDemo(parts)) say('An empty database: the demo house is put in and planned …');
  const failure = await planIfNone(parts);
  if (failure !== null) report(failure);
  parts.backups.start();
  for (const line of await openingLines(parts)) say(line);
  const { loopback, says } = settingsOf(settings.base);
  if (loopback) say(`\n${says}`);
}

start().catch((error: unknown) => {
  const expected =
    error instanceof EnvironmentError || error instanceof PortError || error instanceof StoreError;
  report(expected ? error.message : describeError(error));
  process.exit(1);
});
