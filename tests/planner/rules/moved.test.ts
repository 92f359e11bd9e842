// Brews moved against the plan in force: dearer the closer to today, ten times inside the freeze (common practice).
import { expect, test } from 'vitest';
import { aPlan, aPlannedBrew, aSeason, lay } from '../../builders/season.ts';

/** In force: Millrace on 10 March in Keg A. */
const inForce = aPlan({ brews: [aPlannedBrew({ day: '2027-03-10', tank: 'Keg A' })] });

const move = (on: string, tank: string, today: string, part = {}) =>
  lay(aSeason(part), { Millrace: { on, tank } }, { today, inForce });

test.each([
  // nearness 1 + 28 / (7 + days from today to the earlier of both days); today 1 February: 37 days: 1.6364
  ['2027-03-10', 'Keg A', '2027-02-01', 0, 'not moved'],
  ['2027-03-10', 'Keg B', '2027-02-01', 164, 'another tank: 0.5 × 2 × 1.6364'],
  ['2027-03-17', 'Keg A', '2027-02-01', 491, 'a week: (1 + 7/14) × 2 × 1.6364'],
  ['2027-03-24', 'Keg A', '2027-02-01', 655, 'two weeks: 2 × 2 × 1.6364'],
  ['2027-03-24', 'Keg B', '2027-02-01', 818, 'and the tank: 2.5 × 2 × 1.6364'],
  ['2027-05-05', 'Keg A', '2027-02-01', 1636, '56 days: 5 × 2 × 1.6364'],
  ['2027-06-05', 'Keg A', '2027-02-01', 1636, 'no more than 56 days count'],
  // 14 days earlier is 24 February, 23 days ahead: 1 + 28/30 = 1.9333
  ['2027-02-24', 'Keg A', '2027-02-01', 773, 'two weeks earlier: 2 × 2 × 1.9333'],
  // today 2 March, 8 days ahead: 1 + 28/15 = 2.8667; 3 March, 7 days: (1 + 28/14) × 10 = 30
  ['2027-03-10', 'Keg B', '2027-03-02', 287, 'eight days ahead: 1 × 2.8667'],
  ['2027-03-10', 'Keg B', '2027-03-03', 3000, 'inside the freeze of 7 days: 1 × 30'],
  ['2027-03-10', 'Keg B', '2027-03-10', 5000, 'today: 1 × 5 × 10'],
])('to %s in %s, today %s: %i minor units (%s)', (on, tank, today, minor) => {
  expect(move(on, tank, today).sum('moved')).toBe(minor);
});

test('a nano weighs it 25; without a plan in force nothing can move', () => {
  // 2 × 25 × 1.6364
  expect(move('2027-03-24', 'Keg A', '2027-02-01', { kind: 'nano' }).sum('moved')).toBe(8182);
  expect(lay(aSeason(), { Millrace: { on: '2027-03-24' } }).found('moved')).toEqual([]);
});

test('a brew that was not planned, or is no longer, has not moved', () => {
  const empty = aPlan({ brews: [] });
  const on = { Millrace: { on: '2027-03-24' } };
  expect(lay(aSeason(), on, { inForce: empty }).found('moved')).toEqual([]);
  expect(lay(aSeason(), {}, { inForce }).found('moved')).toEqual([]);
});

test('the sentences name both days, or the tank', () => {
  const [day] = move('2027-03-24', 'Keg A', '2027-02-01').found('moved');
  expect(day?.says).toBe('Millrace moves from 2027-03-10 to 2027-03-24.');
  expect(day?.remedy).toBe('Pin Millrace where it was.');
  const [tank] = move('2027-03-10', 'Keg B', '2027-02-01').found('moved');
  expect(tank?.says).toBe('Millrace changes to Keg B.');
});
