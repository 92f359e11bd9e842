// The day on which a plan is made when nobody says which day it is.
import { dayNumber, isoDay } from '../timeline/calendar.ts';
import type { IsoDay } from './common.ts';
import type { House } from './house.ts';

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
