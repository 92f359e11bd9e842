// Calendar days as whole numbers, and as people read them. A day has no clock and no zone here: it is the house's own date.
import type { IsoDay } from '../../planner/index.ts';

const DAY_MS = 86_400_000;
const LOCALE = 'en-GB';

/** Days since 1 January 1970 of an ISO day. */
export function dayNumber(day: IsoDay): number {
  return Math.round(Date.parse(`${day}T00:00:00Z`) / DAY_MS);
}

/** The ISO day of that many days since 1 January 1970. */
export function isoDay(day: number): IsoDay {
  return new Date(day * DAY_MS).toISOString().slice(0, 10);
}

/** The day so many days later; negative: earlier. */
export function addDays(day: IsoDay, days: number): IsoDay {
  return isoDay(dayNumber(day) + days);
}

const WEEKDAY_KEYS = ['sun', 'mon', 'tue', 'wed', 'thu', 'fri', 'sat'] as const;

/** Day of the week as a house's settings spell it. */
export function weekdayKey(day: number): (typeof WEEKDAY_KEYS)[number] {
  return WEEKDAY_KEYS[(((day + 4) % 7) + 7) % 7] ?? 'sun';
}

function reader(options: Intl.DateTimeFormatOptions): (day: IsoDay) => string {
  const format = new Intl.DateTimeFormat(LOCALE, { ...options, timeZone: 'UTC' });
  return (day) => format.format(new Date(`${day}T00:00:00Z`));
}

/** 'Saturday 9 January' */
export const longDay = reader({ weekday: 'long', day: 'numeric', month: 'long' });
/** 'Sat 9 Jan' */
export const shortDay = reader({ weekday: 'short', day: 'numeric', month: 'short' });
/** '9 Jan' */
export const bareDay = reader({ day: 'numeric', month: 'short' });
/** '9 January 2027' */
export const fullDay = reader({ day: 'numeric', month: 'long', year: 'numeric' });
/** 'January 2027' */
export const monthName = reader({ month: 'long', year: 'numeric' });
/** 'January' */
export const bareMonth = reader({ month: 'long' });
/** 'Saturday' */
export const weekdayName = reader({ weekday: 'long' });

/** How far a day is from another, in words: 'today', 'tomorrow', 'in 5 days', '3 days ago'. */
export function distance(from: IsoDay, to: IsoDay): string {
  const days = dayNumber(to) - dayNumber(from);
  if (days === 0) return 'today';
  if (days === 1) return 'tomorrow';
  if (days === -1) return 'yesterday';
  return days > 0 ? `in ${days} days` : `${-days} days ago`;
}

/** The next days from `from` on (that day included) for which `fits` is true, at most `count`, looking a year ahead. */
export function nextDays(from: IsoDay, count: number, fits: (day: number) => boolean): IsoDay[] {
  const found: IsoDay[] = [];
  const first = dayNumber(from);
  for (let day = first; day < first + 366 && found.length < count; day += 1) {
    if (fits(day)) found.push(isoDay(day));
  }
  return found;
}
