// Which entries are added, changed and taken away, and that their marks move only when they have to.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type EntryRow, entryChanges, looseEntries } from '../../../api/feed/entries.ts';
import type { Task } from '../../../planner/index.ts';
import { aTask } from '../../builders/calendar.ts';

const first = new Date('2027-01-04T08:00:00Z');
const later = new Date('2027-01-05T09:00:00Z');

/** All entries that there ever were, those that left marked as gone, as the table holds them. */
function stored(rows: EntryRow[], tasks: Task[], now: Date): EntryRow[] {
  const away = rows.filter(({ goneAt }) => goneAt !== null);
  const { added, changed, gone } = entryChanges(live(rows), tasks, now, away);
  const byUid = new Map(changed.map((row) => [row.uid, row]));
  const kept = rows.map((row) => byUid.get(row.uid) ?? row);
  const left = (row: EntryRow) =>
    gone.includes(row.uid) ? { ...row, goneAt: now.toISOString() } : row;
  return [...kept.map(left), ...added];
}

const live = (rows: EntryRow[]): EntryRow[] => rows.filter(({ goneAt }) => goneAt === null);

const applied = (rows: EntryRow[], tasks: Task[], now: Date): EntryRow[] =>
  live(stored(rows, tasks, now));

function only(rows: EntryRow[]): EntryRow {
  const [row] = rows;
  if (row === undefined || rows.length !== 1) throw new Error(`${rows.length} entries`);
  return row;
}

