// Dark beer before light: colour that the drawn slurry brings along, by plain mixing (Quain; Boulton & Quain 2001,
// Fig. 7.9: stored slurry is 40 % wet solids, so 60 % beer). Guessed weight for a just noticeable change.
import { expect, test } from 'vitest';
import { aBrew, aJar, aSeason, lay, TWELVE_P, UNDYING } from '../../builders/season.ts';

/** 240 B wanted out of a jar of 2.1 B/mL, all alive: 114.3 mL, of which 68.6 mL are beer. */
const from = (sourceEbc: number, ebc: number, part = {}, starter: 0 | 1 | 2 = 0) =>
  lay(
    aSeason({
      rules: UNDYING,
      jars: [aJar({ sourceEbc, harvestedOn: '2027-02-25' })],
      brews: [aBrew({ og: TWELVE_P, ebc })],
      ...part,
    }),
    { Millrace: { on: '2027-03-01', from: { jar: 'J1' }, starter } },
  );

const beerL = (240 / 2.1 / 1000) * 0.6;

test.each([
  // change = (dark − pale) × 0.06857 / (20 + 0.06857); noticed at a tenth of the beer, at least 1 EBC
  [76, 7, 0.02 * ((69 * beerL) / (20 + beerL))],
  [76, 40, (0.02 * ((36 * beerL) / (20 + beerL))) / 4],
  [7, 7, 0],
  [7, 76, 0],
])('a jar from %i EBC into %i EBC: %f', (dark, pale, hazard) => {
  expect(from(dark, pale).sum('dark-to-light')).toBeCloseTo(hazard, 6);
});

test('a starter that is decanted leaves the old beer behind; one pitched whole does not', () => {
  expect(from(76, 7, {}, 2).found('dark-to-light')).toEqual([]);
  expect(from(76, 7, {}, 1).sum('dark-to-light')).toBeGreaterThan(0);
});

test('the sentence names both beers and the EBC', () => {
  // 69 × 0.06857 / 20.06857 = 0.236
  const [said] = from(76, 7).found('dark-to-light');
  expect(said?.says).toBe('J1 brings 0.24 EBC into Millrace.');
  expect(said?.remedy).toContain('paler one first');
});
