// The laws of chance at their edges; a statistics package checks the middle (tests/outside).
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { binomialAtLeast, normalBelow, t80, wilson } from '../../../planner/science/chance.ts';

test.each([
  [0, 10, 0.3, 1],
  [-1, 10, 0.3, 1],
  [11, 10, 0.3, 0],
  [1, 10, 0, 0],
  [10, 10, 1, 1],
  // Ten of ten at one half: 1/1024. At least one of two at one half: 3/4.
  [10, 10, 0.5, 1 / 1024],
  [1, 2, 0.5, 0.75],
])('at least %s of %s at %s', (k, n, p, probability) => {
  expect(binomialAtLeast(k, n, p)).toBeCloseTo(probability, 12);
});

test('more hits are never likelier, a better chance never less likely', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 300 }),
      fc.integer({ min: 0, max: 300 }),
      fc.double({ min: 0, max: 0.99, noNaN: true }),
      (n, k, p) => {
        const now = binomialAtLeast(k, n, p);
        expect(now).toBeGreaterThanOrEqual(0);
        expect(now).toBeLessThanOrEqual(1);
        expect(binomialAtLeast(k + 1, n, p)).toBeLessThanOrEqual(now + 1e-12);
        expect(binomialAtLeast(k, n, p + 0.01)).toBeGreaterThanOrEqual(now - 1e-12);
      },
    ),
  );
});

test('the normal far out', () => {
  expect(normalBelow(-40)).toBe(0);
  expect(normalBelow(40)).toBe(1);
  expect(normalBelow(0)).toBe(0.5);
});

test('Wilson: nothing counted knows nothing; all or none keeps its edge', () => {
  expect(wilson(0, 0)).toEqual({ low: 0, high: 1 });
  expect(wilson(0, 50).low).toBe(0);
  expect(wilson(50, 50).high).toBe(1);
  expect(wilson(50, 50).low).toBeLessThan(1);
});

test('Wilson contains the share seen and narrows with the count', () => {
  fc.assert(
    fc.property(
      fc
        .integer({ min: 1, max: 500 })
        .chain((n) => fc.tuple(fc.integer({ min: 0, max: n }), fc.constant(n))),
      ([hits, n]) => {
        const once = wilson(hits, n);
        const twice = wilson(hits * 4, n * 4);
        expect(once.low).toBeLessThanOrEqual(hits / n);
        expect(once.high).toBeGreaterThanOrEqual(hits / n);
        expect(twice.high - twice.low).toBeLessThan(once.high - once.low);
      },
    ),
  );
});

test('Student’s t falls to the normal and never below', () => {
  for (let freedom = 1; freedom < 100; freedom++) {
    expect(t80(freedom + 1)).toBeLessThan(t80(freedom));
    expect(t80(freedom)).toBeGreaterThan(1.28155);
  }
});
