// From the whole season to a few days, and never out of that range.
import { describe, expect, it } from 'vitest';
import { pxAt, rangeAt, wheelFactor, zoomed } from '../../../app/pages/season/zoom.ts';

const ROOM = 1200;
const FIT = 6;

describe('views', () => {
  it('shows the whole season, five weeks, nine days', () => {
    expect(pxAt('season', ROOM, FIT)).toBe(FIT);
    expect(ROOM / pxAt('month', ROOM, FIT)).toBeCloseTo(35);
    expect(ROOM / pxAt('week', ROOM, FIT)).toBeCloseTo(9);
  });

  it('shows three months on a narrow page, where the whole season would be a smear', () => {
    expect(340 / pxAt('season', 340, 3.2)).toBeLessThanOrEqual(90);
    expect(pxAt('season', 340, 3.2)).toBeGreaterThanOrEqual(5);
  });

  it('never goes below the whole season, as the window may have grown since', () => {
    expect(pxAt(2, ROOM, FIT)).toBe(FIT);
    expect(pxAt(30, ROOM, FIT)).toBe(30);
  });
});

describe('the hand', () => {
  const range = rangeAt(ROOM, FIT);

  it('stays within the range', () => {
    expect(zoomed(10, 1000, range)).toBe(ROOM / 5);
    expect(zoomed(10, 0.001, range)).toBe(FIT);
    expect(zoomed(10, 2, range)).toBe(20);
  });

  it('comes back where it was when the wheel turns back, in whatever unit the wheel counts', () => {
    for (const mode of [0, 1, 2])
      expect(wheelFactor(3, mode) * wheelFactor(-3, mode)).toBeCloseTo(1);
    expect(wheelFactor(-100, 0)).toBeGreaterThan(1);
  });
});
