// Days as ISO texts: arithmetic on them, how they are said, and on which of them a house works.
import { type House, WEEKDAYS, type Weekday } from '../model/index.ts';

const DAY_MS = 86_400_000;
const SHORT = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'] as const;
const MONTHS = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
] as const;

const toMs = (day: string) => Date.parse(`${day}T00:00:00Z`);

/** The day so many days later (negative: earlier). */
export function plusDays(day: string, days: number): string {
  return new Date(toMs(day) + days * DAY_MS).toISOString().slice(0, 10);
}

/** Days from one day to another; negative where the second is earlier. */
export function daysBetween(from: string, to: string): number {
  return Math.round((toMs(to) - toMs(from)) / DAY_MS);
}

function weekdayNumber(day: string): number {
  return (new Date(toMs(day)).getUTCDay() + 6) % 7; // Monday 0
}

/** The earliest of some days; ISO texts sort as the days do. */
export function earliest(first: string, ...others: readonly string[]): string {
  return [first, ...others].sort()[0] ?? first;
}

/** The latest of some days. */
export function latest(first: string, ...others: readonly string[]): string {
  return [first, ...others].sort().pop() ?? first;
}

export function weekdayOf(day: string): Weekday {
  return WEEKDAYS[weekdayNumber(day)] ?? 'mon';
}

/** `Sat 23 January`, for sentences. */
export function sayDay(day: string): string {
  const date = new Date(toMs(day));
  return `${SHORT[weekdayNumber(day)]} ${date.getUTCDate()} ${MONTHS[date.getUTCMonth()]}`;
}

/** `23 Jan 2027`, for a label that may be read a year later. */
export function sayDayOnLabel(day: string): string {
  const date = new Date(toMs(day));
  return `${date.getUTCDate()} ${MONTHS[date.getUTCMonth()]?.slice(0, 3)} ${date.getUTCFullYear()}`;
}

/** On which days there are hands in a house. */
export type Hands = {
  /** Harvest, packaging and cleaning may be done. */
  work(day: string): boolean;
  /** A short job may be done: a work day, a brew day or a permitted evening, and not closed. */
  short(day: string): boolean;
  closed(day: string): boolean;
};

/** The working days of a house. Unless it says otherwise, evenings are free at home on every day and nowhere else. */
export function handsOf(house: House): Hands {
  const work = new Set(house.workDays ?? house.brewDays);
  const evenings = house.starterDays ?? (house.kind === 'home' ? WEEKDAYS : [...work]);
  const short = new Set<Weekday>([...work, ...house.brewDays, ...evenings]);
  const closed = new Set(house.closed);
  return {
    closed: (day) => closed.has(day),
    work: (day) => !closed.has(day) && work.has(weekdayOf(day)),
    short: (day) => !closed.has(day) && short.has(weekdayOf(day)),
  };
}

export type Placing = {
  /** A day on which the job may be done. */
  allowed: (day: string) => boolean;
  /** No earlier than this. */
  from: string;
  /** No later than this. */
  to: string;
  /** Which way to look first; default earlier. */
  first?: 'earlier' | 'later';
};

/**
 * The day nearest to the wanted one on which a job may be done, looking one way first and then the other.
 * `why` tells the brewer that it was moved; where no day will do, the wanted day stays and `why` says so.
 */
export function placeOn(wanted: string, placing: Placing): { day: string; why: string | null } {
  if (placing.allowed(wanted)) return { day: wanted, why: null };
  const back = () => seek(wanted, -1, Math.max(0, daysBetween(placing.from, wanted)), placing);
  const on = () => seek(wanted, 1, Math.max(0, daysBetween(wanted, placing.to)), placing);
  const found = placing.first === 'later' ? (on() ?? back()) : (back() ?? on());
  if (found === null) {
    return {
      day: wanted,
      why: `${sayDay(wanted)} is not a day on which work is done here, and no other day will do: find hands for it.`,
    };
  }
  const direction = found < wanted ? 'earlier' : 'later';
  return {
    day: found,
    why: `Set ${direction} than ${sayDay(wanted)}, because no such work is done here on that day.`,
  };
}

function seek(wanted: string, step: 1 | -1, most: number, placing: Placing): string | null {
  for (let away = 1; away <= most && away <= 60; away++) {
    const day = plusDays(wanted, step * away);
    if (placing.allowed(day)) return day;
  }
  return null;
}
