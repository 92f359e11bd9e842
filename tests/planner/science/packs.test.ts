// Packs: loss by form, expiry, and an interval that opens with age.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  packExpiryDays,
  packLossPerDay,
  packLossPerDayAt,
  packRange,
  packViability,
} from '../../../planner/science/packs.ts';
import { HOME, home } from './houses.ts';

test('a pack of today, or of tomorrow, is whole', () => {
  for (const form of ['liquid', 'dry'] as const)
    for (const age of [-5, 0])
      expect(packViability(form, age, HOME)).toEqual({ low: 1, likely: 1, high: 1 });
});

test('liquid at 100 days: exp(-0.18) = 0.835, and three times faster exp(-0.54) = 0.583', () => {
  const v = packViability('liquid', 100, HOME);
  expect(v.likely).toBeCloseTo(0.8353, 4);
  expect(v.low).toBeCloseTo(0.5827, 4);
  expect(v.high).toBeCloseTo(0.9418, 4);
});

test('dry keeps better and longer than liquid', () => {
  expect(packLossPerDay('dry', HOME)).toBeLessThan(packLossPerDay('liquid', HOME));
  expect(packExpiryDays('dry', HOME)).toBe(730);
  expect(packExpiryDays('liquid', HOME)).toBe(120);
});

test('the house sets loss and expiry', () => {
  const own = home({ liquidLossPerDay: 0.007, dryExpiryDays: 100 });
  expect(packLossPerDay('liquid', own)).toBe(0.007);
  expect(packExpiryDays('dry', own)).toBe(100);
});

test('always in order, between 0 and 1, and never better with age', () => {
  fc.assert(
    fc.property(
      fc.constantFrom('liquid' as const, 'dry' as const),
      fc.double({ min: 0, max: 3000, noNaN: true }),
      fc.double({ min: 0, max: 300, noNaN: true }),
      (form, age, more) => {
        const v = packViability(form, age, HOME);
        const later = packViability(form, age + more, HOME);
        expect(v.low).toBeGreaterThanOrEqual(0);
        expect(v.low).toBeLessThanOrEqual(v.likely);
        expect(v.likely).toBeLessThanOrEqual(v.high);
        expect(v.high).toBeLessThanOrEqual(1);
        expect(later.likely).toBeLessThanOrEqual(v.likely);
        expect(later.low).toBeLessThanOrEqual(v.low);
      },
    ),
  );
});

test.each([
  // Halfway from 4 to 24 °C: √(0.00011 × 0.00061).
  ['dry', 4, 0.00011],
  ['dry', 14, 0.000259],
  ['dry', 24, 0.00061],
  ['liquid', 4, 0.0018],
] as const)('%s kept at %s °C loses %s a day', (form, tempC, loss) => {
  expect(packLossPerDayAt(form, tempC, HOME)).toBeCloseTo(loss, 6);
});

test('a warm week costs a liquid pack more than a cold one', () => {
  const cold = packRange(7 * packLossPerDayAt('liquid', 4, HOME), HOME);
  const warm = packRange(7 * packLossPerDayAt('liquid', 25, HOME), HOME);
  expect(warm.likely).toBeLessThan(cold.likely);
  expect(packLossPerDayAt('dry', 20, home({ dryLossPerDay: 0 }))).toBeLessThan(0.001);
});
