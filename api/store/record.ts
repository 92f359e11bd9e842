// The record: what happened and what was decided, in order, only ever added to.
import { asc, eq } from 'drizzle-orm';
import type { RecordEntry } from '../../planner/index.ts';
import type { Db } from './index.ts';
import { record } from './tables.ts';

export type StoredEntry = { at: string; entry: RecordEntry };

/** The entries of a season, oldest first. */
export async function readRecord(db: Db, season: number): Promise<StoredEntry[]> {
  const rows = await db
    .select()
    .from(record)
    .where(eq(record.season, season))
    .orderBy(asc(record.no));
  return rows.map((row) => ({ at: row.at, entry: JSON.parse(row.entry) as RecordEntry }));
}

/** Adds one entry under the number that it brings; a number that is taken throws. */
export async function addEntry(
  tx: Db,
  season: number,
  at: Date,
  entry: RecordEntry,
): Promise<void> {
  await tx
    .insert(record)
    .values({ season, no: entry.no, at: at.toISOString(), entry: JSON.stringify(entry) });
}
