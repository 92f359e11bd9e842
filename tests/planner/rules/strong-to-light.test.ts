// Strong beer before light: a hazard for each °P. Direction: low to high gravity (common practice); SG and °P
// side by side from the sucrose tables (1.04837 is 12 °P, 1.06111 is 15 °P). Guessed weight.
import { expect, test } from 'vitest';
import { aBrew, aJar, aSeason, lay, TWELVE_P } from '../../builders/season.ts';

const FIFTEEN_P = 1.06111;

const from = (sourceOg: number, og: number, kind: 'home' | 'nano' = 'home') =>
  lay(
    aSeason({
      kind,
      jars: [aJar({ sourceOg, harvestedOn: '2027-02-25' })],
      brews: [aBrew({ og })],
    }),
    { Millrace: { on: '2027-03-01', from: { jar: 'J1' } } },
  );

test.each([
  // 0.006 a °P at home, 0.008 in a nano
  [TWELVE_P, FIFTEEN_P, 'home', 0],
  [TWELVE_P, TWELVE_P, 'home', 0],
  // 1.050 is 12.39 °P
  [1.05, TWELVE_P, 'home', 0.00233],
  [FIFTEEN_P, TWELVE_P, 'home', 0.018],
  [FIFTEEN_P, TWELVE_P, 'nano', 0.024],
] as const)('from %f into %f in a %s: %f', (sourceOg, og, kind, hazard) => {
  expect(from(sourceOg, og, kind).sum('strong-to-light')).toBeCloseTo(hazard, 4);
});

test('beers of the season are compared as jars are', () => {
  const house = aSeason({
    brews: [aBrew({ brew: 'Strong', og: FIFTEEN_P }), aBrew({ og: TWELVE_P })],
  });
  const season = lay(house, {
    Strong: { on: '2027-03-01' },
    Millrace: { on: '2027-03-20', tank: 'Keg B', from: { harvest: 'Strong' } },
  });
  expect(season.sum('strong-to-light')).toBeCloseTo(0.018, 4);
});

test('the sentence names both beers and the °P between them', () => {
  const [said] = from(FIFTEEN_P, TWELVE_P).found('strong-to-light');
  expect(said?.says).toBe('J1 was 3.0 °P stronger than Millrace.');
  expect(said?.remedy).toContain('lighter one first');
});
