// Starters: what they give, what they must be begun with, and that the two undo each other.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  extractG,
  starterAlive,
  starterGivesB,
  starterGrowDays,
  starterSeedB,
} from '../../../planner/science/starter.ts';
import { HOME, home } from './houses.ts';

const cells = fc.double({ min: 0, max: 5000, noNaN: true });
const litres = fc.double({ min: 0.05, max: 20, noNaN: true });

describe('stirred, 1 L with 100 g', () => {
  test.each([
    // Below 20 billion one step may only multiply by 8.
    [10, 80],
    [20, 160],
    // 1.4 billion new cells a gram: +140 while the start is at most 1.4 a gram.
    [60, 200],
    [140, 280],
    // Halfway between 1.4 and 3.5 a gram: half of 140.
    [245, 315],
    [350, 350],
    [500, 500],
    [0, 0],
  ])('%s billion give %s', (seed, gives) => {
    expect(starterGivesB(seed, 1, true, HOME)).toBeCloseTo(gives, 9);
  });
});

test('no litres, no growth', () => {
  expect(starterGivesB(100, 0, true, HOME)).toBe(100);
  expect(starterSeedB(100, 0, true, HOME)).toBe(Infinity);
  expect(extractG(-1, HOME)).toBe(0);
});

test('wanting more than the litres can grow is refused with infinity', () => {
  // 1 L stirred grows nothing from 350 billion on; still, growth ends near 2.96 a gram.
  expect(starterSeedB(349, 1, true, HOME)).toBeLessThan(349);
  expect(starterSeedB(350, 1, true, HOME)).toBe(Infinity);
  expect(starterSeedB(295, 1, false, HOME)).toBeLessThan(295);
  expect(starterSeedB(300, 1, false, HOME)).toBe(Infinity);
});

test('nothing wanted needs nothing', () => {
  expect(starterSeedB(0, 2, true, HOME)).toBe(0);
  expect(starterSeedB(-1, 2, false, HOME)).toBe(0);
});

test('the seed gives what is wanted, and a little less does not', () => {
  fc.assert(
    fc.property(cells, litres, fc.boolean(), (want, volumeL, stirred) => {
      const seed = starterSeedB(want, volumeL, stirred, HOME);
      if (!Number.isFinite(seed) || want < 1) return;
      expect(seed).toBeGreaterThanOrEqual(want * HOME.starterMinSeedShare - 1e-9);
      expect(starterGivesB(seed, volumeL, stirred, HOME)).toBeGreaterThanOrEqual(want * (1 - 1e-9));
      expect(starterGivesB(seed * 0.999, volumeL, stirred, HOME)).toBeLessThan(want);
    }),
  );
});

test('more seed gives more, more wort never less, stirring never less, and nothing is lost', () => {
  fc.assert(
    fc.property(cells, cells, litres, (a, b, volumeL) => {
      const [less, more] = a < b ? [a, b] : [b, a];
      for (const stirred of [true, false]) {
        const gives = starterGivesB(less, volumeL, stirred, HOME);
        expect(starterGivesB(more, volumeL, stirred, HOME)).toBeGreaterThanOrEqual(gives - 1e-9);
        expect(starterGivesB(less, volumeL * 1.5, stirred, HOME)).toBeGreaterThanOrEqual(
          gives - 1e-9,
        );
        expect(gives).toBeGreaterThanOrEqual(less);
        expect(starterGivesB(less, volumeL, true, HOME)).toBeGreaterThanOrEqual(gives - 1e-9);
      }
    }),
  );
});

test('the house sets wort and yield', () => {
  const weak = home({ starterGramsPerL: 50, starterStirredBPerG: 1 });
  expect(starterGivesB(20, 1, true, weak)).toBeCloseTo(70, 9);
  expect(starterSeedB(70, 1, true, weak)).toBeCloseTo(20, 9);
});

test.each([
  [1.4, 1],
  [1.5, 1],
  [1.6, 2],
  [3, 2],
])('%s L where 3 L is the largest grow %s days', (volumeL, days) => {
  expect(starterGrowDays(volumeL, 3)).toBe(days);
});

test('what was dead in the seed is dead in the starter, all else is new', () => {
  // 50 living of 100 cells grow to 200: 50 dead among 250
  expect(starterAlive(50, 0.5, 200)).toBeCloseTo(0.8, 12);
  expect(starterAlive(50, 1, 200)).toBe(1);
  expect(starterAlive(0, 0, 0)).toBe(0);
});
