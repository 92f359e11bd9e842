// The triangle test at its edges, and what must always hold.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  discriminatorShare,
  dPrimeOf,
  GUESS,
  rightShare,
  rightShareAt,
  tastersNeeded,
  triangleNeeded,
  trianglePower,
  trianglePValue,
} from '../../../planner/science/triangle.ts';

describe('how many must be right', () => {
  test('too few tasters can prove nothing', () => {
    // Three of three by guessing: 1/27 = 3.7 %. Two of two: 1/9.
    expect(triangleNeeded(2, 0.05)).toBeNull();
    expect(triangleNeeded(3, 0.05)).toBe(3);
    expect(triangleNeeded(3, 0.03)).toBeNull();
    expect(trianglePower(2, 0.05, 1)).toBe(0);
  });

  test('it is the edge: one fewer would not do', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 5, max: 200 }),
        fc.constantFrom(0.1, 0.05, 0.01, 0.001),
        (n, level) => {
          const needed = triangleNeeded(n, level);
          if (needed === null) return;
          expect(trianglePValue(needed, n)).toBeLessThanOrEqual(level);
          expect(trianglePValue(needed - 1, n)).toBeGreaterThan(level);
        },
      ),
    );
  });
});

describe('how many tasters', () => {
  test('the first panel that reaches the power, and none below it does', () => {
    const n = tastersNeeded(0.4, 0.05, 0.8) ?? 0;
    expect(trianglePower(n, 0.05, 0.4)).toBeGreaterThanOrEqual(0.8);
    for (let fewer = 3; fewer < n; fewer++)
      expect(trianglePower(fewer, 0.05, 0.4)).toBeLessThan(0.8);
  });

  test('finer differences want more tasters; the finest more than any panel', () => {
    const panel = [0.6, 0.5, 0.4, 0.3].map((share) => tastersNeeded(share, 0.05, 0.8) ?? 0);
    expect([...panel].sort((a, b) => a - b)).toEqual(panel);
    expect(tastersNeeded(0.01, 0.05, 0.9)).toBeNull();
  });
});

describe('how different', () => {
  test('guessing is no difference', () => {
    expect(rightShare(0)).toBe(GUESS);
    expect(rightShare(1)).toBe(1);
    expect(discriminatorShare(5, 21).likely).toBe(0);
    expect(discriminatorShare(0, 0)).toEqual({ low: 0, likely: 0, high: 1 });
    expect(dPrimeOf(0.2)).toBe(0);
    expect(dPrimeOf(1)).toBe(10);
  });

  test('d′ there and back', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.05, max: 6, noNaN: true }), (d) => {
        expect(dPrimeOf(rightShareAt(d))).toBeCloseTo(d, 5);
      }),
      { numRuns: 20 },
    );
  });
});
