// Specific gravity and °P: round trips, limits, order, and the alcohol that follows.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  abvPercent,
  abwPercent,
  apparentAttenuation,
  apparentExtract,
  platoFromSg,
  realAttenuation,
  realExtract,
  SG_FITTED_TO,
  sgFromPlato,
} from '../../../planner/science/gravity.ts';

/** From just above water, where the cubic has left its clamp at 0. */
const sg = fc.double({ min: 1.0001, max: 1.15, noNaN: true });

describe('SG and °P', () => {
  test.each([
    ['lighter than water', 0.998, 0],
    ['water', 1, 0],
    // The cubic is -0.0048 at 1.000 and crosses 0 a hair above it.
    ['a hair above water', 1.00001, 0],
  ])('%s is 0 °P', (_, gravity, p) => {
    expect(platoFromSg(gravity)).toBe(p);
  });

  test('a finished dry beer keeps its negative apparent extract', () => {
    expect(apparentExtract(0.998)).toBeLessThan(-0.4);
  });

  test('below 0 °P is water', () => {
    expect(sgFromPlato(-3)).toBe(sgFromPlato(0));
    expect(sgFromPlato(0)).toBeCloseTo(1, 4);
  });

  test('there and back is the same, over the whole range and up to the end of the fit', () => {
    fc.assert(
      fc.property(fc.double({ min: 1.0001, max: SG_FITTED_TO, noNaN: true }), (gravity) => {
        expect(Math.abs(sgFromPlato(platoFromSg(gravity)) - gravity)).toBeLessThan(1e-12);
      }),
    );
    fc.assert(
      fc.property(fc.double({ min: 0, max: 40, noNaN: true }), (p) => {
        expect(Math.abs(platoFromSg(sgFromPlato(p)) - p)).toBeLessThan(1e-9);
      }),
    );
  });

  test('heavier wort is more °P', () => {
    fc.assert(
      fc.property(sg, fc.double({ min: 1e-6, max: 0.02, noNaN: true }), (gravity, more) => {
        const step = platoFromSg(gravity + more) - platoFromSg(gravity);
        expect(step).toBeGreaterThan(0);
      }),
    );
  });
});

describe('alcohol', () => {
  test('none where nothing fermented, or where the gravity rose', () => {
    expect(abvPercent(1.05, 1.05)).toBe(0);
    expect(abvPercent(1.05, 1.06)).toBe(0);
    expect(abvPercent(1, 1)).toBe(0);
    expect(apparentAttenuation(1, 1)).toBe(0);
    expect(realAttenuation(1, 1)).toBe(0);
  });

  test('drier is stronger, never NaN, and weight is less than volume', () => {
    fc.assert(
      fc.property(sg, fc.double({ min: 0, max: 0.95, noNaN: true }), (og, attenuation) => {
        const fg = og - (og - 1) * attenuation;
        const drier = og - (og - 1) * (attenuation + 0.05);
        expect(abvPercent(og, drier)).toBeGreaterThan(abvPercent(og, fg));
        expect(Number.isFinite(abvPercent(og, fg))).toBe(true);
        expect(abwPercent(og, fg)).toBeLessThanOrEqual(abvPercent(og, fg));
      }),
    );
  });

  test('real extract lies between the two readings, real attenuation below apparent', () => {
    fc.assert(
      fc.property(fc.double({ min: 1.02, max: 1.15, noNaN: true }), (og) => {
        const fg = 1 + (og - 1) / 4;
        expect(realExtract(og, fg)).toBeGreaterThan(apparentExtract(fg));
        expect(realExtract(og, fg)).toBeLessThan(apparentExtract(og));
        expect(realAttenuation(og, fg)).toBeLessThan(apparentAttenuation(og, fg));
        // Real is 0.8192 of apparent by the Balling relation.
        expect(realAttenuation(og, fg) / apparentAttenuation(og, fg)).toBeCloseTo(0.8192, 6);
      }),
    );
  });
});

test('water has no extract to ferment: attenuation 0, not a division by nothing', () => {
  expect(apparentAttenuation(1, 1)).toBe(0);
  expect(realAttenuation(1, 1)).toBe(0);
});
