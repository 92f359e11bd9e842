// What a draw brings along: plain mixing, and that it never leaves the two beers' span.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  carriedBeerL,
  carriedChange,
  carryOver,
  mixed,
} from '../../../planner/science/carry-over.ts';
import { HOME, home } from './houses.ts';

test('300 mL of slurry bring 0.18 L of beer; none brings none', () => {
  expect(carriedBeerL(300)).toBeCloseTo(0.18, 12);
  expect(carriedBeerL(0)).toBe(0);
  expect(carriedBeerL(-5)).toBe(0);
  expect(carriedBeerL(1000, 0.5)).toBe(0.5);
});

test('0.18 L at 80 EBC into 20 L at 8 EBC: (8 × 20 + 80 × 0.18) / 20.18 = 8.642', () => {
  expect(mixed(8, 20, 80, 0.18)).toBeCloseTo(8.6422, 4);
  expect(carriedChange(8, 20, 80, 0.18)).toBeCloseTo(0.6422, 4);
  expect(carriedChange(30, 20, 10, 0.18)).toBeLessThan(0);
});

test('nothing into nothing changes nothing', () => {
  expect(mixed(8, 0, 80, 0)).toBe(8);
  expect(carriedChange(8, 0, 80, 0)).toBe(0);
});

test('the mix lies between the two beers and the change is the difference', () => {
  const value = fc.double({ min: 0, max: 300, noNaN: true });
  const volume = fc.double({ min: 0.1, max: 1000, noNaN: true });
  fc.assert(
    fc.property(value, volume, value, volume, (a, va, b, vb) => {
      const m = mixed(a, va, b, vb);
      expect(m).toBeGreaterThanOrEqual(Math.min(a, b) - 1e-9);
      expect(m).toBeLessThanOrEqual(Math.max(a, b) + 1e-9);
      expect(a + carriedChange(a, va, b, vb)).toBeCloseTo(m, 6);
    }),
  );
});

test('a stout’s slurry in a pale ale is seen, the same colour is not, and both thresholds are the house’s', () => {
  const stout = { ebc: 80, ibu: 40, abvPercent: 5 };
  const pale = { ebc: 8, ibu: 25, abvPercent: 5 };
  const draw = { ml: 1000, from: stout };
  const batch = { volumeL: 20, beer: pale };
  // 0.6 L into 20 L: 72 EBC × 0.6 / 20.6 = 2.10; 15 IBU × 0.6 / 20.6 = 0.44.
  const c = carryOver(draw, batch, HOME);
  expect(c.volumeL).toBeCloseTo(0.6, 12);
  expect(c.ebcChange).toBeCloseTo(2.097, 3);
  expect(c.ibuChange).toBeCloseTo(0.437, 3);
  expect(c.abvChange).toBe(0);
  expect(c.colourNoticed).toBe(true);
  expect(c.bitternessNoticed).toBe(false);
  expect(carryOver(draw, batch, home({ noticeEbc: 3 })).colourNoticed).toBe(false);
  expect(carryOver(draw, batch, home({ noticeIbu: 0.4 })).bitternessNoticed).toBe(true);
  expect(carryOver({ ...draw, from: pale }, batch, HOME).ebcChange).toBe(0);
});
