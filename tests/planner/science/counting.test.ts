// Counting: squares to cells, the larger of two errors, shares alive, and weights.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  countCells,
  countViability,
  expectedCount,
  measuredViability,
  NEUBAUER_ML,
  slurryGPerMl,
  slurryMlFromG,
} from '../../../planner/science/counting.ts';
import { HOME } from './houses.ts';

describe('squares', () => {
  test('the parts of the chamber fill the whole: 25 central or 16 corner squares make a large one', () => {
    expect(NEUBAUER_ML.central * 25).toBeCloseTo(NEUBAUER_ML.large, 12);
    expect(NEUBAUER_ML.corner * 16).toBeCloseTo(NEUBAUER_ML.large, 12);
    expect(NEUBAUER_ML.small * 16).toBeCloseTo(NEUBAUER_ML.central, 12);
  });

  test('even counts leave Poisson’s error, uneven ones more', () => {
    const even = countCells([30, 30, 30, 30, 30], NEUBAUER_ML.central, 200);
    expect(even.errorShare).toBeCloseTo(1 / Math.sqrt(150), 12);
    expect(even.quality).toBe('superb');
    const uneven = countCells([10, 50, 20, 60, 10], NEUBAUER_ML.central, 200);
    expect(uneven.millionPerMl.likely).toBe(even.millionPerMl.likely);
    expect(uneven.errorShare).toBeGreaterThan(even.errorShare);
    expect(uneven.quality).toBe('count again');
  });

  test('one square says nothing of the spread; an empty one or none at all stays a number', () => {
    expect(countCells([40], NEUBAUER_ML.large, 10).quality).toBe('one square only');
    expect(countCells([0, 0], NEUBAUER_ML.large, 10).millionPerMl).toEqual({
      low: 0,
      likely: 0,
      high: 0,
    });
    expect(countCells([], NEUBAUER_ML.large, 10).millionPerMl.likely).toBe(0);
  });

  test('the interval is in order and scales with the dilution', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 0, max: 200 }), { minLength: 1, maxLength: 25 }),
        fc.integer({ min: 1, max: 10_000 }),
        (squares, dilution) => {
          const c = countCells(squares, NEUBAUER_ML.central, dilution).millionPerMl;
          const twice = countCells(squares, NEUBAUER_ML.central, dilution * 2).millionPerMl;
          expect(c.low).toBeLessThanOrEqual(c.likely);
          expect(c.likely).toBeLessThanOrEqual(c.high);
          expect(c.low).toBeGreaterThanOrEqual(0);
          expect(twice.likely).toBeCloseTo(c.likely * 2, 3);
        },
      ),
    );
  });
});

describe('share alive', () => {
  test('20 stained of 200', () => {
    const v = countViability(20, 200);
    expect(v.likely).toBe(0.9);
    expect(v.low).toBeGreaterThan(0.86);
    expect(v.high).toBeLessThan(0.93);
  });

  test('none or all stained, and nothing seen', () => {
    expect(countViability(0, 100).high).toBe(1);
    expect(countViability(100, 100)).toMatchObject({ low: 0, likely: 0 });
    expect(countViability(0, 0)).toEqual({ low: 0, likely: 0.5, high: 1 });
  });

  test('a share without its count stands for as many cells as the house counts', () => {
    const counted = countViability(20, 200);
    const v = measuredViability(0.9, HOME);
    expect(v.low).toBeCloseTo(counted.low, 12);
    expect(v.likely).toBe(0.9);
    expect(measuredViability(1, HOME).high).toBe(1);
    expect(measuredViability(0, HOME).low).toBe(0);
  });

  test('a count of few cells may stray further than one of many', () => {
    const v = { low: 0.7, likely: 0.8, high: 0.88 };
    const few = expectedCount(v, 50);
    const many = expectedCount(v, 5000);
    expect(few.low).toBeLessThan(many.low);
    expect(many.low).toBeLessThan(v.low);
    expect(many.low).toBeGreaterThan(0.699);
    expect(expectedCount(v, 0)).toEqual({ low: 0, likely: 0.8, high: 1 });
  });
});

test('a kilogram of slurry: 0.6 beer at 1.010 and 0.4 cells at 1.11 weigh 1.05 g/mL, so 952 mL', () => {
  expect(slurryGPerMl(1.01, HOME)).toBeCloseTo(1.05, 12);
  expect(slurryMlFromG(1000, 1.01, HOME)).toBeCloseTo(952.38, 2);
});
