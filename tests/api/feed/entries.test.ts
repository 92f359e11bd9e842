// Which entries are added, changed and taken away, and that their marks move only when they have to.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type EntryRow, entryChanges, looseEntries } from '../../../api/feed/entries.ts';
import type { Task } from '../../../planner/index.ts';
import { aTask } from '../../builders/calendar.ts';

const first = new Date('2027-01-04T08:00:00Z');
const later = new Date('2027-01-05T09:00:00Z');

function applied(live: EntryRow[], tasks: Task[], now: Date): EntryRow[] {
  const { added, changed, gone } = entryChanges(live, tasks, now);
  const byUid = new Map(changed.map((row) => [row.uid, row]));
  return [
    ...live.filter((row) => !gone.includes(row.uid)).map((row) => byUid.get(row.uid) ?? row),
    ...added,
  ];
}

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

  test('gets a new UID when it comes back: none is used twice', () => {
    const before = row(false);
    const back = only(applied(applied([before], [], later), [aTask()], later));
    expect(back.uid).not.toBe(before.uid);
  });
});

test('two tasks of one key are an error of the planner and said so', () => {
  expect(() => entryChanges([], [aTask(), aTask()], first)).toThrow(/share the key/);
});

test('over any number of re-plans: one UID a key while it lives, SEQUENCE and stamp never go back', () => {
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
      let live: EntryRow[] = [];
      const everUsed = new Map<string, string>();
      rounds.forEach((round, index) => {
        const now = new Date(first.getTime() + index * 60_000);
        const next = applied(live, round.map(aTask), now);
        for (const row of next) {
          const before = live.find(({ uid }) => uid === row.uid);
          expect(everUsed.get(row.uid) ?? row.taskKey).toBe(row.taskKey);
          everUsed.set(row.uid, row.taskKey);
          expect(row.sequence).toBeGreaterThanOrEqual(before?.sequence ?? 0);
          expect(row.changedAt >= (before?.changedAt ?? '')).toBe(true);
          if (before?.contentHash === row.contentHash) expect(row).toEqual(before);
        }
        expect(new Set(next.map(({ taskKey }) => taskKey)).size).toBe(next.length);
        live = next;
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
