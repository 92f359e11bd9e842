// Entries of the record by hand, and raw statements for what the code itself never does.
import { sql } from 'drizzle-orm';
import type { Db } from '../../api/store/index.ts';
import type { RecordEntry } from '../../planner/index.ts';

/** The entry of this number: a brew slipped. */
export function entryOf(no: number): RecordEntry {
  return {
    no,
    news: { kind: 'slipped', brew: 'Quill', to: '2027-02-06' },
    fact: { kind: 'not-before', brew: 'Quill', day: '2027-02-06' },
  };
}

/** Runs a statement as it stands. */
export function readBack(db: Db, statement: string): Promise<unknown> {
  return Promise.resolve(db.run(sql.raw(statement)));
}
