// Slurry's viability: the three measured points, the lines between and beyond them, and the interval.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  beerLossPerDay,
  beyondData,
  cropViability,
  generationAgeing,
  misfitGrown,
  storageLossPerDay,
  strongAgeing,
  viabilityAfter,
  viabilityRange,
} from '../../../planner/science/viability.ts';
import { HOME, home, NANO } from './houses.ts';

const tempC = fc.double({ min: -5, max: 50, noNaN: true });
const loss = fc.double({ min: 0, max: 5, noNaN: true });

describe('loss by temperature', () => {
  test.each([
    [1, 0.0121],
    [5, 0.0251],
    [25, 0.19],
    // Halfway on a logarithmic line is the geometric mean: √(0.0121 × 0.0251), √(0.0251 × 0.19).
    [3, 0.017427],
    [15, 0.069058],
    // The line from 1 to 5 °C carried on to −1 °C: 0.0121 × (0.0121 / 0.0251)^½.
    [-1, 0.008401],
    [26, 0.19],
    [50, 0.19],
  ])('%s °C: %s a day', (at, rate) => {
    expect(storageLossPerDay(at, NANO)).toBeCloseTo(rate, 6);
  });

  test('warmer is never slower, and a house without any loss stays a number', () => {
    fc.assert(
      fc.property(tempC, fc.double({ min: 0, max: 20, noNaN: true }), (at, more) => {
        for (const s of [HOME, NANO])
          expect(storageLossPerDay(at + more, s)).toBeGreaterThanOrEqual(storageLossPerDay(at, s));
        const none = home({ storageLossAt1C: 0, storageLossAt5C: 0, storageLossAt25C: 0 });
        expect(storageLossPerDay(at, none)).toBeLessThan(1e-8);
      }),
    );
  });

  test('on the beer it is the stated share of that', () => {
    expect(beerLossPerDay(20, HOME)).toBeCloseTo(0.15 * storageLossPerDay(20, HOME), 12);
  });
});

test.each([
  [4.9, 1],
  [5, 1],
  [6, 1.1],
  [10, 1.5],
  [-1, 1],
])('after beer of %s %% alcohol slurry ages %s times as fast', (abv, factor) => {
  expect(strongAgeing(abv, HOME)).toBeCloseTo(factor, 12);
});

test('a half-life halves: ln 2 / 0.0121 = 57.3 days', () => {
  expect(viabilityAfter({ start: 0.9, lossPerDay: 0.0121, days: Math.LN2 / 0.0121 })).toBeCloseTo(
    0.45,
    12,
  );
});

describe('the interval', () => {
  const sure = { low: 0.97, likely: 0.97, high: 0.97 };

  test('from a sure start it is the loss at twice and at half the rate', () => {
    const exact = home({ storageMisfit: 0 });
    const v = viabilityRange({ start: sure, beerLoss: 0.1, storeLoss: 0.2 }, exact);
    expect(v.low).toBeCloseTo(0.97 * Math.exp(-0.6), 12);
    expect(v.likely).toBeCloseTo(0.97 * Math.exp(-0.3), 12);
    expect(v.high).toBeCloseTo(0.97 * Math.exp(-0.15), 12);
  });

  test('off the curve by 10 points besides: √(0.3² + (0.1 / 0.7186)²) down in logarithms', () => {
    const v = viabilityRange({ start: sure, beerLoss: 0.1, storeLoss: 0.2 }, HOME);
    expect(v.low).toBeCloseTo(0.71859 * Math.exp(-Math.hypot(0.3, 0.1 / 0.71859)), 4);
    expect(v.high).toBeCloseTo(0.71859 * Math.exp(Math.hypot(0.15, 0.1 / 0.71859)), 4);
  });

  test.each([
    [0, 0],
    [0.05, 0.5],
    [0.1, 1],
    [2, 1],
  ])('after a loss of %s that is there to %s', (loss, share) => {
    expect(misfitGrown(loss)).toBeCloseTo(share, 12);
  });

  test('without loss it is the start', () => {
    const start = cropViability(HOME);
    const v = viabilityRange({ start, beerLoss: 0, storeLoss: 0 }, HOME);
    expect(v.low).toBeCloseTo(start.low, 12);
    expect(v.likely).toBeCloseTo(start.likely, 12);
    expect(v.high).toBeCloseTo(start.high, 12);
  });

  test('dead slurry is dead, without a NaN', () => {
    const dead = { low: 0, likely: 0, high: 0 };
    expect(viabilityRange({ start: dead, beerLoss: 1, storeLoss: 1 }, HOME)).toEqual(dead);
    const doubtful = { low: 0, likely: 0.5, high: 1 };
    expect(viabilityRange({ start: doubtful, beerLoss: 0, storeLoss: 1 }, HOME).low).toBeLessThan(
      1e-6,
    );
  });

  test('always in order, between 0 and 1, lower with more loss, wider than either part', () => {
    fc.assert(
      fc.property(loss, loss, fc.double({ min: 0, max: 1, noNaN: true }), (beer, store, more) => {
        const start = cropViability(HOME);
        const v = viabilityRange({ start, beerLoss: beer, storeLoss: store }, HOME);
        const later = viabilityRange({ start, beerLoss: beer, storeLoss: store + more }, HOME);
        const apart = viabilityRange({ start: sure, beerLoss: beer, storeLoss: store }, HOME);
        expect(v.low).toBeGreaterThanOrEqual(0);
        expect(v.low).toBeLessThanOrEqual(v.likely);
        expect(v.likely).toBeLessThanOrEqual(v.high);
        expect(v.high).toBeLessThanOrEqual(start.high);
        expect(later.likely).toBeLessThanOrEqual(v.likely);
        expect(later.low).toBeLessThanOrEqual(v.low);
        expect(v.low).toBeLessThanOrEqual(apart.low);
      }),
    );
  });
});

test('at the end of fermentation: 97 %, from 91 to 99', () => {
  const v = cropViability(HOME);
  expect(v.low).toBeCloseTo(0.91, 12);
  expect(v.likely).toBe(0.97);
  expect(v.high).toBeCloseTo(0.99, 12);
  expect(cropViability(home({ cropViability: 0.5, cropDeadSpread: 10 })).low).toBe(0);
});

test('generations age slurry only where the house says so', () => {
  expect(generationAgeing(8, HOME)).toBe(1);
  expect(generationAgeing(3, home({ ageingPerGeneration: 0.1 }))).toBeCloseTo(1.3, 12);
});

test.each([
  [3, 30, 8, 0],
  [0.9, 30, 8, 1],
  [25.1, 30, 8, 1],
  [3, 31, 8, 1],
  [3, 30, 8.1, 1],
  [-1, 90, 12, 3],
])(
  '%s °C, %s days, %s %% alcohol: %s warnings of going beyond the data',
  (tempC, days, abvPercent, n) => {
    expect(beyondData({ tempC, days, abvPercent })).toHaveLength(n);
  },
);
