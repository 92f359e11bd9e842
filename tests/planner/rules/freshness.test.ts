// Freshness lost: days of standing beyond 21 × 0.15 at home, 3.00 in a nano, for styles that fade (common practice).
import { expect, test } from 'vitest';
import { aBrew, aSeason, lay } from '../../builders/season.ts';

// Ready on 28 March; the 21 days end on 18 April.
const wanted = (readyBy: string | null, brew = {}, part = {}) =>
  lay(aSeason({ brews: [aBrew({ style: 'IPA', readyBy, ...brew })], ...part }), {
    Millrace: { on: '2027-03-01' },
  });

test.each([
  [null, 'home', 0],
  ['2027-03-20', 'home', 0],
  ['2027-04-18', 'home', 0],
  ['2027-04-19', 'home', 15],
  ['2027-04-28', 'home', 150],
  ['2027-04-28', 'nano', 3000],
] as const)('wanted %s in a %s: %i minor units', (readyBy, kind, minor) => {
  expect(wanted(readyBy, {}, { kind }).sum('freshness')).toBe(minor);
});

test.each([
  ['Hazy pale ale', null, true],
  ['Weissbier', null, true],
  ['Session bitter', null, true],
  ['Best bitter', null, false],
  ['Weizenbock', null, false],
  ['Imperial IPA', null, false],
  ['Doppelbock', null, false],
  ['Best bitter', true, true],
  ['IPA', false, false],
])('the style %j, marked %s, fades: %s', (style, fades, does) => {
  expect(wanted('2027-04-28', { style, fades }).sum('freshness') > 0).toBe(does);
});

test('the sentence names the days', () => {
  const [said] = wanted('2027-04-28').found('freshness');
  expect(said?.says).toBe('Millrace stands ready 10 days longer than it stays fresh.');
  expect(said?.remedy).toBe('Brew Millrace later.');
});
