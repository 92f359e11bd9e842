// A beer carried over the picture: where it comes down under the pointer, and where the arrows take it.
import { describe, expect, it } from 'vitest';
import { layOut } from '../../../app/pages/season/geometry.ts';
import {
  movable,
  placeAfterKey,
  placeUnder,
  reachOf,
  samePlace,
} from '../../../app/pages/season/moving.ts';
import { sizesFor } from '../../../app/pages/season/picture.tsx';
import { weave } from '../../../app/pages/season/weave.ts';
import { dayNumber, isoDay } from '../../../app/parts/days.ts';
import { aHouse, aPlan, aPlannedBrew } from '../../builders/plan.ts';

const house = aHouse({ brewDays: ['sat', 'sun'], closed: ['2027-01-23'] });
const woven = weave(aPlan(), house);
/** The last Sunday of the season. */
const LAST = '2027-06-27';
const reach = reachOf(house, dayNumber('2027-01-04'));
const pictureAt = (pxPerDay: number) => layOut(woven, sizesFor(woven.tanks.length, pxPerDay));
const saturday = { day: dayNumber('2027-01-16'), tank: 'Keg A' };
const said = ({ day, tank }: { day: number; tank: string }) => `${isoDay(day)} ${tank}`;

describe('under the pointer', () => {
  const rowOf = (tank: string, pxPerDay: number) => {
    const row = pictureAt(pxPerDay).rows.find((one) => one.tank === tank);
    if (!row) throw new Error(`no row ${tank}`);
    return (row.top + row.bottom) / 2;
  };
  const dropped = (pxPerDay: number, dx: number, tank: string) =>
    said(placeUnder(pictureAt(pxPerDay), saturday, { dx, y: rowOf(tank, pxPerDay) }, reach));

  it.each([6, 40])('comes down on the nearest brew day at %i px a day', (px) => {
    expect(dropped(px, px, 'Keg A')).toBe('2027-01-17 Keg A');
    // two days on is a Monday; the nearest brew day is the Sunday before it
    expect(dropped(px, 2 * px, 'Keg A')).toBe('2027-01-17 Keg A');
    // a week on is closed: the Sunday after it
    expect(dropped(px, 7 * px, 'Keg A')).toBe('2027-01-24 Keg A');
  });

  it('takes the tank whose row is nearest, and leaves the day alone where only that changes', () => {
    for (const tank of woven.tanks) expect(dropped(6, 0, tank)).toBe(`2027-01-16 ${tank}`);
  });

  it('never leaves the season, nor goes before today', () => {
    expect(dropped(40, -100_000, 'Keg A')).toBe('2027-01-09 Keg A');
    expect(dropped(40, 100_000, 'Keg A')).toBe(`${LAST} Keg A`);
  });
});

describe('by the keys', () => {
  const picture = pictureAt(10);
  const keyed = (key: string) => {
    const place = placeAfterKey(saturday, key, picture, reach);
    return place && said(place);
  };

  it('steps from brew day to brew day over closed ones', () => {
    expect(keyed('ArrowRight')).toBe('2027-01-17 Keg A');
    expect(keyed('ArrowLeft')).toBe('2027-01-10 Keg A');
    const sunday = { ...saturday, day: dayNumber('2027-01-17') };
    const on = placeAfterKey(sunday, 'ArrowRight', picture, reach);
    expect(on && said(on)).toBe('2027-01-24 Keg A');
  });

  it('steps from tank to tank and stays at the ends', () => {
    expect(keyed('ArrowUp')).toBe('2027-01-16 Keg A');
    expect(keyed('ArrowDown')).toBe(`2027-01-16 ${woven.tanks[1]}`);
    expect(keyed('Tab')).toBeNull();
  });
});

it('leaves what has been brewed where it is', () => {
  const bars = weave(aPlan({ brews: [aPlannedBrew({ done: true })] }), house).bars;
  expect(movable(bars[0])).toBe(false);
  expect(movable(woven.bars[0])).toBe(true);
  expect(samePlace(saturday, { ...saturday })).toBe(true);
});
