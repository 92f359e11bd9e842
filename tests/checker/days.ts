// Days as whole numbers, and which of them are days for brewing, for work or for starters.
import type { House, IsoDay } from '../../planner/index.ts';

const MS_PER_DAY = 86_400_000;
/** 1970-01-01, day 0, was a Thursday. */
const FROM_THURSDAY = ['thu', 'fri', 'sat', 'sun', 'mon', 'tue', 'wed'] as const;

/** A calendar day as the number of days since 1970-01-01. */
export function num(day: IsoDay): number {
  const [year, month, date] = day.split('-').map(Number);
  return Date.UTC(year ?? 0, (month ?? 1) - 1, date ?? 1) / MS_PER_DAY;
}

/** The calendar day of a day number. */
export const iso = (day: number): IsoDay => new Date(day * MS_PER_DAY).toISOString().slice(0, 10);

export type Calendar = {
  isBrewDay: (day: number) => boolean;
  isWorkDay: (day: number) => boolean;
  isStarterDay: (day: number) => boolean;
  isClosed: (day: number) => boolean;
  /** The first work day on or after a day; null where the house never works. */
  workDayFrom: (day: number) => number | null;
  /** The first brew day after a day that is not closed; null where there is none. */
  brewDayAfter: (day: number) => number | null;
};

/** The house's own calendar. Closed days are days for nothing at all. */
export function calendarOf(house: House): Calendar {
  const closed = new Set(house.closed.map(num));
  const on = (days: readonly string[]) => (day: number) =>
    !closed.has(day) && days.includes(FROM_THURSDAY[((day % 7) + 7) % 7] ?? '');
  const isBrewDay = on(house.brewDays);
  const isWorkDay = on(house.workDays ?? house.brewDays);
  // At home an evening is there on every day; a small commercial house keeps to its work days.
  const everyDay = house.kind === 'home' ? FROM_THURSDAY : (house.workDays ?? house.brewDays);
  const isEvening = on(house.starterDays ?? everyDay);
  const first = (is: (day: number) => boolean, from: number): number | null => {
    for (let day = from; day < from + 3660; day++) if (is(day)) return day;
    return null;
  };
  return {
    isBrewDay,
    isWorkDay,
    isStarterDay: (day) => isWorkDay(day) || isEvening(day),
    isClosed: (day) => closed.has(day),
    workDayFrom: (day) => first(isWorkDay, day),
    brewDayAfter: (day) => first(isBrewDay, day + 1),
  };
}
