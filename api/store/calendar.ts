// Entries of the calendar: brought in step with the plan in force, read for the feeds and the task list.
import { and, asc, eq, gte, inArray, isNotNull, isNull, sql } from 'drizzle-orm';
import type { Task } from '../../planner/index.ts';
import { type EntryRow, entryChanges } from '../feed/entries.ts';
import type { Db } from './index.ts';
import { calendarEntry } from './tables.ts';

function stored(row: typeof calendarEntry.$inferSelect): EntryRow {
  return {
    uid: row.uid,
    taskKey: row.taskKey,
    task: JSON.parse(row.task) as Task,
    contentHash: row.contentHash,
    sequence: row.sequence,
    changedAt: row.changedAt,
    firstSeenAt: row.firstSeenAt,
    goneAt: row.goneAt,
  };
}

/** The entries that are not gone, in order of day and key. */
export async function readEntries(db: Db, fromDay?: string): Promise<EntryRow[]> {
  const rows = await db
    .select()
    .from(calendarEntry)
    .where(
      and(
        isNull(calendarEntry.goneAt),
        fromDay === undefined ? undefined : gte(calendarEntry.day, fromDay),
      ),
    )
    .orderBy(asc(calendarEntry.day), asc(calendarEntry.taskKey));
  return rows.map(stored);
}

/** Entries of these tasks that left the calendar in this season. */
async function readGone(db: Db, keys: readonly string[]): Promise<EntryRow[]> {
  const rows: EntryRow[] = [];
  for (const some of chunks(keys, 500)) {
    const found = await db
      .select()
      .from(calendarEntry)
      .where(and(isNotNull(calendarEntry.goneAt), inArray(calendarEntry.taskKey, some)));
    rows.push(...found.map(stored));
  }
  return rows;
}

/** Statements on a file never let go of the thread: whoever waits for an answer is served in between. */
const othersFirst = () => new Promise<void>((resolve) => setImmediate(resolve));

/** Makes the stored entries show these tasks, and touches none that already does. */
export async function syncEntries(tx: Db, tasks: readonly Task[], now: Date): Promise<void> {
  await othersFirst();
  const live = await readEntries(tx);
  const held = new Set(live.map(({ taskKey }) => taskKey));
  const missing = tasks.filter(({ key }) => !held.has(key)).map(({ key }) => key);
  const changes = entryChanges(live, tasks, now, await readGone(tx, missing));
  for (const some of chunks(changes.added, 50)) {
    await othersFirst();
    await tx
      .insert(calendarEntry)
      .values(some.map((row) => ({ ...row, task: JSON.stringify(row.task), day: row.task.day })));
  }
  for (const [at, row] of changes.changed.entries()) {
    if (at % 50 === 0) await othersFirst();
    await tx
      .update(calendarEntry)
      .set({
        task: JSON.stringify(row.task),
        day: row.task.day,
        contentHash: row.contentHash,
        sequence: row.sequence,
        changedAt: row.changedAt,
        goneAt: row.goneAt,
      })
      .where(eq(calendarEntry.uid, row.uid));
  }
  for (const some of chunks(changes.gone, 500)) {
    await tx
      .update(calendarEntry)
      .set({ goneAt: now.toISOString() })
      .where(inArray(calendarEntry.uid, some));
  }
}

// A statement takes only so many values.
function chunks<T>(all: readonly T[], size: number): T[][] {
  return Array.from({ length: Math.ceil(all.length / size) }, (_, at) =>
    all.slice(at * size, (at + 1) * size),
  );
}

/**
 * A new season begins: what was not done leaves the calendar, what was done stays as history. All of them get a key of
 * their own, so that a task of the same key in the new season gets a new entry.
 */
export async function putAwayEntries(tx: Db, now: Date): Promise<void> {
  for (const { uid, task } of await readEntries(tx)) {
    if (task.done) continue;
    await tx
      .update(calendarEntry)
      .set({ goneAt: now.toISOString() })
      .where(eq(calendarEntry.uid, uid));
  }
  const own = sql`${calendarEntry.taskKey} || '#' || ${calendarEntry.uid}`;
  const notYet = sql`${calendarEntry.taskKey} NOT LIKE '%#' || ${calendarEntry.uid}`;
  await tx.update(calendarEntry).set({ taskKey: own }).where(notYet);
}
