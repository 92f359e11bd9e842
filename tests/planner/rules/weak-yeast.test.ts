// Weak yeast: a hazard for what is missing to 0.90 alive (Murphy & Son: above 90 % required). Guessed weight.
import { expect, test } from 'vitest';
import { aJar, aSeason, aYeast, lay } from '../../builders/season.ts';

const jarOf = (measuredViability: number, part = {}, starter: 0 | 2 = 0) =>
  lay(
    aSeason({
      jars: [
        aJar({
          settledMl: 2000,
          harvestedOn: '2027-02-20',
          measuredViability,
          measuredOn: '2027-03-01',
        }),
      ],
      ...part,
    }),
    { Millrace: { on: '2027-03-01', from: { jar: 'J1' }, starter } },
  );

test.each([
  // 0.2 × (0.90 − share alive) at home, 0.3 × in a nano
  [0.95, 'home', 0],
  [0.9, 'home', 0],
  [0.89, 'home', 0.002],
  [0.7, 'home', 0.04],
  [0.7, 'nano', 0.06],
] as const)('%f alive in a %s: %f', (alive, kind, hazard) => {
  expect(jarOf(alive, { kind }).sum('weak-yeast')).toBeCloseTo(hazard, 12);
});

test('a starter takes three quarters of it away', () => {
  // Drawn two days before the brew, and so before the count was made: 0.70 alive. 0.2 × 0.2 × 0.25 = 0.01
  expect(jarOf(0.7, {}, 2).sum('weak-yeast')).toBeCloseTo(0.01, 12);
});

test('packs are judged by their age', () => {
  // 100 days old: exp(−0.0018 × 100) = 0.8353; 0.2 × (0.9 − 0.8353) = 0.01295
  const yeasts = [aYeast({ packsOnHand: 2, packsMadeOn: '2026-11-21' })];
  const season = lay(aSeason({ yeasts }), { Millrace: { on: '2027-03-01' } });
  expect(season.sum('weak-yeast')).toBeCloseTo(0.2 * (0.9 - Math.exp(-0.18)), 12);
});

test('the sentence names the share alive', () => {
  expect(jarOf(0.7).found('weak-yeast')[0]?.says).toBe('Millrace gets yeast that is 70 % alive.');
  expect(jarOf(0.7).found('weak-yeast')[0]?.remedy).toContain('starter');
});
