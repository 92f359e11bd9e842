// The day on which a plan is made when nobody says which day it is.
import { sayDayOnLabel } from '../tasks/days.ts';
import { dayNumber, isoDay } from '../timeline/calendar.ts';
import type { IsoDay } from './common.ts';
import type { House } from './house.ts';
import type { Problem } from './problem-report.ts';

/**
 * The planning day for a house that gives none: early enough that packs for the first brew day can
 * still be ordered, not before what the house records has happened, and never after `from`.
 */
export function defaultToday(house: House): IsoDay {
  const days = [
    dayNumber(house.from) - house.orderLeadDays,
    ...house.jars.flatMap((jar) => [jar.harvestedOn, jar.measuredOn]).map(orNever),
    ...house.yeasts.map((yeast) => orNever(yeast.packsMadeOn)),
  ];
  return isoDay(Math.min(dayNumber(house.from), Math.max(...days)));
}

const orNever = (day: IsoDay | null): number =>
  day === null ? Number.NEGATIVE_INFINITY : dayNumber(day);

/** Why no plan can be made on a day: the season's last brew day is past. null: there is something to plan. */
export function seasonOver(house: House, today: IsoDay): Problem | null {
  if (today <= house.to) return null;
  return {
    code: 'season-over',
    path: 'to',
    value: house.to,
    bound: `on or after ${today}`,
    message: `The season ended on ${sayDayOnLabel(house.to)}, and today is ${sayDayOnLabel(today)}: there is no day left to brew on.`,
    remedy: 'Let the season end later, begin a new one, or name a day of the season as today.',
    level: 'error',
  };
}
