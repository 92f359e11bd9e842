// Density of settled slurry: by flocculation, by days of settling, and never denser than cells pack.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  densityBPerMl,
  drawMl,
  livingCellsB,
  settledMl,
  settledShare,
  yeastMl,
} from '../../../planner/science/slurry.ts';
import { HOME, home, NANO } from './houses.ts';

test.each([
  // Home, 48 h: 2 ÷ and × 1.8; 24 h: 1.6 ÷ and × 1.8 × 1.25, capped; none: 1 and × 1.8 × 1.25².
  [2, 1.1111, 2, 3.6],
  [3, 1.1111, 2, 3.6],
  [1, 0.7111, 1.6, 3.6],
  [0, 0.3556, 1, 2.8125],
  [-1, 0.3556, 1, 2.8125],
])('medium flocculator after %s days', (days, low, likely, high) => {
  const d = densityBPerMl('medium', days, HOME);
  expect(d.low).toBeCloseTo(low, 4);
  expect(d.likely).toBeCloseTo(likely, 4);
  expect(d.high).toBeCloseTo(high, 4);
});

test('thicker from better flocculators', () => {
  for (const s of [HOME, NANO]) {
    const [low, medium, high] = (['low', 'medium', 'high'] as const).map(
      (f) => densityBPerMl(f, 2, s).likely,
    );
    expect(low).toBeLessThan(medium ?? 0);
    expect(medium).toBeLessThan(high ?? 0);
  }
});

test('never denser than cells pack, unless the house says so itself', () => {
  expect(densityBPerMl('high', 2, home({ densityHigh: 3.5 })).high).toBe(4);
  const own = densityBPerMl('high', 2, home({ densityHigh: 4.5 }));
  expect(own.high).toBe(4.5);
});

test('settling only thickens, and the interval only narrows', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0, max: 5, noNaN: true }),
      fc.double({ min: 0, max: 3, noNaN: true }),
      fc.constantFrom('low' as const, 'medium' as const, 'high' as const),
      (days, more, flocculation) => {
        const now = densityBPerMl(flocculation, days, HOME);
        const later = densityBPerMl(flocculation, days + more, HOME);
        expect(settledShare(days + more, HOME)).toBeGreaterThanOrEqual(settledShare(days, HOME));
        expect(later.likely).toBeGreaterThanOrEqual(now.likely);
        expect(later.likely / later.low).toBeLessThanOrEqual(now.likely / now.low + 1e-12);
        expect(now.low).toBeLessThanOrEqual(now.likely);
        expect(now.likely).toBeLessThanOrEqual(now.high);
      },
    ),
  );
});

test('100 mL read after a day settle to 80; a tenth of trub leaves nine tenths', () => {
  expect(settledMl(100, 1, HOME)).toBeCloseTo(80, 12);
  expect(settledMl(100, 2, HOME)).toBe(100);
  expect(yeastMl(100, 0.1)).toBeCloseTo(90, 12);
});

test('the cells in slurry do not change by reading it early', () => {
  for (const days of [0, 0.5, 1, 1.5, 2])
    expect(
      (settledMl(100, days, HOME) * densityBPerMl('high', 2, HOME).likely) /
        (100 * densityBPerMl('high', days, HOME).likely),
    ).toBeCloseTo(1, 12);
});

test('228 billion at 2 per mL and 90 % alive: 127 mL; and those mL hold them', () => {
  const density = densityBPerMl('medium', 2, HOME);
  const viability = { low: 0.8, likely: 0.9, high: 0.95 };
  const draw = drawMl(228, density, viability);
  expect(draw.likely).toBeCloseTo(126.67, 2);
  expect(draw.low).toBeLessThan(draw.likely);
  expect(draw.high).toBeGreaterThan(draw.likely);
  const cells = livingCellsB(draw.likely, density, viability);
  expect(cells.likely).toBeCloseTo(228, 9);
  expect(cells.low * draw.high).toBeCloseTo(228 * draw.likely, 6);
});

test('dead slurry holds nothing and no draw of it is enough', () => {
  const dead = { low: 0, likely: 0, high: 0 };
  const density = densityBPerMl('low', 2, HOME);
  expect(drawMl(100, density, dead).likely).toBe(Infinity);
  expect(livingCellsB(100, density, dead)).toEqual(dead);
  const doubtful = { low: 0, likely: 0.5, high: 0.8 };
  expect(drawMl(100, density, doubtful).high).toBe(Infinity);
  expect(livingCellsB(100, density, doubtful).low).toBe(0);
});
