// Starter wort: by the litre, 0.90 at home and 0.60 in a nano (100 g of dry extract; common practice, no source).
import { expect, test } from 'vitest';
import { aSeason, lay } from '../../builders/season.ts';

const season = (starter: 0 | 1 | 2 | 4, part = {}) =>
  lay(aSeason(part), { Millrace: { on: '2027-03-10', starter } });

test.each([
  // quarters of a vessel of 3 L
  [0, 'home', 0],
  [1, 'home', 68],
  [2, 'home', 135],
  [4, 'home', 270],
  [4, 'nano', 180],
] as const)('%i quarters in a %s: %i minor units', (starter, kind, minor) => {
  expect(season(starter, { kind }).sum('starter-wort')).toBe(minor);
});

test('the sentence names the litres', () => {
  const [said] = season(2).found('starter-wort');
  expect(said?.says).toBe('1.50 L of starter wort for Millrace.');
  expect(said?.remedy).toContain('no starter is needed');
});
