// Holds the laws of chance to a statistics package and the units to a units package.
import fc from 'fast-check';
import Qty from 'js-quantities';
import { jStat } from 'jstat';
import { describe, expect, test } from 'vitest';
import { binomialAtLeast, normalBelow, t80, wilson, Z80 } from '../../planner/science/chance.ts';
import { trianglePower, trianglePValue } from '../../planner/science/triangle.ts';
import * as units from '../../planner/science/units.ts';

describe('against jstat', () => {
  test('upper tails of the binomial', () => {
    fc.assert(
      fc.property(
        fc
          .integer({ min: 1, max: 400 })
          .chain((n) => fc.tuple(fc.constant(n), fc.integer({ min: 0, max: n }))),
        fc.double({ min: 0.001, max: 0.999, noNaN: true }),
        ([n, k], p) => {
          const theirs = k === 0 ? 1 : 1 - jStat.binomial.cdf(k - 1, n, p);
          expect(binomialAtLeast(k, n, p)).toBeCloseTo(theirs, 9);
        },
      ),
    );
  });

  test('far out in a tail, where one minus the rest would be nothing', () => {
    // Sum of the package's own single terms from 60 to 100.
    let theirs = 0;
    for (let k = 60; k <= 100; k++) theirs += jStat.binomial.pdf(k, 100, 1 / 3);
    expect(theirs).toBeLessThan(1e-6);
    expect(trianglePValue(60, 100) / theirs).toBeCloseTo(1, 8);
  });

  test('the normal distribution, to its package’s own accuracy', () => {
    for (let x = -8; x <= 8; x += 0.25)
      expect(normalBelow(x)).toBeCloseTo(jStat.normal.cdf(x, 0, 1), 9);
    expect(normalBelow(Z80)).toBeCloseTo(0.9, 12);
  });

  test('Student’s t at 80 %', () => {
    for (const freedom of [1, 2, 3, 5, 9, 10, 11, 15, 24, 60, 400])
      expect(t80(freedom)).toBeCloseTo(jStat.studentt.inv(0.9, freedom), 3);
  });

  test('Wilson’s interval lies inside the exact one of Clopper and Pearson, and near it', () => {
    for (const [hits, n] of [
      [5, 20],
      [95, 100],
      [180, 200],
      [380, 400],
      [100, 200],
    ] as const) {
      const ours = wilson(hits, n);
      const low = jStat.beta.inv(0.1, hits, n - hits + 1);
      const high = jStat.beta.inv(0.9, hits + 1, n - hits);
      expect(ours.low).toBeGreaterThan(low);
      expect(ours.high).toBeLessThan(high);
      expect(ours.low - low).toBeLessThan(0.5 / n + 0.01);
      expect(high - ours.high).toBeLessThan(0.5 / n + 0.01);
    }
  });

  test('power of the triangle test', () => {
    // 21 tasters at 5 %: 12 right are needed; half discriminating: 2/3 right.
    expect(trianglePower(21, 0.05, 0.5)).toBeCloseTo(1 - jStat.binomial.cdf(11, 21, 2 / 3), 9);
  });
});

describe('against js-quantities', () => {
  const amount = fc.double({ min: 0.001, max: 1e6, noNaN: true });
  const temperature = fc.double({ min: -50, max: 150, noNaN: true });
  const same = (ours: number, theirs: number) =>
    expect(Math.abs(ours - theirs)).toBeLessThanOrEqual(1e-7 * Math.max(1, Math.abs(theirs)));

  test('US gallons and hectolitres', () => {
    fc.assert(
      fc.property(amount, (x) => {
        same(units.litresFromUsGal(x), Qty(x, 'gal').to('l').scalar);
        same(units.usGalFromLitres(x), Qty(x, 'l').to('gal').scalar);
        same(units.litresFromHl(x), Qty(x, 'hl').to('l').scalar);
        same(units.hlFromLitres(x), Qty(x, 'l').to('hl').scalar);
      }),
    );
  });

  test('°C and °F', () => {
    fc.assert(
      fc.property(temperature, (x) => {
        same(units.fahrenheitFromCelsius(x), Qty(x, 'tempC').to('tempF').scalar);
        same(units.celsiusFromFahrenheit(x), Qty(x, 'tempF').to('tempC').scalar);
      }),
    );
  });
});
