// Seasons drawn by chance in which parts of starters may be kept: the second judge finds nothing, and the cost adds up again.
import { describe, expect, it } from 'vitest';
import { defaultToday, type House, plan, replan } from '../../../planner/index.ts';
import { checkPlan } from '../../checker/index.ts';
import { randomHouse } from '../../checker/random-house.ts';
import { costByRule } from '../../outside/cost/sum.ts';

/** The season with that number, its packs five times as dear, where a part of a starter is more often worth its jar. */
function dearSeason(seed: number): House {
  const house = randomHouse(seed);
  return {
    ...house,
    starterGear: { vessels: 2, maxLitres: house.kind === 'home' ? 5 : 60, stirred: true },
    yeasts: house.yeasts.map((yeast) => ({ ...yeast, packPrice: yeast.packPrice * 5 })),
    rules: { ...house.rules, keptStarterJars: 1 + (seed % 2), reserve: seed % 3 === 0 ? 1 : 0 },
  };
}

const seeds = Array.from({ length: 40 }, (_, at) => at + 1);
const made = new Map(
  seeds.map((seed) => {
    const house = dearSeason(seed);
    return [seed, plan({ house, today: defaultToday(house), steps: 1500, seed: 1 })];
  }),
);

describe('seasons drawn by chance', () => {
  it.each(seeds)('season %i: judged alike, and recomputed to the minor unit', (seed) => {
    const house = dearSeason(seed);
    const found = made.get(seed);
    if (!found) throw new RangeError(`no season ${seed}`);
    expect(found.bound).toBeNull();
    if (found.totals.hard > 0) expect(checkPlan(house, found).length).toBeGreaterThan(0);
    else {
      expect(checkPlan(house, found)).toEqual([]);
      const sum = [...costByRule(house, found, null).values()].reduce((a, b) => a + b, 0);
      expect(sum).toBe(found.totals.costMinor);
    }
    // the plan in force, planned anew with nothing told, is no worse
    const again = replan({ house, today: found.today, inForce: found, steps: 300, seed: 2 }).plan;
    expect(again.totals.hard).toBeLessThanOrEqual(found.totals.hard);
    if (again.totals.hard === found.totals.hard && again.totals.leftOut === found.totals.leftOut)
      expect(again.totals.costMinor).toBeLessThanOrEqual(found.totals.costMinor);
  });

  it('keep parts of starters often enough to mean something', () => {
    const kept = [...made.values()].flatMap(({ harvests }) =>
      harvests.filter(({ ofStarter }) => ofStarter),
    );
    expect(kept.length).toBeGreaterThan(5);
  });
});
