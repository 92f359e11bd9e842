// Brings a database forward to this version at start, keeps a copy before it does, and refuses a newer one.
import type { Client } from '@libsql/client';
import { MIGRATIONS, type Migration } from './migrations/index.ts';

/** The database cannot be used; the message is a sentence for the person who started the server. */
export class StoreError extends Error {
  override name = 'StoreError';
}

export type MigrateOptions = {
  now: () => Date;
  /** Called before an older database is changed; keeps a copy of it. */
  keepCopy: (client: Client, lastApplied: string) => Promise<void>;
  migrations?: readonly Migration[];
};

async function appliedIds(client: Client): Promise<string[]> {
  const found = await client.execute(
    "SELECT name FROM sqlite_master WHERE type = 'table' AND name = 'migration'",
  );
  if (found.rows.length === 0) return [];
  const rows = await client.execute('SELECT id FROM migration ORDER BY id');
  return rows.rows.map((row) => String(row.id));
}

/**
 * Runs the migrations that a database has not had yet, each in one transaction.
 * @returns the ids that were run
 * @throws StoreError where the database was made by a newer version
 */
export async function migrate(client: Client, options: MigrateOptions): Promise<string[]> {
  const migrations = options.migrations ?? MIGRATIONS;
  const known = new Set(migrations.map((migration) => migration.id));
  const applied = await appliedIds(client);
  const unknown = applied.filter((id) => !known.has(id));
  if (unknown.length > 0) {
    throw new StoreError(
      `This database was made by a newer version of Barmline (it knows ${unknown.join(', ')}). ` +
        'Start that version, or point BARMLINE_DATA at another folder. Nothing was changed.',
    );
  }
  const pending = migrations.filter((migration) => !applied.includes(migration.id));
  const last = applied.at(-1);
  if (pending.length > 0 && last !== undefined) await options.keepCopy(client, last);
  for (const migration of pending) {
    await client.batch(
      [
        'CREATE TABLE IF NOT EXISTS migration (id TEXT PRIMARY KEY, applied_at TEXT NOT NULL)',
        ...migration.statements,
        {
          sql: 'INSERT INTO migration (id, applied_at) VALUES (?, ?)',
          args: [migration.id, options.now().toISOString()],
        },
      ],
      'write',
    );
  }
  return pending.map((migration) => migration.id);
}
