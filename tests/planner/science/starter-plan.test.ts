// Starters laid out: size, steps, days, what is kept, and what is cheapest.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { starterGivesB } from '../../../planner/science/starter.ts';
import {
  buildAndKeep,
  freshPitches,
  starterDecanted,
  starterLeadDays,
  starterLitres,
  stepUps,
  vitalityStart,
} from '../../../planner/science/starter-plan.ts';
import { HOME } from './houses.ts';

const GEAR = { maxLitres: 3, stirred: true };

describe('size', () => {
  test('100 to 240 billion stirred: 140 new at 1.4 a gram is 100 g, a litre', () => {
    expect(starterLitres(100, 240, GEAR, HOME)).toBeCloseTo(1, 4);
  });

  test('enough already, or more than the vessel or one step can give', () => {
    expect(starterLitres(200, 200, GEAR, HOME)).toBe(0);
    // 3 L stirred grow at most 420 billion; from 10 billion one step makes at most 80.
    expect(starterLitres(300, 721, GEAR, HOME)).toBe(Infinity);
    expect(starterLitres(10, 81, GEAR, HOME)).toBe(Infinity);
    expect(starterLitres(10, 80, GEAR, HOME)).toBeLessThan(3);
  });
});

describe('steps', () => {
  test('none, one, or as many as it takes', () => {
    expect(stepUps(100, 90, GEAR, HOME)).toEqual([]);
    expect(stepUps(100, 240, GEAR, HOME)).toHaveLength(1);
    // 10 → 80 → at most 500: two steps for 300, and 1 billion wants three (8 × 8 × 8 = 512).
    expect(stepUps(10, 300, GEAR, HOME)).toHaveLength(2);
    expect(stepUps(1, 300, GEAR, HOME)).toHaveLength(3);
  });

  test('what no steps can do', () => {
    expect(stepUps(0, 100, GEAR, HOME)).toBeNull();
    expect(stepUps(100, 200, { maxLitres: 0, stirred: true }, HOME)).toBeNull();
    expect(stepUps(100, 5000, GEAR, HOME)).toBeNull();
  });

  test('each step gives what it says, fits the vessel, begins where the last ended, and the last is enough', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 300, noNaN: true }),
        fc.double({ min: 1, max: 1000, noNaN: true }),
        fc.boolean(),
        (seed, want, stirred) => {
          const gear = { maxLitres: 3, stirred };
          const steps = stepUps(seed, want, gear, HOME);
          if (steps === null || steps.length === 0) return;
          let at = seed;
          for (const step of steps) {
            expect(step.startB).toBe(at);
            expect(step.litres).toBeLessThanOrEqual(3);
            expect(starterGivesB(step.startB, step.litres, stirred, HOME)).toBeGreaterThanOrEqual(
              step.endB * (1 - 1e-6),
            );
            at = step.endB;
          }
          expect(at).toBe(want);
        },
      ),
    );
  });
});

describe('days', () => {
  test.each([
    // 5 % of 20 L is one litre.
    [1, 20, false],
    [1.01, 20, true],
  ])('%s L for %s L decanted: %s', (litres, batch, decanted) => {
    expect(starterDecanted(litres, batch, HOME)).toBe(decanted);
  });

  test('a litre pitched whole takes a day, 2 L take two and one to settle, steps add up', () => {
    const days = (seed: number, want: number) =>
      starterLeadDays(stepUps(seed, want, GEAR, HOME) ?? [], 20, HOME);
    expect(days(100, 240)).toBe(1);
    expect(days(100, 380)).toBe(3);
    const two = stepUps(10, 300, GEAR, HOME) ?? [];
    const grow = two.reduce((sum, step) => sum + step.growDays, 0);
    expect(starterLeadDays(two, 20, HOME)).toBe(grow + 2);
    expect(starterLeadDays([], 20, HOME)).toBe(0);
    // a low flocculator stands cold two days, common practice, no source
    expect(starterLeadDays(two, 20, HOME, 'low')).toBe(grow + 4);
  });
});

test('built larger to keep some: both parts are there, and what is kept is generation 0', () => {
  const kept = buildAndKeep(100, 200, 100, GEAR, HOME);
  expect(kept).not.toBeNull();
  expect(kept?.endB).toBe(300);
  expect(kept?.keepShare).toBeCloseTo(1 / 3, 12);
  expect(kept?.generation).toBe(0);
  // 200 new billion at 1.4 a gram: 143 g, 1.43 L.
  expect(kept?.litres).toBeCloseTo(1.4286, 3);
  expect(buildAndKeep(100, 600, 300, GEAR, HOME)).toBeNull();
});

test('a vitality start for 20 L: a litre, 100 g, four hours before', () => {
  expect(vitalityStart(20, HOME)).toEqual({ hoursBefore: 4, litres: 1, extractG: 100 });
});

describe('packs, or fewer and a starter', () => {
  const gear = { ...GEAR, vessels: 1 };

  test('a dear pack is worth a starter, a cheap one is not', () => {
    // Starter: 45 min × 0.08 = 3.60 and about 0.70 of wort.
    const want = { needB: 200, packViableB: 100, dry: false };
    expect(freshPitches({ ...want, packPrice: 9 }, gear, HOME)[0]?.packs).toBe(1);
    expect(freshPitches({ ...want, packPrice: 3 }, gear, HOME)[0]).toEqual({
      packs: 2,
      starterLitres: 0,
      cost: 6,
    });
  });

  test('dry yeast and houses without a vessel have packs alone', () => {
    const want = { needB: 350, packViableB: 100, packPrice: 9, dry: true };
    expect(freshPitches(want, gear, HOME)).toEqual([{ packs: 4, starterLitres: 0, cost: 36 }]);
    expect(freshPitches({ ...want, dry: false }, { ...gear, vessels: 0 }, HOME)).toHaveLength(1);
  });
});
