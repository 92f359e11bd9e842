// Where a beer that is being moved would stand: by the pointer, by the keys, and only where it could be held at all.
import type { House } from '../../../planner/index.ts';
import { dayNumber, isoDay, weekdayKey } from '../../parts/days.ts';
import type { Picture } from './geometry.ts';
import type { Bar } from './weave.ts';

export type Place = { day: number; tank: string };
export type Moving = { brew: string; from: Place; to: Place; by: 'pointer' | 'keys' };

/** What a brew can be held to: brew days of the season from today on. */
export type Reach = { first: number; last: number; brewDay: (day: number) => boolean };

export function reachOf(house: House, today: number): Reach {
  const closed = new Set(house.closed);
  return {
    first: Math.max(today, dayNumber(house.from)),
    last: dayNumber(house.to),
    brewDay: (day) => house.brewDays.includes(weekdayKey(day)) && !closed.has(isoDay(day)),
  };
}

const within = (day: number, reach: Reach) => Math.min(reach.last, Math.max(reach.first, day));

/** The brew day nearest to a day, earlier on a tie; the day itself where there is none within two weeks. */
function nearestBrewDay(day: number, reach: Reach): number {
  for (let off = 0; off <= 14; off += 1) {
    for (const near of [day - off, day + off]) {
      if (near >= reach.first && near <= reach.last && reach.brewDay(near)) return near;
    }
  }
  return day;
}

/** Where a beer comes down that was taken at `from` and dragged `dx` px to the side, with the pointer at `y`: on the nearest brew day. */
export function placeUnder(
  picture: Picture,
  from: Place,
  drag: { dx: number; y: number },
  reach: Reach,
): Place {
  const day = within(from.day + Math.round(drag.dx / picture.pxPerDay), reach);
  const row = picture.rows.toSorted(
    (a, b) => Math.abs(middle(a) - drag.y) - Math.abs(middle(b) - drag.y),
  )[0];
  return { day: day === from.day ? day : nearestBrewDay(day, reach), tank: row?.tank ?? from.tank };
}

const middle = (row: { top: number; bottom: number }) => (row.top + row.bottom) / 2;

/** Where an arrow leads: to the next brew day either way, to the tank above or below. */
export function placeAfterKey(
  to: Place,
  key: string,
  picture: Picture,
  reach: Reach,
): Place | null {
  if (key === 'ArrowUp' || key === 'ArrowDown') {
    const at = picture.rows.findIndex((row) => row.tank === to.tank);
    const row = picture.rows[at + (key === 'ArrowUp' ? -1 : 1)];
    return row ? { ...to, tank: row.tank } : to;
  }
  if (key !== 'ArrowLeft' && key !== 'ArrowRight') return null;
  const way = key === 'ArrowLeft' ? -1 : 1;
  let day = to.day + way;
  while (day >= reach.first && day <= reach.last && !reach.brewDay(day)) day += way;
  return day < reach.first || day > reach.last ? to : { ...to, day };
}

/** Whether a beer can be moved at all: what has been brewed stays. */
export const movable = (bar: Bar | undefined): bar is Bar => bar !== undefined && !bar.planned.done;

export const samePlace = (a: Place, b: Place): boolean => a.day === b.day && a.tank === b.tank;
