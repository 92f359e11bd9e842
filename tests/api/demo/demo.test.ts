// The demo house: sound, about to begin, on its own weekdays, and with nothing in it that has not happened yet.
import fc from 'fast-check';
import { DateTime } from 'luxon';
import { expect, test } from 'vitest';
import { demoHouse } from '../../../api/demo/index.ts';
import { checkHouse } from '../../../planner/index.ts';
import { daysAfter } from '../../builders/plan.ts';

const weekday = (day: string) => DateTime.fromISO(day, { zone: 'utc' }).weekday;
const daysBetween = (from: string, to: string) =>
  DateTime.fromISO(to, { zone: 'utc' }).diff(DateTime.fromISO(from, { zone: 'utc' }), 'days').days;

test.each([
  // 9 January 2027 is a Saturday, the first brew day of the season as it was written.
  ['2027-01-02', '2027-01-09'],
  ['2027-01-03', '2027-01-16'],
  ['2026-12-27', '2027-01-09'],
  ['2026-12-26', '2027-01-02'],
  ['2024-02-29', '2024-03-09'],
])('opened on %s it begins on %s', (today, from) => {
  expect(demoHouse(today).from).toBe(from);
});

test('on any day of thirty years', () => {
  const home = demoHouse('2027-01-02');
  fc.assert(
    fc.property(fc.integer({ min: -4000, max: 7000 }), (offset) => {
      const today = daysAfter('2027-01-02', offset);
      const house = demoHouse(today);
      // the first Saturday at least a week away
      expect(weekday(house.from)).toBe(6);
      expect(daysBetween(today, house.from)).toBeGreaterThanOrEqual(7);
      expect(daysBetween(today, house.from)).toBeLessThan(14);
      // all days moved together
      const weeks = daysBetween(home.from, house.from);
      expect(house.to).toBe(daysAfter(home.to, weeks));
      expect(house.closed).toEqual(home.closed.map((day) => daysAfter(day, weeks)));
      expect(house.brews.map(({ readyBy }) => readyBy)).toEqual(
        home.brews.map(({ readyBy }) => readyBy && daysAfter(readyBy, weeks)),
      );
      for (const jar of house.jars) {
        expect(jar.harvestedOn < today).toBe(true);
        expect((jar.measuredOn ?? '') < today).toBe(true);
      }
      for (const yeast of house.yeasts) expect((yeast.packsMadeOn ?? '') < today).toBe(true);
    }),
  );
});

test('nothing is wrong with it', () => {
  expect(checkHouse(demoHouse('2026-12-01')).filter(({ level }) => level === 'error')).toEqual([]);
  expect(demoHouse('2026-12-01').brews).toHaveLength(24);
});
