// The database as it is made: a snapshot of its tables, and what it refuses.
import { copyFileSync, existsSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { createClient } from '@libsql/client';
import { getTableColumns, getTableName, is } from 'drizzle-orm';
import { SQLiteTable } from 'drizzle-orm/sqlite-core';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { readHouse, saveHouse } from '../../../api/store/house.ts';
import { openStore, StoreError } from '../../../api/store/index.ts';
import { migrate } from '../../../api/store/migrate.ts';
import { MIGRATIONS } from '../../../api/store/migrations/index.ts';
import * as tables from '../../../api/store/tables.ts';
import { aHouse } from '../../builders/plan.ts';

let folder = '';
let url = '';
const now = () => new Date('2027-01-04T08:00:00Z');

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'barmline-store-'));
  url = pathToFileURL(join(folder, 'barmline.db')).href;
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

async function rowsOf(sql: string) {
  const client = createClient({ url });
  try {
    return (await client.execute(sql)).rows;
  } finally {
    client.close();
  }
}

test('the schema is the one in the snapshot: a change shows in the diff and comes as a migration', async () => {
  (await openStore({ url, now })).close();
  const rows = await rowsOf(
    "SELECT type, name, sql FROM sqlite_master WHERE name NOT LIKE 'sqlite_%' ORDER BY type, name",
  );
  const lines = rows.map((row) => `${row.type} ${row.name}\n${row.sql}`);
  expect(lines.join('\n\n')).toMatchSnapshot();
});

test('the tables that the code speaks of are those of the database, column by column', async () => {
  (await openStore({ url, now })).close();
  const seen: string[] = [];
  for (const table of Object.values(tables)) {
    if (!is(table, SQLiteTable)) continue;
    const name = getTableName(table);
    seen.push(name);
    const real = await rowsOf(`PRAGMA table_info (${name})`);
    const inCode = Object.values(getTableColumns(table)).map((column) => [
      column.name,
      column.getSQLType().toUpperCase(),
      column.notNull || column.primary,
    ]);
    const inDatabase = real.map((row) => [row.name, row.type, row.notnull === 1 || row.pk !== 0]);
    expect(inCode.sort(), name).toEqual(inDatabase.sort());
  }
  const real = await rowsOf(
    "SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite_%' AND name <> 'migration'",
  );
  expect(seen.sort()).toEqual(real.map((row) => row.name).sort());
});

test('a second start finds nothing to do', async () => {
  (await openStore({ url, now })).close();
  const client = createClient({ url });
  const ran = await migrate(client, { now, keepCopy: () => Promise.reject(new Error('copied')) });
  expect(ran).toEqual([]);
  client.close();
});

test('commits are synced in full and written to a log ahead', async () => {
  const store = await openStore({ url, now });
  expect(await rowsOf('PRAGMA journal_mode')).toEqual([{ journal_mode: 'wal' }]);
  // 2 is FULL: https://www.sqlite.org/pragma.html#pragma_synchronous
  expect(await rowsOf('PRAGMA synchronous')).toEqual([{ synchronous: 2 }]);
  store.close();
});

test('once settled, the file alone is the whole database', async () => {
  const store = await openStore({ url, now });
  await store.write((tx) =>
    saveHouse(tx, { house: aHouse(), demo: false, at: now(), startOver: false }),
  );
  await store.settle();
  const alone = join(folder, 'alone.db');
  copyFileSync(join(folder, 'barmline.db'), alone);
  store.close();
  const copy = await openStore({ url: pathToFileURL(alone).href, now });
  expect((await readHouse(copy.db))?.house.name).toBe(aHouse().name);
  copy.close();
});

test('an older database is copied before it is brought forward', async () => {
  (await openStore({ url, now })).close();
  const client = createClient({ url });
  const added = { id: '9999-test', statements: ['CREATE TABLE added (a TEXT)'] };
  const copies: string[] = [];
  const ran = await migrate(client, {
    now,
    keepCopy: async (from, last) => {
      copies.push(last);
      // The copy is made of the state before.
      const found = await from.execute("SELECT 1 FROM sqlite_master WHERE name = 'added'");
      expect(found.rows).toEqual([]);
    },
    migrations: [...MIGRATIONS, added],
  });
  expect(ran).toEqual(['9999-test']);
  expect(copies).toEqual([MIGRATIONS.at(-1)?.id]);
  client.close();
});

test('a migration that fails half-way leaves the database as it was', async () => {
  (await openStore({ url, now })).close();
  const client = createClient({ url });
  const broken = { id: '9999-test', statements: ['CREATE TABLE added (a TEXT)', 'NO SQL'] };
  await expect(
    migrate(client, {
      now,
      keepCopy: () => Promise.resolve(),
      migrations: [...MIGRATIONS, broken],
    }),
  ).rejects.toThrow();
  const found = await client.execute(
    "SELECT name FROM sqlite_master WHERE name = 'added' UNION SELECT id FROM migration WHERE id = '9999-test'",
  );
  expect(found.rows).toEqual([]);
  client.close();
});

test('a database of a newer version is refused with a sentence and stays as it is', async () => {
  (await openStore({ url, now })).close();
  await rowsOf("INSERT INTO migration (id, applied_at) VALUES ('9999-later', '2099-01-01')");
  await expect(openStore({ url, now })).rejects.toThrow(StoreError);
  await expect(openStore({ url, now })).rejects.toThrow(/newer version.*9999-later/);
  expect(readdirSync(folder).filter((name) => name.includes('before'))).toEqual([]);
});

test('a folder that is not there gives a sentence and makes nothing', async () => {
  const missing = join(folder, 'nowhere', 'barmline.db');
  await expect(openStore({ url: pathToFileURL(missing).href, now })).rejects.toThrow(
    /cannot be opened.*Check that the data folder exists/s,
  );
  expect(existsSync(missing)).toBe(false);
});

test('a file that is no database is not overwritten', async () => {
  const { writeFileSync, readFileSync } = await import('node:fs');
  const file = join(folder, 'barmline.db');
  writeFileSync(
    file,
    'my notes on hops, much longer than one hundred bytes so that it is read as a header '.repeat(
      20,
    ),
  );
  const before = readFileSync(file);
  await expect(openStore({ url, now })).rejects.toThrow(StoreError);
  expect(readFileSync(file).equals(before)).toBe(true);
});
