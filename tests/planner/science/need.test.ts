// Pitching rate and need: each limit from below, at it and above, and what always holds.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { needB, pitchRate, type Wort } from '../../../planner/science/need.ts';
import { HOME, home } from './houses.ts';

const wort = (own: Partial<Wort>): Wort => ({
  fermentC: 20,
  ogP: 12,
  souring: null,
  harvested: true,
  ...own,
});
const anyWort = fc.record({
  fermentC: fc.double({ min: -5, max: 50, noNaN: true }),
  ogP: fc.double({ min: 0, max: 40, noNaN: true }),
  souring: fc.constantFrom('kettle', 'mixed', null),
  harvested: fc.boolean(),
  volumeL: fc.double({ min: 0.5, max: 100_000, noNaN: true }),
});

describe('rate', () => {
  test.each([
    [13.9, true, 1.5],
    [14, true, 1.5],
    [14.1, true, 1.25],
    [15, true, 1.25],
    [16, true, 1.25],
    [16.1, true, 1],
    // Fresh packs: no discount for lager; 1.25 × 0.75 and 1 × 0.75 above.
    [14, false, 1.5],
    [14.1, false, 0.9375],
    [16, false, 0.9375],
    [16.1, false, 0.75],
  ])('at %s °C, harvested %s: %s', (fermentC, harvested, rate) => {
    expect(pitchRate(wort({ fermentC, harvested }), HOME)).toBe(rate);
  });

  test.each([
    [17.9, 1],
    [18, 1],
    [18.1, 1.25],
  ])('strong wort, %s °P: %s', (ogP, rate) => {
    expect(pitchRate(wort({ ogP }), HOME)).toBe(rate);
  });

  test('kettle-soured wort gets more, a mixed culture does not', () => {
    expect(pitchRate(wort({ souring: 'kettle' }), HOME)).toBe(1.25);
    expect(pitchRate(wort({ souring: 'mixed' }), HOME)).toBe(1);
    // Both increases multiply: 1.25 × 1.25.
    expect(pitchRate(wort({ souring: 'kettle', ogP: 20 }), HOME)).toBe(1.5625);
  });

  test('the house sets the temperatures', () => {
    const cold = home({ lagerToC: 10, hybridToC: 12 });
    expect(pitchRate(wort({ fermentC: 11 }), cold)).toBe(1.25);
    expect(pitchRate(wort({ fermentC: 13 }), cold)).toBe(1);
  });
});

describe('need', () => {
  test('twice the volume is twice the cells; harvested never needs less than fresh', () => {
    fc.assert(
      fc.property(anyWort, (w) => {
        const once = needB(w, HOME);
        expect(needB({ ...w, volumeL: w.volumeL * 2 }, HOME)).toBeCloseTo(once * 2, 6);
        expect(needB({ ...w, harvested: true }, HOME)).toBeGreaterThanOrEqual(
          needB({ ...w, harvested: false }, HOME),
        );
        expect(Number.isFinite(once)).toBe(true);
      }),
    );
  });

  test('colder never needs less, stronger never needs less', () => {
    fc.assert(
      fc.property(anyWort, fc.double({ min: 0, max: 20, noNaN: true }), (w, by) => {
        const need = needB(w, HOME);
        expect(needB({ ...w, fermentC: w.fermentC - by }, HOME)).toBeGreaterThanOrEqual(need);
        expect(needB({ ...w, ogP: w.ogP + by }, HOME)).toBeGreaterThanOrEqual(need);
      }),
    );
  });
});

// 0.5 × 20 L × 12 °P = 120 billion, where the house's own rule would have asked for 1.0 × 20 × 12 = 240.
test("a brew's own rate is taken as it stands: no discount for fresh packs, no increase for strong wort", () => {
  const plain = wort({ harvested: false, ownRate: 0.5 });
  expect(pitchRate(plain, HOME)).toBe(0.5);
  expect(pitchRate({ ...plain, ogP: 25, souring: 'kettle', fermentC: 10 }, HOME)).toBe(0.5);
  expect(needB({ ...plain, volumeL: 20 }, HOME)).toBe(120);
  expect(pitchRate(wort({ ownRate: null }), HOME)).toBe(1);
});
