// Days: numbers there and back, weekdays against known dates, words.
import fc from 'fast-check';
import { DateTime } from 'luxon';
import { describe, expect, it } from 'vitest';
import {
  addDays,
  dayNumber,
  distance,
  isoDay,
  longDay,
  nextDays,
  weekdayKey,
} from '../../../app/parts/days.ts';

const anyDay = fc.integer({ min: -30_000, max: 60_000 });

describe('days', () => {
  it('counts from 1 January 1970, as luxon does', () => {
    fc.assert(
      fc.property(anyDay, (day) => {
        const known = DateTime.fromMillis(0, { zone: 'utc' }).plus({ days: day });
        expect(isoDay(day)).toBe(known.toISODate());
        expect(dayNumber(isoDay(day))).toBe(day);
        expect(weekdayKey(day)).toBe(
          ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'][known.weekday - 1],
        );
      }),
    );
  });

  it('crosses the end of February in a leap year and in another', () => {
    expect(addDays('2028-02-28', 1)).toBe('2028-02-29');
    expect(addDays('2027-02-28', 1)).toBe('2027-03-01');
    expect(addDays('2027-01-01', -1)).toBe('2026-12-31');
  });

  it('reads like a person says it', () => {
    // 9 January 2027 is a Saturday: 1 January 2027 is a Friday by the calendar of that year.
    expect(longDay('2027-01-09')).toBe('Saturday 9 January');
  });

  it.each([
    ['2027-01-09', 'today'],
    ['2027-01-10', 'tomorrow'],
    ['2027-01-08', 'yesterday'],
    ['2027-01-16', 'in 7 days'],
    ['2026-12-31', '9 days ago'],
  ])('%s is %s', (day, words) => {
    expect(distance('2027-01-09', day)).toBe(words);
  });

  it('finds the next fitting days and stops after a year', () => {
    const saturdays = nextDays('2027-01-09', 2, (day) => weekdayKey(day) === 'sat');
    expect(saturdays).toEqual(['2027-01-09', '2027-01-16']);
    expect(nextDays('2027-01-09', 2, () => false)).toEqual([]);
  });
});
