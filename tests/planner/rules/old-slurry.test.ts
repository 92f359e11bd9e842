// Time in the cold store: a hazard a week. Guessed weight; storage advice runs from days to weeks (docs/science.md).
import { expect, test } from 'vitest';
import { aJar, aSeason, lay } from '../../builders/season.ts';

const pitched = (on: string, part = {}) =>
  lay(aSeason({ jars: [aJar({ harvestedOn: '2027-02-20' })], ...part }), {
    Millrace: { on, from: { jar: 'J1' } },
  });

test.each([
  // 0.004 a week at home, 0.012 in a nano, by the day
  ['2027-02-27', 'home', 0.004],
  ['2027-03-06', 'home', 0.008],
  ['2027-02-21', 'home', 0.004 / 7],
  ['2027-03-06', 'nano', 0.024],
] as const)('a jar of 20 February on %s in a %s: %f', (on, kind, hazard) => {
  expect(pitched(on, { kind }).sum('old-slurry')).toBeCloseTo(hazard, 12);
});

test('packs are no slurry, and slurry pitched on the day of its harvest has no age', () => {
  expect(lay(aSeason(), { Millrace: { on: '2027-03-01' } }).found('old-slurry')).toEqual([]);
  expect(pitched('2027-02-20').found('old-slurry')).toEqual([]);
});

test('the sentence names the days', () => {
  const [said] = pitched('2027-03-06').found('old-slurry');
  expect(said?.says).toBe('Millrace gets slurry 14 days old.');
  expect(said?.remedy).toContain('sooner');
});
