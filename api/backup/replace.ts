// Puts a whole house in the place of the one that is there, inside one transaction.
import { desc, sql } from 'drizzle-orm';
import { contentHash, slot } from '../feed/entries.ts';
import type { Db } from '../store/index.ts';
import { calendarEntry, feed, house, plan, record, season } from '../store/tables.ts';
import type { WholeHouse } from './whole.ts';

const ROWS_AT_ONCE = 50;

async function inChunks<T>(rows: readonly T[], add: (some: T[]) => Promise<unknown>) {
  for (let from = 0; from < rows.length; from += ROWS_AT_ONCE) {
    await add(rows.slice(from, from + ROWS_AT_ONCE));
  }
}

/** The record cannot be deleted while its triggers stand; they are put back before the transaction ends. */
async function withoutTriggers(tx: Db, work: () => Promise<void>): Promise<void> {
  const triggers = await tx.all<{ name: string; sql: string }>(
    sql`SELECT name, sql FROM sqlite_master WHERE type = 'trigger' AND tbl_name = 'record'`,
  );
  for (const { name } of triggers) await tx.run(sql`DROP TRIGGER ${sql.identifier(name)}`);
  await work();
  for (const trigger of triggers) await tx.run(sql.raw(trigger.sql));
}

/** The key of an entry whose task is never laid out again, as a new season gives it. */
const putAwayKey = ({ taskKey, uid }: { taskKey: string; uid: string }): string =>
  taskKey.endsWith(`#${uid}`) ? taskKey : `${taskKey}#${uid}`;

/**
 * Entries that calendars know already have to change in place: their marks may not go back, or a
 * calendar would keep what it has.
 */
async function replaceCalendar(tx: Db, whole: WholeHouse, now: Date): Promise<void> {
  const known = new Map(
    (await tx.select().from(calendarEntry)).map((row) => [row.uid, row] as const),
  );
  await tx.delete(calendarEntry);
  const rows = whole.calendar.map((entry) => {
    const hash = contentHash(entry.task);
    const had = known.get(entry.uid);
    const marks =
      had === undefined
        ? { sequence: entry.sequence, changedAt: entry.changedAt }
        : had.contentHash === hash && (had.goneAt === null || entry.goneAt !== null)
          ? { sequence: had.sequence, changedAt: had.changedAt }
          : {
              sequence:
                Math.max(had.sequence, entry.sequence) +
                (had.goneAt === null && slot(JSON.parse(had.task)) === slot(entry.task) ? 0 : 1),
              changedAt: now.toISOString(),
            };
    return {
      ...entry,
      ...marks,
      task: JSON.stringify(entry.task),
      day: entry.task.day,
      contentHash: hash,
    };
  });
  await inChunks(rows, (some) => tx.insert(calendarEntry).values(some));
  // What has left the calendar stays known, so that no UID is ever used for something else.
  const kept = new Set(rows.map(({ uid }) => uid));
  const gone = [...known.values()].filter(({ uid }) => !kept.has(uid));
  // Of a house that shares no entry nothing comes back, even where a brew has the same name.
  const another = rows.length > 0 && gone.length === known.size;
  await inChunks(
    gone.map((row) => ({
      ...row,
      taskKey: another ? putAwayKey(row) : row.taskKey,
      goneAt: row.goneAt ?? now.toISOString(),
    })),
    (some) => tx.insert(calendarEntry).values(some),
  );
}

/** Addresses that are here stay, revoked ones stay revoked; those of the document are added where they are unknown. */
async function addFeeds(tx: Db, whole: WholeHouse): Promise<void> {
  const known = new Set((await tx.select({ id: feed.id }).from(feed)).map(({ id }) => id));
  for (const one of whole.feeds) {
    if (known.has(one.id)) continue;
    await tx.insert(feed).values({
      ...one,
      kinds: one.kinds === null ? null : JSON.stringify(one.kinds),
      alarm: one.alarm === null ? null : JSON.stringify(one.alarm),
      look: JSON.stringify(one.look),
    });
  }
}

async function addPlans(tx: Db, whole: WholeHouse, revision: number): Promise<void> {
  for (const status of ['in-force', 'draft'] as const) {
    const made = status === 'in-force' ? whole.inForce : whole.draft;
    if (made === null) continue;
    await tx.insert(plan).values({
      id: made.id,
      season: whole.season,
      madeAt: made.madeAt,
      status,
      houseRevision: made.ofThisHouse ? revision : revision - 1,
      recordNo: made.recordNo,
      document: JSON.stringify(made.plan),
      changes: status === 'draft' ? JSON.stringify(whole.draft?.changes) : null,
      inForceAt: status === 'in-force' ? made.madeAt : null,
    });
  }
}

/**
 * House, record, plans and calendar become those of the document; passwords and sessions are not touched.
 * The revision moves on, so that an edit that was begun before is refused.
 * @param addresses whether its calendar addresses are taken over: whoever has one of them can then read this calendar
 * @returns the new revision
 */
export async function replaceWhole(
  tx: Db,
  whole: WholeHouse,
  { now, addresses }: { now: Date; addresses: boolean },
): Promise<number> {
  const [newest] = await tx
    .select({ revision: house.revision })
    .from(house)
    .orderBy(desc(house.revision))
    .limit(1);
  const revision = (newest?.revision ?? 0) + 1;
  await withoutTriggers(tx, async () => {
    for (const table of [plan, record, house, season]) await tx.delete(table);
    await tx.insert(season).values(whole.seasons.map(({ no, startedAt }) => ({ no, startedAt })));
    for (const { no, record: entries } of whole.seasons) {
      const rows = entries.map(({ at, entry }) => ({
        season: no,
        no: entry.no,
        at,
        entry: JSON.stringify(entry),
      }));
      await inChunks(rows, (some) => tx.insert(record).values(some));
    }
  });
  await tx.insert(house).values({
    revision,
    season: whole.season,
    document: JSON.stringify(whole.house),
    demo: whole.demo,
    savedAt: whole.savedAt,
  });
  await addPlans(tx, whole, revision);
  await replaceCalendar(tx, whole, now);
  if (addresses) await addFeeds(tx, whole);
  return revision;
}
