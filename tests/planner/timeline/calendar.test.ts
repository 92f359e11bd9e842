// Days as whole numbers: known dates, summer time, leap days, and what each day of a house is for.
import fc from 'fast-check';
import { afterEach, expect, test } from 'vitest';
import { dayNumber, houseDays, isoDay, weekdayIndex } from '../../../planner/timeline/calendar.ts';
import { aSeason } from '../../builders/season.ts';

test.each([
  // seconds since 1970 (POSIX) ÷ 86,400: 946,684,800 on 1 January 2000, 2³¹ on 19 January 2038
  ['1970-01-01', 0, 3],
  ['1969-12-31', -1, 2],
  ['2000-01-01', 10_957, 5],
  ['2024-02-29', 19_782, 3],
  ['2038-01-19', 24_855, 1],
])('%s is day %i, weekday %i from Monday', (iso, day, weekday) => {
  expect(dayNumber(iso)).toBe(day);
  expect(isoDay(day)).toBe(iso);
  expect(weekdayIndex(day)).toBe(weekday);
});

test.each([
  ['2028-02-28', '2028-02-29', '2028-03-01', 'a leap year'],
  ['2027-02-27', '2027-02-28', '2027-03-01', 'a common year'],
  ['2100-02-27', '2100-02-28', '2100-03-01', 'no leap year: divisible by 100 and not by 400'],
  ['2027-12-30', '2027-12-31', '2028-01-01', 'the turn of the year'],
])('%s, %s and %s follow each other (%s)', (a, b, c) => {
  expect([isoDay(dayNumber(a) + 1), isoDay(dayNumber(a) + 2)]).toEqual([b, c]);
});

const machineZone = process.env.TZ;
afterEach(() => {
  if (machineZone === undefined) delete process.env.TZ;
  else process.env.TZ = machineZone;
});

test.each(['Europe/Dublin', 'America/New_York', 'Pacific/Apia', 'Asia/Kathmandu'])(
  'a day has 24 hours for the planner, also where %s changes its clocks',
  (zone) => {
    process.env.TZ = zone;
    // clocks change on 14 and 28 March and on 31 October and 7 November 2027; Samoa skipped 30 December 2011
    for (const day of ['2027-03-14', '2027-03-28', '2027-10-31', '2027-11-07', '2011-12-30']) {
      const n = dayNumber(day);
      expect([isoDay(n - 1), isoDay(n), isoDay(n + 1)].map(dayNumber)).toEqual([n - 1, n, n + 1]);
      expect(isoDay(n)).toBe(day);
    }
  },
);

test('text and number give each other back, and weekdays run round', () => {
  fc.assert(
    fc.property(fc.integer({ min: -30_000, max: 60_000 }), (day) => {
      expect(dayNumber(isoDay(day))).toBe(day);
      expect(weekdayIndex(day + 7)).toBe(weekdayIndex(day));
      expect(weekdayIndex(day + 1)).toBe((weekdayIndex(day) + 1) % 7);
    }),
  );
});

test.each(['2027-02-29', '2027-13-01', 'tomorrow', ''])('%j is no day', (text) => {
  expect(() => dayNumber(text)).toThrow(RangeError);
});

// Monday 1 to Sunday 14 March 2027
const first = dayNumber('2027-03-01');
const marked = (marks: Uint8Array) =>
  [...marks].flatMap((mark, i) => (mark ? [isoDay(first + i).slice(8)] : []));

const house = aSeason({
  brewDays: ['sat'],
  workDays: ['wed', 'sat'],
  starterDays: ['fri'],
  closed: ['2027-03-06'],
});

test('brew, work and starter days leave closed days out; work days are starter days too', () => {
  const days = houseDays(house, first, first + 13);
  expect(marked(days.brew)).toEqual(['13']);
  expect(marked(days.work)).toEqual(['03', '10', '13']);
  expect(marked(days.starter)).toEqual(['03', '05', '10', '12', '13']);
  expect(marked(days.closed)).toEqual(['06']);
});

test('the next and the last day of a kind, for each day', () => {
  const days = houseDays(house, first, first + 13);
  const at = (list: Int32Array, day: string) => isoDay(list[dayNumber(day) - first] ?? 0);
  expect(at(days.nextWork, '2027-03-03')).toBe('2027-03-03');
  expect(at(days.nextWork, '2027-03-04')).toBe('2027-03-10');
  expect(at(days.nextWork, '2027-03-14')).toBe('2027-03-14'); // beyond: the last day of the stretch
  expect(at(days.lastWork, '2027-03-09')).toBe('2027-03-03');
  expect(at(days.lastStarter, '2027-03-09')).toBe('2027-03-05');
  expect(at(days.nextOpen, '2027-03-06')).toBe('2027-03-07');
  expect(at(days.lastOpen, '2027-03-06')).toBe('2027-03-05');
  expect(at(days.brewDayAfter, '2027-03-01')).toBe('2027-03-13');
  expect(at(days.brewDayAfter, '2027-03-13')).toBe('2027-03-15'); // none: one past the stretch
});

test('without work days the brew days are worked; without starter days every evening at home', () => {
  const plain = { brewDays: ['sat' as const], workDays: null, starterDays: null };
  const home = houseDays(aSeason(plain), first, first + 6);
  expect(marked(home.work)).toEqual(['06']);
  expect(marked(home.starter)).toHaveLength(7);
  const nano = houseDays(aSeason({ ...plain, kind: 'nano' }), first, first + 6);
  expect(marked(nano.starter)).toEqual(['06']);
});
