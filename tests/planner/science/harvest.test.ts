// What a fermentation grows and gives up: the ceiling from both sides, and the shares.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { grownCellsB, recoverableShare } from '../../../planner/science/harvest.ts';
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
