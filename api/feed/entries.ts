// Tasks to calendar entries: the same task keeps its entry for life, and an entry's marks move only when it changes.
import { createHash, randomUUID } from 'node:crypto';
import type { Task } from '../../planner/index.ts';
import type { CalendarEntry } from './calendar.ts';

/** An entry as it is stored. */
export type EntryRow = {
  uid: string;
  taskKey: string;
  task: Task;
  contentHash: string;
  sequence: number;
  /** ISO moment of the last change of its content. */
  changedAt: string;
  firstSeenAt: string;
  goneAt: string | null;
};

export type EntryChanges = {
  added: EntryRow[];
  /** The same entries with new content, those that come back to the calendar among them. */
  changed: EntryRow[];
  /** UIDs of entries that leave the calendar. */
  gone: string[];
};

export const HISTORY_DAYS = 180;

/** A fingerprint of everything that an entry shows. */
export function contentHash(task: Task): string {
  const shown = [
    task.kind,
    task.day,
    task.time,
    task.minutes,
    task.title,
    task.steps,
    task.amounts.map((amount) => [amount.what, amount.value, amount.unit]),
    task.haveReady,
    task.goodLooksLike,
    task.why,
    task.caution,
    task.done,
  ];
  return createHash('sha256').update(JSON.stringify(shown)).digest('base64url');
}

/** When a task begins and ends, as far as a calendar sees: SEQUENCE rises when this changes (RFC 5545 §3.8.7.4). */
export function slot(task: Task): string {
  return task.time === null ? task.day : `${task.day} ${task.time} ${task.minutes}`;
}

/**
 * What has to change in the stored entries so that they show these tasks.
 * Entries of done tasks stay as history when the tasks are no longer in the plan.
 * @param live the entries that are not gone, by any order
 * @param gone entries that left the calendar earlier: a task that comes back takes its own up again
 */
export function entryChanges(
  live: readonly EntryRow[],
  tasks: readonly Task[],
  now: Date,
  gone: readonly EntryRow[] = [],
): EntryChanges {
  const at = now.toISOString();
  const byKey = new Map([...latestByKey(gone), ...live.map((row) => [row.taskKey, row] as const)]);
  const changes: EntryChanges = { added: [], changed: [], gone: [] };
  const wanted = new Set<string>();
  for (const task of tasks) {
    if (wanted.has(task.key)) throw new Error(`two tasks share the key ${task.key}`);
    wanted.add(task.key);
    const row = byKey.get(task.key);
    if (row !== undefined && row.goneAt === null && isHistory(row.task, task)) continue;
    const hash = contentHash(task);
    if (row === undefined) {
      changes.added.push({
        uid: randomUUID(),
        taskKey: task.key,
        task,
        contentHash: hash,
        sequence: 0,
        changedAt: at,
        firstSeenAt: at,
        goneAt: null,
      });
    } else if (row.contentHash !== hash || row.goneAt !== null) {
      // One that was away is told anew even where it says the same: some calendars keep what a feed leaves out.
      const moved = row.goneAt !== null || slot(row.task) !== slot(task);
      // A clock that was set back must not set the stamp back: a calendar would keep what it has.
      const after = new Date(new Date(row.changedAt).getTime() + 1000).toISOString();
      changes.changed.push({
        ...row,
        task,
        contentHash: hash,
        sequence: row.sequence + (moved ? 1 : 0),
        changedAt: at > row.changedAt ? at : after,
        goneAt: null,
      });
    }
  }
  for (const row of live) {
    if (!wanted.has(row.taskKey) && !row.task.done) changes.gone.push(row.uid);
  }
  return changes;
}

/**
 * Whether an entry says all that there is to say: its task was done and still is, on the same day. It goes on saying what
 * was asked for when it was done; a later plan has no part in that. Of a brew what was told (tank, mL) follows.
 */
function isHistory(was: Task, task: Task): boolean {
  if (!was.done || !task.done || slot(was) !== slot(task)) return false;
  return task.kind !== 'brew-pitch' || was.title === task.title;
}

/** Of entries that left under one key, the one that left last. */
function latestByKey(gone: readonly EntryRow[]): [string, EntryRow][] {
  return [...gone]
    .sort((a, b) => ((a.goneAt ?? '') < (b.goneAt ?? '') ? -1 : 1))
    .map((row) => [row.taskKey, row]);
}

/** Entries for a calendar file made without a database: the same house and task always get the same UID. */
export function looseEntries(
  tasks: readonly Task[],
  houseName: string,
  changedAt: Date,
): CalendarEntry[] {
  return tasks.map((task) => ({
    uid: looseUid(houseName, task.key),
    sequence: 0,
    changedAt,
    task,
  }));
}

// A UUID of version 8 (RFC 9562 §5.8): its bits come from a hash instead of a die.
function looseUid(houseName: string, key: string): string {
  const bytes = createHash('sha256')
    .update(JSON.stringify([houseName, key]))
    .digest();
  bytes[6] = ((bytes[6] ?? 0) & 0x0f) | 0x80;
  bytes[8] = ((bytes[8] ?? 0) & 0x3f) | 0x80;
  const hex = bytes.subarray(0, 16).toString('hex');
  return hex.replace(/^(.{8})(.{4})(.{4})(.{4})(.{12})$/, '$1-$2-$3-$4-$5');
}
