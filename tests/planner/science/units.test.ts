// Units: fixed points and that every one comes back as it went.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import * as units from '../../../planner/science/units.ts';

test('fixed points', () => {
  expect(units.fahrenheitFromCelsius(100)).toBe(212);
  expect(units.fahrenheitFromCelsius(-40)).toBe(-40);
  expect(units.litresFromUsGal(5)).toBeCloseTo(18.927, 3);
  expect(units.litresFromHl(1.5)).toBe(150);
});

test('there and back', () => {
  fc.assert(
    fc.property(fc.double({ min: -100, max: 1e5, noNaN: true }), (x) => {
      for (const [there, back] of [
        [units.litresFromHl, units.hlFromLitres],
        [units.litresFromUsGal, units.usGalFromLitres],
        [units.fahrenheitFromCelsius, units.celsiusFromFahrenheit],
        [units.ebcFromSrm, units.srmFromEbc],
      ] as const) {
        expect(Math.abs(back(there(x)) - x)).toBeLessThan(1e-9 * Math.max(1, Math.abs(x)));
        expect(Math.abs(there(back(x)) - x)).toBeLessThan(1e-9 * Math.max(1, Math.abs(x)));
      }
    }),
  );
});
