// Fixed days hold: a fixed or pinned day stays, and the pin is the stronger.
import { expect, test } from 'vitest';
import { aBrew, aSeason, lay } from '../../builders/season.ts';

const house = aSeason({ brews: [aBrew({ brewOn: '2027-03-10' })] });

test.each([
  ['2027-03-09', 1],
  ['2027-03-10', 0],
  ['2027-03-11', 1],
  ['2027-03-20', 10],
])('fixed to 10 March, laid on %s: %i off', (on, off) => {
  expect(lay(house, { Millrace: { on } }).sum('fixed-day')).toBe(off);
});

test('a pinned day overrules the fixed one; a pin of the tank alone holds no day', () => {
  const pinned = { pins: [{ brew: 'Millrace', day: '2027-03-12' }] };
  expect(lay(house, { Millrace: { on: '2027-03-12' } }, pinned).sum('fixed-day')).toBe(0);
  expect(lay(house, { Millrace: { on: '2027-03-10' } }, pinned).sum('fixed-day')).toBe(2);
  const tank = { pins: [{ brew: 'Millrace', tank: 'Keg A' }] };
  expect(lay(aSeason(), { Millrace: { on: '2027-03-03' } }, tank).sum('fixed-day')).toBe(0);
});

test('the sentence names the fixed day, the day it stands on and the difference', () => {
  const [said] = lay(house, { Millrace: { on: '2027-03-13' } }).found('fixed-day');
  expect(said?.says).toBe('Millrace is fixed to 2027-03-10 but stands on 2027-03-13, 3 days off.');
  expect(said?.remedy).toContain('pin');
});
