// What a fermentation grows and gives up: the ceiling from both sides, and the shares.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  earliestCropDay,
  expectedHarvest,
  grownCellsB,
  recoverableShare,
} from '../../../planner/science/harvest.ts';
import { HOME } from './houses.ts';

test.each([
  // 20 L hold at most 80 × 20 = 1600 billion, reached by 400 billion × 4.
  [399, 1596],
  [400, 1600],
  [401, 1600],
  [0, 0],
])('%s billion into 20 L grow to %s', (pitched, grown) => {
  expect(grownCellsB(pitched, 20, HOME)).toBe(grown);
});

test.each([
  ['high', true, 0.65],
  ['high', false, 0.65],
  ['medium', true, 0.55],
  ['medium', false, 0.55],
  ['low', true, 0.45],
  ['low', false, 0.225],
] as const)('%s flocculator, crashed %s: %s', (flocculation, crashed, share) => {
  expect(recoverableShare(flocculation, crashed, HOME)).toBe(share);
});

test('more pitched is never less grown, and never above the ceiling', () => {
  const cells = fc.double({ min: 0, max: 1e6, noNaN: true });
  fc.assert(
    fc.property(cells, cells, fc.double({ min: 0.5, max: 1e4, noNaN: true }), (a, b, volumeL) => {
      const [less, more] = a < b ? [a, b] : [b, a];
      expect(grownCellsB(more, volumeL, HOME)).toBeGreaterThanOrEqual(
        grownCellsB(less, volumeL, HOME),
      );
      expect(grownCellsB(more, volumeL, HOME)).toBeLessThanOrEqual(80 * volumeL);
    }),
  );
});

test.each([
  [false, 15, 'medium', 5],
  [false, 15.1, 'medium', 7],
  [false, 12, 'low', 7],
  [false, 16, 'low', 7],
  [true, 12, 'high', 10],
  [true, 18, 'high', 12],
] as const)(
  'lager %s at %s °P, %s flocculator: cropped from day %s',
  (lager, ogP, flocculation, day) => {
    expect(earliestCropDay({ lager, ogP, flocculation }, HOME)).toBe(day);
  },
);

test('240 billion into 20 L, medium, read after two days', () => {
  const h = expectedHarvest(
    {
      pitchedViableB: 240,
      volumeL: 20,
      flocculation: 'medium',
      crashed: true,
      settleDays: 2,
      jarMl: 250,
    },
    HOME,
  );
  // 240 × 4 × 0.55 = 528 billion; ÷ 2 = 264 mL; √(ln² 1.4 + ln² 1.8) = 0.677, so ÷ and × 1.969; two jars.
  expect(h.cellsB).toBeCloseTo(528, 9);
  expect(h.settledMl.likely).toBeCloseTo(264, 9);
  expect(h.settledMl.low).toBeCloseTo(134.1, 1);
  expect(h.settledMl.high).toBeCloseTo(519.7, 0);
  expect(h.jars).toBe(2);
  expect(h.atCeiling).toBe(false);
});

test('past the ceiling more pitched brings no more, and it says so', () => {
  const harvest = (pitchedViableB: number) =>
    expectedHarvest(
      {
        pitchedViableB,
        volumeL: 20,
        flocculation: 'high',
        crashed: false,
        settleDays: 1,
        jarMl: 500,
      },
      HOME,
    );
  expect(harvest(500).cellsB).toBe(harvest(400).cellsB);
  expect(harvest(500).atCeiling).toBe(true);
  expect(harvest(400).atCeiling).toBe(false);
});
