// What the environment asks for, checked: every wrong variable is named at once, with what it may be.
import { isIP } from 'node:net';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { IsoDay } from '../planner/index.ts';
import { KEPT } from './backup/copies.ts';
import { isLoopback } from './routes/settings.ts';

export const DEFAULT_PORT = 8642;

export type Settings = {
  host: string;
  port: number;
  /** Without a slash at its end. */
  base: string;
  dataFolder: string;
  databaseUrl: string;
  databaseToken: string | null;
  /** Others than this machine can reach the server, by itself or through a proxy. */
  reachable: boolean;
  /** Reverse proxies whose X-Forwarded-For counts. */
  proxies: string[];
  /** Where dated copies go, and how many days and weeks of them stay. */
  backups: { folder: string; daily: number; weekly: number };
  /** A fixed day instead of the clock's; for tests. */
  today: IsoDay | null;
};

export type Variables = Readonly<Record<string, string | undefined>>;

/** The variables cannot be used; one sentence a line. */
export class EnvironmentError extends Error {
  override name = 'EnvironmentError';
}

function withBrackets(host: string): string {
  return host.includes(':') && !host.startsWith('[') ? `[${host}]` : host;
}

function isPlainAddress(url: URL): boolean {
  return /^https?:$/.test(url.protocol) && !url.username && !url.search && !url.hash;
}

/** What a variable says; an empty one says nothing. */
const givenIn = (variables: Variables) => (name: string) => variables[name]?.trim() || undefined;

/** The folder in which data is kept: `.data` in the project unless told otherwise. */
export function dataFolderOf(variables: Variables, root: string): string {
  const given = givenIn(variables);
  return given('BARMLINE_DATA') ?? join(root, '.data');
}

/**
 * Reads the settings from variables.
 * @param root the project's folder, under which data is kept unless told otherwise
 * @param hasPassword whether a password is set in a data folder: without one no other machine gets in
 * @throws EnvironmentError naming every variable that is wrong
 */
export function readEnvironment(
  variables: Variables,
  root: string,
  hasPassword: (dataFolder: string) => boolean,
): Settings {
  const problems: string[] = [];
  const given = givenIn(variables);

  const portText = given('BARMLINE_PORT') ?? String(DEFAULT_PORT);
  const port = /^\d{1,5}$/.test(portText) ? Number(portText) : Number.NaN;
  if (!(port >= 1 && port <= 65_535)) {
    problems.push(`BARMLINE_PORT is "${portText}": it has to be a whole number from 1 to 65535.`);
  }

  const host = given('BARMLINE_HOST') ?? '127.0.0.1';
  const baseText = given('BARMLINE_BASE');
  const base = (baseText ?? `http://${withBrackets(host)}:${port}`).replace(/\/+$/, '');
  const url = URL.canParse(base) ? new URL(base) : null;
  const wildcard = host === '0.0.0.0' || host === '::';
  if (baseText === undefined && wildcard) {
    problems.push(
      `BARMLINE_HOST is "${host}", which is no address that a device can open: say with BARMLINE_BASE under which ` +
        'one yours reach this server, such as http://192.168.1.20:8642.',
    );
  } else if (url === null || !isPlainAddress(url)) {
    problems.push(
      `BARMLINE_BASE is "${base}": it has to be an address such as http://192.168.1.20:8642 or https://brewhouse.example.`,
    );
  }

  const dataFolder = dataFolderOf(variables, root);
  const opens = [
    ...(isLoopback(withBrackets(host)) ? [] : [`BARMLINE_HOST is "${host}"`]),
    ...(url === null || isLoopback(url.hostname) ? [] : [`BARMLINE_BASE is "${base}"`]),
  ];
  if (opens.length > 0 && !hasPassword(dataFolder)) {
    problems.push(
      `${opens.join(' and ')}: other machines can reach that, and nothing would keep them from changing your plan. ` +
        'A password comes first: npm run password',
    );
  }

  const proxies = (given('BARMLINE_PROXY') ?? '').split(/[\s,]+/).filter((one) => one !== '');
  for (const one of proxies) {
    if (isIP(one) === 0) {
      problems.push(
        `BARMLINE_PROXY names "${one}": it has to be the address of a reverse proxy, such as 127.0.0.1; several with commas.`,
      );
    }
  }

  const count = (name: string, text: string | undefined, fallback: number, least: number) => {
    const number = text === undefined ? fallback : /^\d{1,4}$/.test(text) ? Number(text) : -1;
    if (number >= least) return number;
    problems.push(`${name} is "${text}": it has to be a whole number from ${least} to 9999.`);
    return fallback;
  };
  const daily = count('BARMLINE_KEEP_DAYS', given('BARMLINE_KEEP_DAYS'), KEPT.daily, 1);
  const weekly = count('BARMLINE_KEEP_WEEKS', given('BARMLINE_KEEP_WEEKS'), KEPT.weekly, 0);

  const today = given('BARMLINE_TODAY');
  if (today !== undefined && !IsoDay.safeParse(today).success) {
    problems.push(`BARMLINE_TODAY is "${today}": it has to be a day written YYYY-MM-DD.`);
  }

  const databaseUrl = given('BARMLINE_DB') ?? pathToFileURL(join(dataFolder, 'barmline.db')).href;
  if (!/^(file|libsql|https?|wss?):/.test(databaseUrl)) {
    problems.push(
      'BARMLINE_DB has to be the URL of a libSQL server (libsql://… or https://…) or of a file (file:…).',
    );
  }

  if (problems.length > 0) throw new EnvironmentError(problems.join('\n'));
  return {
    host,
    port,
    base,
    dataFolder,
    databaseUrl,
    databaseToken: given('BARMLINE_DB_TOKEN') ?? null,
    reachable: opens.length > 0,
    proxies,
    backups: { folder: given('BARMLINE_BACKUPS') ?? join(dataFolder, 'backups'), daily, weekly },
    today: today ?? null,
  };
}
