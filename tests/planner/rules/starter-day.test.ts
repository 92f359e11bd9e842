// A starter needs its days: begun, chilled and decanted on work days or permitted evenings, not before today.
import { expect, test } from 'vitest';
import { aSeason, lay } from '../../builders/season.ts';

// 1.5 L for Wednesday 10 March: chilled on the 9th, begun on the 8th.
const starterFor = (on: string, part = {}, today = '2027-02-01') =>
  lay(aSeason(part), { Millrace: { on, starter: 2 } }, { today });

test.each([
  ['2027-03-08', 0],
  ['2027-03-09', 1],
  ['2027-03-10', 2],
])('today %s: a starter of 8 March is begun %i days too late', (today, days) => {
  expect(starterFor('2027-03-10', {}, today).sum('starter-day')).toBe(days);
});

test('it is begun and chilled on the last permitted days before, never on another', () => {
  // permitted: Saturdays and Sundays (work) and Wednesdays. It grows one day and no longer, so for Saturday
  // the 13th it cannot be chilled on Wednesday the 10th (begun on a Tuesday): Sunday the 7th, begun on the 6th.
  const days = {
    kind: 'nano' as const,
    brewDays: ['sat' as const, 'sun' as const],
    starterDays: ['wed' as const],
  };
  const season = starterFor('2027-03-13', days);
  expect(season.found('starter-day')).toEqual([]);
  expect(season.t.starterChill[0]).toBe((season.t.day[0] ?? 0) - 6);
  expect(season.t.starterStart[0]).toBe((season.t.day[0] ?? 0) - 7);
});

test('a house that names no permitted day before the season cannot begin one', () => {
  const none = { brewDays: ['sat' as const], workDays: [], starterDays: [] };
  const season = starterFor('2027-03-13', none);
  expect(season.sum('starter-day')).toBeGreaterThan(0);
});

test.each([
  ['2027-03-10', 0, 'begun on Tuesday'],
  ['2027-03-09', 1, 'begun on Monday, which is no day for it'],
])('a starter pitched whole on %s is begun the day before: %i (%s)', (on, days) => {
  const part = { brewDays: ['tue' as const, 'wed' as const], starterDays: [] };
  const season = lay(aSeason(part), { Millrace: { on, starter: 1 } });
  expect(season.sum('starter-day')).toBe(days);
});

test('decanting falls on the brew day, which must be a day for it', () => {
  // a nano handles starters on its work days; it brews on Saturdays and works Monday to Friday
  const part = {
    kind: 'nano' as const,
    brewDays: ['sat' as const],
    workDays: ['mon' as const, 'tue' as const, 'wed' as const, 'thu' as const, 'fri' as const],
  };
  const [said] = starterFor('2027-03-13', part).found('starter-day');
  expect(said?.amount).toBe(1);
  expect(said?.says).toBe('The starter for Millrace would be handled on a day without such work.');
  // a small one is pitched whole and asks nothing of the brew day but the pitch
  const small = lay(aSeason(part), { Millrace: { on: '2027-03-13', starter: 1 } });
  expect(small.found('starter-day')).toEqual([]);
});

test('the sentence names the brew, the day and how long ago', () => {
  const [said] = starterFor('2027-03-10', {}, '2027-03-10').found('starter-day');
  expect(said?.says).toBe(
    'The starter for Millrace would have had to begin on 2027-03-08, 2 days ago.',
  );
  expect(said?.remedy).toContain('without a starter');
});
