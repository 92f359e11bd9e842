// The proven bound: worked on paper where that can be done, and never above what a plan was found to cost.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { z } from 'zod';
import { boundOf } from '../../../planner/bound/index.ts';
import { type House, NO_FACTS, type PlannedBrew, plan, replan } from '../../../planner/index.ts';
import { type BrewedFact, Facts, Pin, type Progress } from '../../../planner/model/index.ts';
import { Judge } from '../../../planner/search/score.ts';
import { compile } from '../../../planner/timeline/problem.ts';
import { seasons } from '../../builders/random-season.ts';
import { aBrew, aSeason, aYeast, TWELVE_P, UNDYING } from '../../builders/season.ts';

const TODAY = '2027-02-01';

type How = { levels?: number; coarse?: boolean };

function bound(house: House, at: { leftOut: number; cost: number }, how: How = {}): number | null {
  const problem = compile(house, TODAY, NO_FACTS, [], null);
  const effort = { turns: 150, visits: 5_000_000, levels: 1, ...how };
  return boundOf(problem, new Judge(problem), at, effort)?.costMinor ?? null;
}

describe('the bound on paper', () => {
  const one = aSeason({
    rules: { ...UNDYING, orderWindowDays: 0, endJarValue: 0 },
    deliveryCost: 6,
    starterGear: { vessels: 0, maxLitres: 2, stirred: false },
    yeasts: [aYeast({ packCellsB: 100, packPrice: 9, packsOnHand: 0, packsMadeOn: null })],
    brews: [aBrew({ og: TWELVE_P, volumeL: 20, readyBy: null })],
  });

  it('is two packs and a delivery where one brew wants 180 billion cells out of packs of 100', () => {
    // 2 × 9.00 + 6.00; 200 ÷ 180 = 1.1 times the need costs nothing
    expect(bound(one, { leftOut: 0, cost: 5000 })).toBe(2400);
  });

  it('is nothing where the brew may be left out', () => {
    expect(bound(one, { leftOut: 1, cost: 5000 })).toBe(0);
  });

  it('is none where a brew that may not be left out fits nowhere', () => {
    const nowhere = { ...one, tanks: one.tanks.map((tank) => ({ ...tank, maxFillL: 15 })) };
    expect(bound(nowhere, { leftOut: 0, cost: 5000 })).toBeNull();
  });
});

describe('a plan without a bound', () => {
  const house = aSeason({ brews: [aBrew({ brew: 'Alone' })] });
  const why = (change: Partial<House>, steps: number) => {
    const made = plan({ house: { ...house, ...change }, today: TODAY, steps });
    expect(made.bound).toBeNull();
    return made.noBound;
  };

  it('says that it was planned too shortly', () => {
    // 500 steps a brew, one brew
    expect(why({}, 499)).toMatch(/takes 500 steps .* these were 499/);
    expect(plan({ house, today: TODAY, steps: 500 }).noBound).toBeUndefined();
  });

  it('says that a rule is broken', () => {
    const brews = house.brews.map((brew) => ({ ...brew, brewOn: '2027-01-04' }));
    expect(why({ brews }, 2000)).toMatch(/a rule is broken/);
  });

  it('says that parts of starters may be kept', () => {
    const rules = { ...house.rules, keptStarterJars: 1 };
    expect(why({ rules }, 2000)).toMatch(/part of a starter/);
  });

  it('says that planning was stopped', () => {
    const made = plan({ house, today: TODAY, steps: 2000 }, () => true);
    expect(made.noBound).toMatch(/stopped/);
  });
});

