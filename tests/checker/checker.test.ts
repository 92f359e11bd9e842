// Plans against the planning problem as it is stated: the shared seasons, and small seasons drawn by chance.
import { describe, expect, it } from 'vitest';
import { checkHouse, defaultToday, plan } from '../../planner/index.ts';
import { goodPlan } from './good-plan.ts';
import { checkPlan } from './index.ts';
import { randomHouse } from './random-house.ts';

describe('the shared seasons', () => {
  it.each(['lantern-shed', 'quay-seven'] as const)('%s breaks no rule', async (season) => {
    const { house, plan: good } = await goodPlan(season);
    expect(good.totals.hard).toBe(0);
    expect(good.brews.length + good.leftOut.length).toBe(house.brews.length);
    expect(good.brews.some((brew) => brew.source.kind === 'harvest')).toBe(true);
    expect(checkPlan(house, good)).toEqual([]);
  });
});

describe('seasons drawn by chance', () => {
  const seeds = Array.from({ length: 30 }, (_, at) => at + 1);

  it.each(seeds)('season %i: the planner and this checker agree', (seed) => {
    const house = randomHouse(seed);
    expect(checkHouse(house).filter((problem) => problem.level === 'error')).toEqual([]);
    const made = plan({ house, today: defaultToday(house), steps: 400, seed: 1 });
    const found = checkPlan(house, made);
    if (made.totals.hard === 0) expect(found).toEqual([]);
    else expect(found.length).toBeGreaterThan(0);
  });

  it('are varied enough to mean something', () => {
    const plans = seeds.map((seed) => {
      const house = randomHouse(seed);
      return plan({ house, today: defaultToday(house), steps: 50, seed: 1 });
    });
    const brews = plans.flatMap((made) => made.brews);
    expect(brews.filter((brew) => brew.source.kind === 'harvest').length).toBeGreaterThan(5);
    expect(brews.filter((brew) => brew.source.kind === 'fresh').length).toBeGreaterThan(20);
    expect(brews.filter((brew) => brew.starter !== null).length).toBeGreaterThan(5);
    expect(plans.some((made) => made.totals.hard > 0)).toBe(true);
    expect(plans.some((made) => made.totals.leftOut > 0)).toBe(true);
  });
});
