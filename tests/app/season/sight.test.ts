// Which part of a wide picture is drawn: always more than what is seen, seldom anew, and never outside of it.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inSight, sightAt } from '../../../app/pages/season/sight.ts';

const ROOM = 1000;

describe('sightAt', () => {
  it('draws a picture that fits whole, and its words from the start', () => {
    expect(sightAt(40, ROOM, 1000, 40)).toEqual({ from: 0, to: 1000, edge: 0 });
  });

  it('draws a window and one more on either side, in steps of a quarter of it', () => {
    // 20 100 − 1000 = 19 100, a step lower 19 000; 20 100 + 2 × 1000 = 22 100, a step higher 22 250
    expect(sightAt(20_100, ROOM, 60_000, 7)).toEqual({ from: 19_000, to: 22_250, edge: 7 });
  });

  it('holds all that is seen and at least a window beside it where there is one', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 200, max: 2600 }),
        fc.integer({ min: 1, max: 90_000 }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (room, width, share) => {
          const left = Math.round(share * Math.max(0, width - room));
          const { from, to } = sightAt(left, room, width, left);
          expect(from).toBeLessThanOrEqual(Math.max(0, left - room));
          expect(to).toBeGreaterThanOrEqual(Math.min(width, left + 2 * room));
          expect(from).toBeGreaterThanOrEqual(0);
          expect(to).toBeLessThanOrEqual(width);
          expect(to - from).toBeLessThanOrEqual(3.5 * room + 1);
        },
      ),
    );
  });

  it('stays as it is while the picture moves within a step', () => {
    expect(sightAt(20_010, ROOM, 60_000, 0)).toEqual(sightAt(20_240, ROOM, 60_000, 0));
  });
});

describe('inSight', () => {
  const sight = { from: 100, to: 200, edge: 0 };
  it.each([
    [0, 99, false],
    [0, 100, true],
    [50, 500, true],
    [200, 10, true],
    [201, 10, false],
  ])('%s, %s wide: %s', (x, width, drawn) => expect(inSight(sight, x, width)).toBe(drawn));
});
