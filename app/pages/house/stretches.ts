// Single days as stretches of days that follow each other, and back. Pure.
import { addDays, bareDay, dayNumber, isoDay, shortDay } from '../../parts/days.ts';

export type Stretch = { from: string; to: string };

/** Longer than any closing of a house; a slip of the year is not thousands of days. */
export const MOST_DAYS = 400;

/** Days in order, put together where each is the day after the one before. */
export function stretchesOf(days: readonly string[]): Stretch[] {
  const stretches: Stretch[] = [];
  for (const day of [...new Set(days)].sort()) {
    const last = stretches.at(-1);
    if (last && addDays(last.to, 1) === day) last.to = day;
    else stretches.push({ from: day, to: day });
  }
  return stretches;
}

/** Every day of a stretch, both ends included; null where it is none or far too long. */
export function daysOf({ from, to }: Stretch): string[] | null {
  if (from === '') return null;
  const [first, last] = [dayNumber(from), dayNumber(to === '' ? from : to)];
  if (!(last >= first) || last - first >= MOST_DAYS) return null;
  return Array.from({ length: last - first + 1 }, (_, at) => isoDay(first + at));
}

/** 'Sat 9 Jan' or '9 Jan to Tue 12 Jan' */
export const stretchWords = ({ from, to }: Stretch): string =>
  from === to ? shortDay(from) : `${bareDay(from)} to ${shortDay(to)}`;
