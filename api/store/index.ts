// Opens the database, whatever it is: a file in the data folder or a libSQL server behind a URL.
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { type Client, createClient, type ResultSet } from '@libsql/client';
import { drizzle, type LibSQLDatabase } from 'drizzle-orm/libsql';
import type { BaseSQLiteDatabase } from 'drizzle-orm/sqlite-core';
import { copyDatabase } from './copy-file.ts';
import { migrate, StoreError } from './migrate.ts';
import * as tables from './tables.ts';
import { isOfDatabase, troubleOf } from './troubles.ts';

export { StoreError } from './migrate.ts';

/** Where statements run: the database itself, or one transaction on it. */
export type Db = BaseSQLiteDatabase<'async', ResultSet, typeof tables>;

export type Store = {
  /** For reading. */
  db: Db;
  /** All or nothing, one writer after the other: what the work throws takes everything back. */
  write: <T>(work: (tx: Db) => Promise<T>) => Promise<T>;
  /** Moves on with every write, for caches; null where others may write without this server knowing. */
  version: () => number | null;
  now: () => Date;
  /** Writes a copy of the database into a new file; null where the database is behind a URL. */
  copyTo: ((file: string) => Promise<void>) | null;
  /** Brings the write-ahead log into the file, so that the file alone is the whole database. */
  settle: () => Promise<void>;
  close: () => void;
};

export type StoreOptions = {
  /** `file:…`, or the URL of a libSQL server. */
  url: string;
  authToken?: string;
  now?: () => Date;
};

function openClient(options: StoreOptions): Client {
  try {
    return createClient({
      url: options.url,
      ...(options.authToken === undefined ? {} : { authToken: options.authToken }),
      concurrency: 4,
      timeout: 2000,
    });
  } catch (error) {
    throw new StoreError(sentenceFor(error, options.url));
  }
}

function sentenceFor(error: unknown, url: string): string {
  const file = databaseFile(url);
  if (file === null) return sentenceForServer(error, url);
  const trouble = troubleOf(error);
  if (trouble !== null) return `${file}: ${trouble.says}`;
  const detail = error instanceof Error ? error.message : String(error);
  return (
    `The database ${file} cannot be opened (${detail}). ` +
    'Check that the folder exists, can be written to and has room, and that no other program holds the file; nothing was changed.'
  );
}

/** What went wrong on the way to a server: the code of the network where there is one, else the status of its answer. */
function causeOf(error: unknown, depth = 0): string | null {
  if (typeof error !== 'object' || error === null || depth > 5) return null;
  const { cause, code, status } = error as { cause?: unknown; code?: unknown; status?: unknown };
  const deeper = causeOf(cause, depth + 1);
  if (deeper !== null) return deeper;
  if (typeof status === 'number') return `it answers with ${status}`;
  return typeof code === 'string' && code !== '' ? code : null;
}

// NOTE: neither the error's own words nor the URL beyond its host are said: both may hold the token.
function sentenceForServer(error: unknown, url: string): string {
  const shown = URL.canParse(url)
    ? `${new URL(url).protocol}//${new URL(url).host}`
    : 'BARMLINE_DB';
  const cause = causeOf(error);
  return (
    `The database server ${shown} cannot be used${cause === null ? '' : ` (${cause})`}. ` +
    'Check the URL in BARMLINE_DB, the token in BARMLINE_DB_TOKEN, and that a libSQL server runs there and can be ' +
    'reached; nothing was changed.'
  );
}

/** The file behind a `file:` URL, or null for a server. */
export function databaseFile(url: string): string | null {
  if (!url.startsWith('file:')) return null;
  return url.startsWith('file://') ? fileURLToPath(url) : url.slice('file:'.length);
}

/**
 * Opens the database and brings it forward.
 * @throws StoreError with a sentence that says what to do
 */
export async function openStore(options: StoreOptions): Promise<Store> {
  const now = options.now ?? (() => new Date());
  const client = openClient(options);
  try {
    if (databaseFile(options.url) !== null) {
      await makeDurable(client);
      await insistOnUsable(client, options.url);
    }
    await migrate(client, {
      now,
      keepCopy: (from, last) => keepCopy(from, options.url, last, now),
    });
  } catch (error) {
    client.close();
    throw error instanceof StoreError ? error : new StoreError(sentenceFor(error, options.url));
  }
  return storeOn(
    client,
    drizzle(client, { schema: tables }),
    now,
    databaseFile(options.url) === null ? null : options.url,
  );
}

/** Damaged, locked or read-only: told at the start, and not at the first page or the first news. */
async function insistOnUsable(client: Client, url: string): Promise<void> {
  const checked = await client.execute('PRAGMA quick_check (1)');
  const [first] = Object.values(checked.rows[0] ?? {});
  if (first !== 'ok') {
    throw new StoreError(sentenceFor({ code: 'SQLITE_CORRUPT' }, url));
  }
  // NOTE: a file that may only be read opens well, and even takes BEGIN IMMEDIATE: only a write tells.
  const probe = await client.transaction('write');
  try {
    await probe.execute('CREATE TABLE may_be_written (a)');
  } finally {
    await probe.rollback();
  }
}

/** Write-ahead log and a full sync at every commit: what was acknowledged survives a power cut. */
async function makeDurable(client: Client): Promise<void> {
  const journal = await client.execute('PRAGMA journal_mode = WAL');
  // NOTE: the level of syncing is a matter of each connection; FULL (2) is what every new one starts
  // with, so it is checked here and not set.
  const sync = await client.execute('PRAGMA synchronous');
  if (journal.rows[0]?.journal_mode !== 'wal' || Number(sync.rows[0]?.synchronous) < 2) {
    throw new StoreError(
      'The database cannot keep a write-ahead log with full syncing on this disk. ' +
        'Point BARMLINE_DATA at a folder on a local disk.',
    );
  }
}

async function keepCopy(client: Client, url: string, last: string, now: () => Date): Promise<void> {
  const file = databaseFile(url);
  if (file === null) return;
  const stamp = now().toISOString().replaceAll(/[:.]/g, '-');
  const copy = `${file}.before-${last}-${stamp}`;
  if (!existsSync(copy)) await client.execute({ sql: 'VACUUM INTO ?', args: [copy] });
}

function storeOn(
  client: Client,
  db: LibSQLDatabase<typeof tables>,
  now: () => Date,
  fileUrl: string | null,
): Store {
  // NOTE: a second writer on a file database would block the whole process while it waits for the
  // first, so writers queue here and never meet in the database.
  let last: Promise<unknown> = Promise.resolve();
  let version = 0;
  return {
    db,
    write: (work) => {
      const mine = last.then(async () => {
        try {
          return await db.transaction(work);
        } catch (error) {
          // NOTE: a statement that the database refused stays open on its connection, and every later
          // commit there fails ('SQL statements in progress'): such connections are not used again.
          if (fileUrl !== null && isOfDatabase(error)) await client.reconnect();
          throw error;
        } finally {
          // After the commit and before anybody is told of it: until then what was read before is still true.
          version += 1;
        }
      });
      last = mine.catch(() => undefined);
      return mine;
    },
    version: () => (fileUrl === null ? null : version),
    copyTo: fileUrl === null ? null : (file) => copyDatabase(fileUrl, file),
    now,
    settle: async () => {
      if (fileUrl !== null) await client.execute('PRAGMA wal_checkpoint (TRUNCATE)');
    },
    close: () => client.close(),
  };
}
