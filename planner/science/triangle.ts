// Is it still the same beer? The triangle test: three glasses, two alike, pick the odd one.
//
// Exact binomial at one in three (FAO Manual, Appendix A; ISO 4120:2021). The measure d' by Frijters,
// Kooistra & Vereijken, Perception & Psychophysics 27, 1980.
import type { Range } from '../model/common.ts';
import { binomialAtLeast, normalBelow, wilson } from './chance.ts';

/** Chance of picking the odd glass by guessing. */
export const GUESS = 1 / 3;

/** Probability that at least `right` of `tasters` pick the odd glass by guessing alone. */
export function trianglePValue(right: number, tasters: number): number {
  return binomialAtLeast(right, tasters, GUESS);
}

/** Fewest right answers that guessing gives with a probability of at most `level`; null: none do. */
export function triangleNeeded(tasters: number, level: number): number | null {
  for (let right = Math.ceil(tasters * GUESS); right <= tasters; right++)
    if (trianglePValue(right, tasters) <= level) return right;
  return null;
}

/** Share of right answers when this share of the tasters truly tell the beers apart. */
export function rightShare(discriminators: number): number {
  return GUESS + (1 - GUESS) * discriminators;
}

/** Share of tasters who truly tell the beers apart, from right answers: 80 % interval, never below 0. */
export function discriminatorShare(right: number, tasters: number): Range {
  const share = (correct: number) => Math.max(0, (correct - GUESS) / (1 - GUESS));
  const { low, high } = wilson(right, tasters);
  return {
    low: share(low),
    likely: share(tasters > 0 ? right / tasters : GUESS),
    high: share(high),
  };
}

/** Probability that the test notices, at this level, that this share of tasters tells the beers apart. */
export function trianglePower(tasters: number, level: number, discriminators: number): number {
  const needed = triangleNeeded(tasters, level);
  return needed === null ? 0 : binomialAtLeast(needed, tasters, rightShare(discriminators));
}

/** No panel is larger than this. */
export const MOST_TASTERS = 1000;

/**
 * Fewest tasters with whom the test notices, with at least `power`, that `discriminators` tell the beers
 * apart. Power climbs as a saw; this is the first tooth that reaches it. Null: more than `MOST_TASTERS`.
 */
export function tastersNeeded(discriminators: number, level: number, power: number): number | null {
  for (let n = 3; n <= MOST_TASTERS; n++)
    if (trianglePower(n, level, discriminators) >= power) return n;
  return null;
}

/** Steps of Simpson's rule, and how far out the bell curve still counts. */
const STEPS = 200;
const FAR = 9;
const SLOPE = Math.sqrt(3);
const SHIFT = Math.sqrt(2 / 3);

/** Share of right answers at a difference of `dPrime` standard deviations of perception. */
export function rightShareAt(dPrime: number): number {
  let sum = 0;
  for (let i = 0; i <= STEPS; i++) {
    const z = (FAR * i) / STEPS;
    const at =
      (normalBelow(-z * SLOPE + dPrime * SHIFT) + normalBelow(-z * SLOPE - dPrime * SHIFT)) *
      Math.exp(-0.5 * z * z);
    sum += at * (i === 0 || i === STEPS ? 1 : i % 2 === 1 ? 4 : 2);
  }
  return (2 * sum * FAR) / STEPS / 3 / Math.sqrt(2 * Math.PI);
}

/** The difference d' that gives this share of right answers: 0 at a third or less, at most 10. */
export function dPrimeOf(share: number): number {
  if (share <= GUESS) return 0;
  let low = 0;
  let high = 10;
  if (share >= rightShareAt(high)) return high;
  for (let i = 0; i < 50; i++) {
    const middle = (low + high) / 2;
    if (rightShareAt(middle) < share) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
