// Days as whole numbers inside the planner; text only at its edges.
import { DateTime } from 'luxon';
import type { House, IsoDay, Weekday } from '../model/index.ts';
import { WEEKDAYS } from '../model/index.ts';

const MS_PER_DAY = 86_400_000;

/** Days since 1970-01-01 of a calendar day. Throws a RangeError on text that is no day. */
export function dayNumber(day: IsoDay): number {
  const at = DateTime.fromISO(day, { zone: 'utc' });
  if (!at.isValid) throw new RangeError(`${day} is not a day`);
  return Math.round(at.toMillis() / MS_PER_DAY);
}

/** The calendar day of a day number. */
export function isoDay(day: number): IsoDay {
  return DateTime.fromMillis(day * MS_PER_DAY, { zone: 'utc' }).toFormat('yyyy-MM-dd');
}

/** 0 Monday … 6 Sunday; 1970-01-01 was a Thursday. */
export const weekdayIndex = (day: number): number => (((day + 3) % 7) + 7) % 7;

/** Which days of a house are for what, over a stretch of days. */
export type HouseDays = {
  /** First day of the stretch, as a day number; the arrays start here. */
  first: number;
  /** Days in the stretch. */
  count: number;
  brew: Uint8Array;
  work: Uint8Array;
  starter: Uint8Array;
  closed: Uint8Array;
  /** The first work day on or after each day, or the last day of the stretch. */
  nextWork: Int32Array;
  /** The last work day on or before each day, or one before the stretch. */
  lastWork: Int32Array;
  /** The last day on or before each day on which a starter may be handled. */
  lastStarter: Int32Array;
  /** The first day on or after each day that is not closed. */
  nextOpen: Int32Array;
  /** The last day on or before each day that is not closed. */
  lastOpen: Int32Array;
  /** The first brew day after each day, or one past the stretch. */
  brewDayAfter: Int32Array;
};

const ALL_WEEK: readonly Weekday[] = WEEKDAYS;

/** The days on which a starter may be handled: the house's own, or every evening at home, work days in a nano. */
export function starterWeekdays(house: House): readonly Weekday[] {
  if (house.starterDays !== null) return house.starterDays;
  return house.kind === 'home' ? ALL_WEEK : workWeekdays(house);
}

/** Work days of the week: the house's own, or its brew days. */
export function workWeekdays(house: House): readonly Weekday[] {
  return house.workDays ?? house.brewDays;
}

/** Marks every day of the stretch `first` … `last`. */
export function houseDays(house: House, first: number, last: number): HouseDays {
  const count = last - first + 1;
  const brew = new Uint8Array(count);
  const work = new Uint8Array(count);
  const starter = new Uint8Array(count);
  const closed = new Uint8Array(count);
  for (const day of house.closed) {
    const at = dayNumber(day) - first;
    if (at >= 0 && at < count) closed[at] = 1;
  }
  const brewSet = new Set<Weekday>(house.brewDays);
  const workSet = new Set<Weekday>(workWeekdays(house));
  const starterSet = new Set<Weekday>(starterWeekdays(house));
  for (let i = 0; i < count; i++) {
    if (closed[i]) continue;
    const name = WEEKDAYS[weekdayIndex(first + i)] as Weekday;
    if (brewSet.has(name)) brew[i] = 1;
    if (workSet.has(name)) work[i] = 1;
    if (starterSet.has(name) || workSet.has(name)) starter[i] = 1;
  }
  const ahead = (marks: Uint8Array, wanted: 0 | 1, beyond: number) => {
    const out = new Int32Array(count);
    let next = beyond;
    for (let i = count - 1; i >= 0; i--) {
      if (marks[i] === wanted) next = first + i;
      out[i] = next;
    }
    return out;
  };
  const behind = (marks: Uint8Array, wanted: 0 | 1) => {
    const out = new Int32Array(count);
    let last = first - 1;
    for (let i = 0; i < count; i++) {
      if (marks[i] === wanted) last = first + i;
      out[i] = last;
    }
    return out;
  };
  const onOrAfter = ahead(brew, 1, first + count);
  const brewDayAfter = new Int32Array(count);
  for (let i = 0; i < count; i++) brewDayAfter[i] = onOrAfter[i + 1] ?? first + count;
  return {
    first,
    count,
    brew,
    work,
    starter,
    closed,
    nextWork: ahead(work, 1, last),
    lastWork: behind(work, 1),
    lastStarter: behind(starter, 1),
    nextOpen: ahead(closed, 0, last),
    lastOpen: behind(closed, 0),
    brewDayAfter,
  };
}
