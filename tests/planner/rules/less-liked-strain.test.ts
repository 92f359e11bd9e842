// A less-liked strain: 1.50 a place down the list at home, 12.00 in a nano (a house choice).
import { expect, test } from 'vitest';
import { aBrew, aSeason, aYeast, lay } from '../../builders/season.ts';

const pitched = (yeast: string, part = {}) =>
  lay(
    aSeason({
      yeasts: ['Ash', 'Birch', 'Cedar'].map((name) => aYeast({ yeast: name, packsOnHand: 0 })),
      brews: [aBrew({ yeasts: ['Birch', 'Ash', 'Cedar'] })],
      ...part,
    }),
    { Millrace: { on: '2027-03-01', yeast } },
  );

test.each([
  ['Birch', 'home', 0],
  ['Ash', 'home', 150],
  ['Cedar', 'home', 300],
  ['Cedar', 'nano', 2400],
] as const)('%s in a %s: %i minor units', (yeast, kind, minor) => {
  expect(pitched(yeast, { kind }).sum('less-liked-strain')).toBe(minor);
});

test('the sentence names the strain and its place', () => {
  const [said] = pitched('Cedar').found('less-liked-strain');
  expect(said?.says).toBe('Millrace gets Cedar, choice 3 of its list.');
  expect(said?.remedy).toContain('best-liked strain');
});
