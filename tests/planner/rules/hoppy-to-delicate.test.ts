// Hoppy beer before delicate: bitterness that the drawn slurry brings along, by plain mixing (60 % of settled
// slurry is beer: Quain; Boulton & Quain 2001, Fig. 7.9). Guessed weight for a just noticeable change.
import { expect, test } from 'vitest';
import { aBrew, aJar, aSeason, lay, TWELVE_P, UNDYING } from '../../builders/season.ts';

const from = (sourceIbu: number, ibu: number, starter: 0 | 2 = 0) =>
  lay(
    aSeason({
      rules: UNDYING,
      jars: [aJar({ sourceIbu, harvestedOn: '2027-02-25' })],
      brews: [aBrew({ og: TWELVE_P, ibu })],
    }),
    { Millrace: { on: '2027-03-01', from: { jar: 'J1' }, starter } },
  );

// 240 B out of a jar of 2.1 B/mL: 114.3 mL, 68.6 mL of it beer
const beerL = (240 / 2.1 / 1000) * 0.6;

test.each([
  // change = (bitter − mild) × 0.06857 / 20.06857; noticed at a tenth of the beer, at least 1 IBU
  [60, 8, 0.02 * ((52 * beerL) / (20 + beerL))],
  [60, 30, (0.02 * ((30 * beerL) / (20 + beerL))) / 3],
  [20, 20, 0],
  [20, 60, 0],
])('a jar from %i IBU into %i IBU: %f', (bitter, mild, hazard) => {
  expect(from(bitter, mild).sum('hoppy-to-delicate')).toBeCloseTo(hazard, 6);
});

test('a decanted starter leaves it behind', () => {
  expect(from(60, 8, 2).found('hoppy-to-delicate')).toEqual([]);
});

test('the sentence names both beers and the IBU', () => {
  // 52 × 0.06857 / 20.06857 = 0.178
  const [said] = from(60, 8).found('hoppy-to-delicate');
  expect(said?.says).toBe('J1 brings 0.18 IBU into Millrace.');
  expect(said?.remedy).toContain('more delicate one first');
});
