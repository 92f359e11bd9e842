// Later generation: a hazard for each one. Guessed weight; direction: Quain, a policy of at most 10 generations.
import { expect, test } from 'vitest';
import { aJar, aSeason, lay } from '../../builders/season.ts';

const jarOf = (generation: number, part = {}) =>
  lay(aSeason({ jars: [aJar({ generation, harvestedOn: '2027-02-25' })], ...part }), {
    Millrace: { on: '2027-03-01', from: { jar: 'J1' } },
  });

test.each([
  // 0.006 a generation at home, 0.004 in a nano
  [1, 'home', 0.006],
  [4, 'home', 0.024],
  [1, 'nano', 0.004],
  [10, 'nano', 0.04],
] as const)('generation %i in a %s: %f', (generation, kind, hazard) => {
  expect(jarOf(generation, { kind }).sum('later-generation')).toBeCloseTo(hazard, 12);
});

test('fresh packs are generation 0 and no hazard; a house sets its own weight', () => {
  expect(lay(aSeason(), { Millrace: { on: '2027-03-01' } }).found('later-generation')).toEqual([]);
  const own = { weights: { 'later-generation': 0.1 } };
  expect(jarOf(3, own).sum('later-generation')).toBeCloseTo(0.3, 12);
});

test('the sentence names the generation', () => {
  const [said] = jarOf(4).found('later-generation');
  expect(said?.subject).toBe('Millrace');
  expect(said?.says).toBe('Millrace gets generation 4.');
  expect(said?.remedy).toContain('fresh packs');
});
