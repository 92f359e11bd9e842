// The whole house as one document: what it holds, how it is read out of a database, and when it fits together.
import { asc, desc, eq, isNull, not, or, sql } from 'drizzle-orm';
import { z } from 'zod';
import {
  Changes,
  checkHouse,
  foldRecord,
  House,
  houseNow,
  Plan,
  type Problem,
  RecordEntry,
  Task,
  TaskKind,
  tasks,
} from '../../planner/index.ts';
import { Alarm, FeedLook } from '../routes/feed-shapes.ts';
import { lostFacts } from '../routes/saving.ts';
import type { Db } from '../store/index.ts';
import { calendarEntry, feed, house, plan, record, season } from '../store/tables.ts';

export const FORMAT = 'barmline-house';
export const FORMAT_VERSION = 1;

const at = z.iso.datetime().describe('A moment, ISO 8601 in UTC');
const planned = {
  id: z.uuid(),
  madeAt: at,
  ofThisHouse: z.boolean().describe('false: the house was edited since'),
  recordNo: z.number().int().nonnegative().describe('Newest entry of the record that it knows'),
  plan: Plan,
};

export const WholeHouse = z
  .strictObject({
    format: z.literal(FORMAT),
    formatVersion: z.literal(FORMAT_VERSION),
    savedAt: at.describe('When the house was last saved'),
    demo: z.boolean(),
    house: House,
    season: z.number().int().positive().describe('The season that runs'),
    seasons: z
      .array(
        z.strictObject({
          no: z.number().int().positive(),
          startedAt: at,
          record: z.array(z.strictObject({ at, entry: RecordEntry })).describe('Oldest first'),
        }),
      )
      .min(1),
    inForce: z.strictObject(planned).nullable(),
    draft: z.strictObject({ ...planned, changes: Changes }).nullable(),
    calendar: z
      .array(
        z.strictObject({
          uid: z.uuid(),
          taskKey: z.string().min(1),
          task: Task,
          sequence: z.number().int().nonnegative(),
          changedAt: at,
          firstSeenAt: at,
          goneAt: at
            .nullable()
            .default(null)
            .describe('Left the calendar; its task takes it up again'),
        }),
      )
      .describe('Entries of the calendar, with the marks by which calendars know them again'),
    feeds: z
      .array(
        z.strictObject({
          id: z.uuid(),
          kinds: z.array(TaskKind).min(1).nullable(),
          alarm: Alarm.nullable(),
          look: FeedLook,
          tokenHash: z.string().regex(/^[0-9a-f]{64}$/),
          createdAt: at,
        }),
      )
      .describe('Calendar addresses: what each shows, and a hash of its secret'),
  })
  .meta({ id: 'WholeHouse' });
export type WholeHouse = z.infer<typeof WholeHouse>;

/** A stored part with its keys in the schema's order: the document is the same text whoever stored it. */
function inOrder<T>(schema: z.ZodType<T>, json: string): T {
  const value: unknown = JSON.parse(json);
  // What an earlier version stored in another shape is told by whoever reads the document.
  return schema.safeParse(value).data ?? (value as T);
}

async function seasonsOf(db: Db): Promise<WholeHouse['seasons']> {
  const [seasons, entries] = [
    await db.select().from(season).orderBy(asc(season.no)),
    await db.select().from(record).orderBy(asc(record.season), asc(record.no)),
  ];
  return seasons.map(({ no, startedAt }) => ({
    no,
    startedAt,
    record: entries
      .filter((row) => row.season === no)
      .map((row) => ({ at: row.at, entry: inOrder(RecordEntry, row.entry) })),
  }));
}

async function calendarOf(db: Db): Promise<WholeHouse['calendar']> {
  const putAway = sql`${calendarEntry.taskKey} LIKE '%#' || ${calendarEntry.uid}`;
  const rows = await db
    .select()
    .from(calendarEntry)
    .where(or(isNull(calendarEntry.goneAt), not(putAway)))
    .orderBy(asc(calendarEntry.day), asc(calendarEntry.uid));
  // of one task the entry that is there, or the last that left: the one that it will have
  const last = (row: (typeof rows)[number]) => row.goneAt ?? '~';
  const own = new Map<string, (typeof rows)[number]>();
  for (const row of rows) {
    const other = own.get(row.taskKey);
    if (other === undefined || last(row) > last(other)) own.set(row.taskKey, row);
  }
  const kept = rows.filter((row) => own.get(row.taskKey) === row);
  return kept.map(({ uid, taskKey, task, sequence, changedAt, firstSeenAt, goneAt }) => ({
    uid,
    taskKey,
    task: inOrder(Task, task),
    sequence,
    changedAt,
    firstSeenAt,
    goneAt,
  }));
}