test('a new task gets a random UID that says nothing of it', () => {
  const row = only(applied([], [aTask()], first));
  // RFC 9562 §5.4: version 4 is random
  expect(row.uid).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-4[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
  expect(row).toMatchObject({ sequence: 0, changedAt: first.toISOString() });
  expect(only(applied([], [aTask()], first)).uid).not.toBe(row.uid);
});

describe('the same task again', () => {
  const before = only(applied([], [aTask({ time: '08:00' })], first));
  const after = (part: Partial<Task>) =>
    only(applied([before], [aTask({ time: '08:00', ...part })], later));

  test('unchanged: nothing is touched', () => {
    expect(entryChanges([before], [aTask({ time: '08:00' })], later)).toEqual({
      added: [],
      changed: [],
      gone: [],
    });
  });

  test.each<[string, Partial<Task>, number]>([
    ['another day', { day: '2027-01-24' }, 1],
    ['another clock time', { time: '09:00' }, 1],
    ['a whole day now', { time: null }, 1],
    ['longer', { minutes: 45 }, 1],
    ['another title', { title: 'Harvest Millrace: about 250 mL' }, 0],
    ['other amounts', { amounts: [] }, 0],
    ['done', { done: true }, 0],
  ])('%s: same UID, new stamp, SEQUENCE by the time alone', (_what, part, step) => {
    expect(after(part)).toMatchObject({
      uid: before.uid,
      sequence: before.sequence + step,
      changedAt: later.toISOString(),
      firstSeenAt: first.toISOString(),
    });
  });

  test('how long a task of a whole day takes is no change of its time', () => {
    const allDay = only(applied([], [aTask()], first));
    expect(only(applied([allDay], [aTask({ minutes: 90 })], later)).sequence).toBe(0);
  });
});

describe('a task that is no longer in the plan', () => {
  const row = (done: boolean) => only(applied([], [aTask({ done })], first));

  test('leaves the calendar', () => {
    const before = row(false);
    expect(entryChanges([before], [], later).gone).toEqual([before.uid]);
  });

  test('stays as history when it was done', () => {
    expect(entryChanges([row(true)], [], later).gone).toEqual([]);
  });

  test('takes up its UID when it comes back, under a higher SEQUENCE and a newer stamp', () => {
    const gone = { ...row(false), goneAt: later.toISOString() };
    // also where it says just what it said before: some calendars keep what a feed leaves out, some do not
    for (const task of [aTask(), aTask({ title: 'Harvest Millrace: about 250 mL' })]) {
      const { added, changed } = entryChanges([], [task], later, [gone]);
      expect(added).toEqual([]);
      expect(only(changed)).toMatchObject({
        uid: gone.uid,
        task,
        sequence: gone.sequence + 1,
        changedAt: later.toISOString(),
        goneAt: null,
      });
    }
  });

  test('of two that left under one key the later comes back; neither does while one is there', () => {
    const [early, late] = [first, later].map((at) => ({ ...row(false), goneAt: at.toISOString() }));
    if (early === undefined || late === undefined) throw new Error('there are two');
    for (const gone of [
      [early, late],
      [late, early],
    ]) {
      expect(only(entryChanges([], [aTask()], later, gone).changed).uid).toBe(late.uid);
    }
    const there = row(false);
    expect(entryChanges([there], [aTask()], later, [early, late]).changed).toEqual([]);
  });
});

describe('a task that is done', () => {
  const done = (part: Partial<Task> = {}) => aTask({ done: true, ...part });
  const row = (task: Task) => only(applied([], [task], first));
  const changedBy = (was: Task, task: Task) =>
    entryChanges([row(was)], [task], later).changed.length;

  test('goes on saying what was asked for, whatever a later plan would ask', () => {
    expect(changedBy(done(), done({ title: 'Harvest Millrace: 240 mL', amounts: [] }))).toBe(0);
  });

  test('changes with its day, and when it is not done after all', () => {
    expect(changedBy(done(), done({ day: '2027-01-24' }))).toBe(1);
    expect(changedBy(done(), aTask())).toBe(1);
  });

  test('says of a brew into which tank it went and how much was poured', () => {
    const pitch = (part: Partial<Task>) => done({ kind: 'brew-pitch', ...part });
    const was = pitch({ title: 'Brew Quill into Keg A, pitch 184 mL' });
    expect(changedBy(was, { ...was, title: 'Brew Quill into Keg B, pitch 150 mL' })).toBe(1);
    expect(changedBy(was, { ...was, goodLooksLike: '87 % alive' })).toBe(0);
  });
});

test('two tasks of one key are an error of the planner and said so', () => {
  expect(() => entryChanges([], [aTask(), aTask()], first)).toThrow(/share the key/);
});

test('over any number of re-plans: one UID a key for life, SEQUENCE and stamp never go back', () => {
  const days = fc.constantFrom('2027-01-23', '2027-01-24', '2027-01-30');
  const plans = fc.array(
    fc.uniqueArray(
      fc.record({ key: fc.constantFrom('a', 'b', 'c'), day: days, done: fc.boolean() }),
      {
        selector: (task) => task.key,
      },
    ),
    { maxLength: 8 },
  );
  fc.assert(
    fc.property(plans, (rounds) => {
      let rows: EntryRow[] = [];
      const uidOf = new Map<string, string>();
      rounds.forEach((round, index) => {
        const now = new Date(first.getTime() + index * 60_000);
        const next = stored(rows, round.map(aTask), now);
        for (const row of live(next)) {
          const before = rows.find(({ uid }) => uid === row.uid);
          expect(uidOf.get(row.taskKey) ?? row.uid).toBe(row.uid);
          uidOf.set(row.taskKey, row.uid);
          const [least, stamp] = [before?.sequence ?? 0, before?.changedAt ?? ''];
          expect(row.sequence).toBeGreaterThanOrEqual(least);
          expect(row.changedAt >= stamp).toBe(true);
          if (before === undefined) continue;
          if (before.goneAt !== null) expect(row.sequence).toBeGreaterThan(least);
          else if (before.contentHash === row.contentHash) expect(row).toEqual(before);
        }
        expect(new Set(next.map(({ taskKey }) => taskKey)).size).toBe(next.length);
        rows = next;
      });
    }),
  );
});

test('a calendar file made without a database has UIDs that the next one has too', () => {
  const [a] = looseEntries([aTask()], 'Slate Yard', first);
  const [b] = looseEntries([aTask({ day: '2027-01-24' })], 'Slate Yard', later);
  const [c] = looseEntries([aTask()], 'Quay', first);
  expect(a?.uid).toBe(b?.uid);
  expect(a?.uid).not.toBe(c?.uid);
  // RFC 9562 §5.8: version 8 is made by a rule of one's own
  expect(a?.uid).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-8[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
});
