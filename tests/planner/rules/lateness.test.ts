// Late beer: days × priority × 0.40 at home, 6.00 in a nano (a house choice).
import { expect, test } from 'vitest';
import { aBrew, aSeason, lay } from '../../builders/season.ts';

// 14 days in the tank and 13 of conditioning: brewed on 1 March it is ready on the 28th.
const wanted = (readyBy: string | null, priority = 1, part = {}) =>
  lay(aSeason({ brews: [aBrew({ readyBy, priority })], ...part }), {
    Millrace: { on: '2027-03-01' },
  });

test.each([
  [null, 1, 'home', 0],
  ['2027-03-29', 1, 'home', 0],
  ['2027-03-28', 1, 'home', 0],
  ['2027-03-27', 1, 'home', 40],
  ['2027-03-21', 1, 'home', 280],
  ['2027-03-21', 3, 'home', 840],
  ['2027-03-21', 1, 'nano', 4200],
] as const)('wanted %s, priority %i, in a %s: %i minor units', (readyBy, priority, kind, minor) => {
  expect(wanted(readyBy, priority, { kind }).sum('lateness')).toBe(minor);
});

test('a house sets its own weight', () => {
  expect(wanted('2027-03-21', 2, { weights: { lateness: 0.055 } }).sum('lateness')).toBe(77);
});

test('the sentence names the days and the day wanted', () => {
  const [said] = wanted('2027-03-21').found('lateness');
  expect(said?.says).toBe('Millrace is ready 7 days after 2027-03-21.');
  expect(said?.remedy).toContain('earlier');
});