async function feedsOf(db: Db): Promise<WholeHouse['feeds']> {
  const rows = await db
    .select()
    .from(feed)
    .where(isNull(feed.revokedAt))
    .orderBy(asc(feed.createdAt), asc(feed.id));
  return rows.map((row) => ({
    id: row.id,
    kinds: row.kinds === null ? null : (JSON.parse(row.kinds) as TaskKind[]),
    alarm: row.alarm === null ? null : (JSON.parse(row.alarm) as Alarm),
    look: FeedLook.parse(row.look === null ? {} : JSON.parse(row.look)),
    tokenHash: row.tokenHash,
    createdAt: row.createdAt,
  }));
}

/** Everything that makes up the house as it stands, or null in an empty database. The same state, the same document. */
export async function readWhole(db: Db): Promise<WholeHouse | null> {
  const [newest] = await db.select().from(house).orderBy(desc(house.revision)).limit(1);
  if (newest === undefined) return null;
  const planOf = async (status: 'in-force' | 'draft') => {
    const [row] = await db.select().from(plan).where(eq(plan.status, status));
    // A plan of an earlier version that cannot be read any more is left out: it can be made anew.
    const made = row === undefined ? undefined : Plan.safeParse(JSON.parse(row.document)).data;
    if (row === undefined || made === undefined) return null;
    const shown = {
      id: row.id,
      madeAt: row.madeAt,
      ofThisHouse: row.houseRevision === newest.revision,
      recordNo: row.recordNo,
      plan: made,
    };
    const changes = row.changes === null ? null : inOrder(Changes, row.changes);
    return { shown, changes };
  };
  const [inForce, draft] = [await planOf('in-force'), await planOf('draft')];
  return {
    format: FORMAT,
    formatVersion: FORMAT_VERSION,
    savedAt: newest.savedAt,
    demo: newest.demo,
    house: House.parse(JSON.parse(newest.document)),
    season: newest.season,
    seasons: await seasonsOf(db),
    inForce: inForce?.shown ?? null,
    draft: draft?.changes ? { ...draft.shown, changes: draft.changes } : null,
    calendar: await calendarOf(db),
    feeds: await feedsOf(db),
  };
}

function problem(path: string, message: string, remedy: string): Problem {
  const bound = null;
  return { code: 'does-not-fit', path, value: null, bound, message, remedy, level: 'error' };
}

/** What is wrong with a document whose shape is right: its parts have to be of one house. */
export function checkWhole(whole: WholeHouse): Problem[] {
  const problems = checkHouse(whole.house).filter(({ level }) => level === 'error');
  const numbers = whole.seasons.map(({ no }) => no);
  if (new Set(numbers).size < numbers.length || !numbers.includes(whole.season)) {
    problems.push(
      problem('seasons', 'Its seasons do not count up to the one that runs.', 'Take another copy.'),
    );
  }
  whole.seasons.forEach(({ record: entries }, index) => {
    if (entries.some(({ entry }, at) => entry.no !== at + 1)) {
      problems.push(
        problem(
          `seasons[${index}].record`,
          'Its record has a gap: entries are numbered 1, 2, 3 …',
          'Take another copy: news would be missing.',
        ),
      );
    }
  });
  for (const [path, all] of [
    ['calendar', whole.calendar.map(({ uid }) => uid)],
    ['calendar', whole.calendar.map(({ taskKey }) => taskKey)],
    ['feeds', whole.feeds.map(({ id }) => id)],
  ] as const) {
    if (new Set(all).size < all.length) {
      problems.push(problem(path, 'The same thing stands in it twice.', 'Take another copy.'));
    }
  }
  if (whole.draft?.id !== undefined && whole.draft.id === whole.inForce?.id) {
    problems.push(
      problem('draft', 'The draft is the plan in force at the same time.', 'Take another copy.'),
    );
  }
  return problems.length > 0 ? problems : fits(whole);
}

// What every page asks of a plan is asked of it once here: a plan of another house cannot answer.
function fits(whole: WholeHouse): Problem[] {
  const entries = whole.seasons.find(({ no }) => no === whole.season)?.record ?? [];
  const strange = (path: string, what: string) =>
    problem(path, `Its ${what} does not belong to this house.`, 'Take another copy.');
  try {
    const record = foldRecord(entries.map(({ entry }) => entry));
    const problems = lostFacts(whole.house, record);
    const now = houseNow(whole.house, record.overlay);
    // News may have dropped a brew that the plan in force still holds.
    const brews = new Set([...whole.house.brews, ...now.brews].map(({ brew }) => brew));
    for (const path of ['inForce', 'draft'] as const) {
      const made = whole[path];
      if (made === null || belongs(made, brews, () => tasks(made.plan, now, record.done))) continue;
      problems.push(strange(path, 'plan'));
    }
    return problems;
  } catch {
    return [strange('seasons', 'record')];
  }
}

function belongs(
  made: { plan: Plan; ofThisHouse: boolean },
  brews: ReadonlySet<string>,
  ask: () => unknown,
): boolean {
  if (made.ofThisHouse && made.plan.brews.some(({ brew }) => !brews.has(brew))) return false;
  try {
    ask();
    return true;
  } catch {
    return false;
  }
}
