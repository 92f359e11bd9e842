// Days as texts: arithmetic over months, years and leap days, how they are said, and where a job may fall.
import fc from 'fast-check';
import { DateTime } from 'luxon';
import { describe, expect, it } from 'vitest';
import {
  daysBetween,
  earliest,
  handsOf,
  latest,
  placeOn,
  plusDays,
  sayDay,
  sayDayOnLabel,
  weekdayOf,
} from '../../../planner/tasks/days.ts';
import { aHouse } from '../../builders/plan.ts';

describe('arithmetic', () => {
  it.each([
    ['2027-01-31', 1, '2027-02-01'],
    ['2027-12-31', 1, '2028-01-01'],
    ['2028-02-28', 1, '2028-02-29'], // leap year: 2028 divides by 4
    ['2027-02-28', 1, '2027-03-01'],
    ['2027-03-28', 1, '2027-03-29'], // clocks change in Europe on this day; a day stays a day
    ['2027-01-01', -1, '2026-12-31'],
  ])('%s plus %i days is %s', (day, days, expected) => {
    expect(plusDays(day, days)).toBe(expected);
    expect(daysBetween(day, expected)).toBe(days);
  });

  // Luxon is the outside check: it counts days of the calendar by its own way.
  it('agrees with luxon over a century', () => {
    fc.assert(
      fc.property(fc.integer({ min: -18000, max: 18000 }), (days) => {
        const at = DateTime.fromISO('2027-01-01', { zone: 'utc' }).plus({ days });
        const day = plusDays('2027-01-01', days);
        expect(day).toBe(at.toFormat('yyyy-MM-dd'));
        expect(weekdayOf(day)).toBe(at.setLocale('en').toFormat('ccc').toLowerCase());
      }),
    );
  });

  it('picks the earliest and the latest', () => {
    expect(earliest('2027-02-01', '2027-01-31', '2027-03-01')).toBe('2027-01-31');
    expect(latest('2027-02-01', '2026-12-31', '2027-01-31')).toBe('2027-02-01');
  });
});

describe('how a day is said', () => {
  it('names the weekday in sentences and the year on labels', () => {
    // 23 January 2027 is a Saturday: 1 January 2027 is a Friday (calendar)
    expect(sayDay('2027-01-23')).toBe('Sat 23 January');
    expect(sayDayOnLabel('2027-01-23')).toBe('23 Jan 2027');
  });
});

describe('hands of a house', () => {
  it.each([
    // day, work days wed sat sun; evenings: every day at home, work days in a nano
    ['2027-01-20', 'home', true, true], // Wednesday
    ['2027-01-21', 'home', false, true], // Thursday evening at home
    ['2027-01-21', 'nano', false, false],
    ['2027-01-23', 'nano', true, true], // Saturday
  ] as const)('%s in a %s: work %s, a short job %s', (day, kind, work, short) => {
    const hands = handsOf(aHouse({ kind }));
    expect(hands.work(day)).toBe(work);
    expect(hands.short(day)).toBe(short);
  });

  it('has none on a closed day', () => {
    const hands = handsOf(aHouse({ closed: ['2027-01-23'] }));
    expect(hands.work('2027-01-23')).toBe(false);
    expect(hands.short('2027-01-23')).toBe(false);
  });

  it('keeps to the evenings that the house names', () => {
    const hands = handsOf(aHouse({ starterDays: ['thu'] }));
    expect(hands.short('2027-01-21')).toBe(true); // Thursday
    expect(hands.short('2027-01-22')).toBe(false); // Friday
    expect(hands.short('2027-01-23')).toBe(true); // Saturday, a work day
  });
});

describe('placing a job', () => {
  const saturdays = (day: string) => weekdayOf(day) === 'sat';
  it.each([
    // wanted Tuesday 19 January; Saturdays are 16 and 23 January
    ['earlier', '2027-01-01', '2027-01-31', '2027-01-16'],
    ['later', '2027-01-01', '2027-01-31', '2027-01-23'],
    ['earlier', '2027-01-17', '2027-01-31', '2027-01-23'], // nothing allowed before
    ['later', '2027-01-01', '2027-01-22', '2027-01-16'], // nothing allowed after
  ] as const)('looks %s first, between %s and %s', (first, from, to, expected) => {
    const placed = placeOn('2027-01-19', { allowed: saturdays, from, to, first });
    expect(placed.day).toBe(expected);
    expect(placed.why).toContain('Tue 19 January');
  });

  it('stays and says so where no day will do', () => {
    const placed = placeOn('2027-01-19', {
      allowed: saturdays,
      from: '2027-01-18',
      to: '2027-01-20',
    });
    expect(placed.day).toBe('2027-01-19');
    expect(placed.why).toContain('find hands');
  });

  it('says nothing where nothing is moved', () => {
    expect(
      placeOn('2027-01-23', { allowed: saturdays, from: '2027-01-01', to: '2027-01-31' }),
    ).toEqual({ day: '2027-01-23', why: null });
  });
});