describe('the bound', () => {
  const finely = { coarse: false };
  // as seasons of more than twelve brews are looked at
  const coarsely = { coarse: true };

  it.each<How>([
    { levels: 1, ...finely },
    { levels: 3, ...finely },
    { levels: 3, ...coarsely },
  ])(
    'is never above the cost of a plan: $levels generations told apart, coarse: $coarse',
    (how) => {
      fc.assert(
        fc.property(seasons, (house) => {
          const { totals } = plan({ house, today: TODAY, steps: 2000 });
          fc.pre(totals.hard === 0);
          // aimed too high, so that nothing holds it back but the truth
          const aim = { leftOut: totals.leftOutPriority, cost: totals.costMinor * 1.5 + 1000 };
          const found = bound(house, aim, how);
          expect(found).not.toBeNull();
          expect(found).toBeLessThanOrEqual(totals.costMinor);
        }),
        { numRuns: 8, seed: 11 },
      );
    },
  );

  it('is another one somewhere where slurry is told apart by stretches of days', () => {
    const at = { leftOut: 0, cost: 10_000 };
    const differs = fc
      .sample(seasons, { numRuns: 12, seed: 11 })
      .filter((house) => bound(house, at, finely) !== bound(house, at, coarsely));
    expect(differs).not.toEqual([]);
  });

  it('is never above the cost of a re-plan, with a brewed beer, a pinned one and a plan in force', () => {
    fc.assert(
      fc.property(seasons, (house) => {
        const before = plan({ house, today: TODAY, steps: 1500 });
        const [first, second] = before.brews;
        fc.pre(before.totals.hard === 0 && first !== undefined && second !== undefined);
        if (!first || !second) return;
        const today = first.day;
        const facts = Facts.parse({ brewed: [asBrewed(first)] });
        const pins = [Pin.parse({ brew: second.brew, day: second.day })];
        const { totals } = replan({ house, today, facts, pins, inForce: before, steps: 1500 }).plan;
        fc.pre(totals.hard === 0);
        const problem = compile(house, today, facts, pins, before);
        const aim = { leftOut: totals.leftOutPriority, cost: totals.costMinor * 1.5 + 1000 };
        const effort = { turns: 100, visits: 5_000_000, levels: 2 };
        const found = boundOf(problem, new Judge(problem), aim, effort);
        expect(found).not.toBeNull();
        expect(found?.costMinor).toBeLessThanOrEqual(totals.costMinor);
      }),
      { numRuns: 10, seed: 5 },
    );
  });
});

describe('the bound beside a search', () => {
  it('is told while the search goes on, with the cost by part, and only rises', () => {
    fc.assert(
      fc.property(seasons, (house) => {
        const told: Progress[] = [];
        const steps = 500 * house.brews.length;
        const made = plan({ house, today: TODAY, steps }, (progress) => told.push(progress) < 0);
        for (const { parts, costMinor } of told) {
          if (!parts) throw new Error('the parts are told with the cost');
          expect(parts.cashMinor + parts.workMinor + parts.riskMinor).toBe(costMinor);
        }
        fc.pre(made.bound !== null);
        const bounds = told.flatMap(({ boundMinor }) => boundMinor ?? []);
        expect(bounds.length).toBeGreaterThan(0);
        for (const minor of bounds) expect(minor).toBeLessThanOrEqual(made.totals.costMinor);
        expect(made.bound?.costMinor).toBeGreaterThanOrEqual(Math.max(...bounds));
      }),
      { numRuns: 6, seed: 3 },
    );
  });

  it('is stated with a re-plan too, and none where the search was too short', () => {
    const [house] = fc.sample(seasons, { numRuns: 1, seed: 8 });
    if (!house) throw new Error('a season');
    const inForce = plan({ house, today: TODAY, steps: 500 * house.brews.length });
    const again = replan({ house, today: TODAY, inForce, steps: 500 * house.brews.length }).plan;
    expect(inForce.totals.hard).toBe(0);
    expect(again.bound?.costMinor).toBeLessThanOrEqual(again.totals.costMinor);
    expect(plan({ house, today: TODAY, steps: 499 * house.brews.length }).bound).toBeNull();
  });
});

/** The news that a brew was brewed just as planned. */
function asBrewed(brew: PlannedBrew): z.input<typeof BrewedFact> {
  const { source } = brew;
  return {
    brew: brew.brew,
    day: brew.day,
    tank: brew.tank,
    yeast: brew.yeast,
    source:
      source.kind === 'fresh'
        ? { kind: 'fresh', packs: source.packs, packsFromHand: source.packsFromHand }
        : source.kind === 'jar'
          ? { kind: 'jar', jar: source.jar, drawMl: source.drawMl }
          : { kind: 'harvest', brew: source.brew, drawMl: source.drawMl },
    starterLitres: brew.starter?.litres ?? 0,
    generation: brew.generation,
    pitchedB: brew.pitchedB,
    emptiedOn: null,
  };
}
