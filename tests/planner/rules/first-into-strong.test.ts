// First pitch into strong wort, above 18 °P. First fermentation 1–3 days slower, best in a 10–12 °P beer: White
// Labs guidelines; 1.07413 is 18.0 °P in the sucrose tables. Guessed weight.
import { expect, test } from 'vitest';
import { aBrew, aJar, aSeason, lay } from '../../builders/season.ts';

const pitched = (og: number, part = {}, jar = false) =>
  lay(aSeason({ jars: [aJar({ harvestedOn: '2027-02-25' })], brews: [aBrew({ og })], ...part }), {
    Millrace: { on: '2027-03-01', from: jar ? { jar: 'J1' } : 'packs' },
  });

test.each([
  [1.05, 'home', 0],
  [1.0741, 'home', 0],
  [1.0743, 'home', 0.02],
  [1.11, 'home', 0.02],
  [1.11, 'nano', 0.025],
] as const)('packs into %f in a %s: %f', (og, kind, hazard) => {
  expect(pitched(og, { kind }).sum('first-into-strong')).toBe(hazard);
});

test('slurry has its first beer behind it', () => {
  expect(pitched(1.11, {}, true).found('first-into-strong')).toEqual([]);
});

test('the sentence names the beer and its °P', () => {
  // 1.0831 is 20.0 °P
  const [said] = pitched(1.0831).found('first-into-strong');
  expect(said?.says).toBe('Millrace (20.0 °P) is the first beer of its packs.');
  expect(said?.remedy).toContain('lighter beer first');
});
