// A tiny season in which one pack and a larger starter feed two brews, and what holds of a part kept of a starter.
//
// All sums are worked out from docs/planner.md and the figures at the head of the season's builder.
import { describe, expect, it } from 'vitest';
import { type House, NO_FACTS } from '../../../planner/model/index.ts';
import { plan } from '../../../planner/plan.ts';
import { Judge } from '../../../planner/search/score.ts';
import { search } from '../../../planner/search/search.ts';
import { KEPT } from '../../../planner/timeline/kept.ts';
import { compile, FRESH } from '../../../planner/timeline/problem.ts';
import { Timeline } from '../../../planner/timeline/timeline.ts';
import { unfold } from '../../../planner/timeline/unfold.ts';
import { TODAY, twoOfOnePack } from '../../builders/kept-starter.ts';
import { checkPlan } from '../../checker/index.ts';

const made = (house: House) => plan({ house, today: TODAY, seed: 1, steps: 6000 });

describe('one pack and a larger starter for two brews', () => {
  it('saves a pack and its delivery', () => {
    // two packs, each with a delivery: 2 × 46.00
    expect(made(twoOfOnePack(0)).totals.costMinor).toBe(9200);
    const kept = made(twoOfOnePack(1));
    // 2 L (200 g) grow 200 billion to 200 + 200 × 1.4 = 480: 180 for First, 300 left for the 240 of Second; 1 L gives only
    // 200 + 100 × (2.8 − 1.4 × 0.6 ÷ 2.1 − 1.4) = 300. A pack and its delivery 46.00, wort 1.80, starter work 3.60, jar
    // 0.40, check 0.80: 52.60, which is 39.40 less
    expect(kept.totals.costMinor).toBe(5260);
    expect(kept.totals.packs).toBe(1);
    const [first, second] = kept.brews;
    expect(first?.starter?.litres).toBe(2);
    expect(first?.starter?.finalB).toBeCloseTo(480, 0);
    expect(first?.pitchedB).toBeCloseTo(180, 0);
    expect(second?.source).toMatchObject({
      kind: 'harvest',
      brew: 'First',
      ofStarter: true,
      harvestedOn: '2027-03-03',
      ageDays: 24,
      jars: 1,
    });
    // a starter adds no generation
    expect(second?.generation).toBe(0);
    expect(kept.harvests).toMatchObject([{ brew: 'First', ofStarter: true, generation: 0 }]);
    expect(first?.why).toContain(
      'Its starter is made larger, so that a part of it can be kept for Second.',
    );
    // a pack and its delivery instead of jar and check, 44.80; and all of First's 480 in its wort, 2.67 times its need: 1.17
    expect(second?.why[0]).toBe(
      'Yeast kept from the starter of First. The next best is fresh packs: €45.97 dearer, mostly for packs bought.',
    );
    expect(kept.bound).toBeNull();
    expect(checkPlan(twoOfOnePack(1), kept)).toEqual([]);
  });

  it('is the best of all that can be decided', () => {
    const p = compile(twoOfOnePack(1), TODAY, NO_FACTS, [], null);
    const judge = new Judge(p);
    const t = new Timeline(p);
    // days are fixed and the tanks alike: crop, starters and the source of Second are all that is left
    let least = Infinity;
    for (const crop of [-1, KEPT])
      for (const source of [FRESH, 0])
        for (let one = 0; one <= 4; one++)
          for (let two = 0; two <= 4; two++) {
            t.placed.fill(1);
            t.day.set(p.brews.map((brew) => brew.fixedDay));
            t.tank.set([0, 1]);
            t.crop.set([crop, -1]);
            t.source.set([FRESH, source]);
            t.starter.set([one, two]);
            unfold(t);
            const score = judge.score(t);
            if (score.hard === 0) least = Math.min(least, score.cost);
          }
    expect(least).toBe(5260);
    expect(search(p, { seed: 1, steps: 6000 }, () => false).score.cost).toBe(least);
  });

  it('ends where the jar is past its storage limit, or full', () => {
    // a starter on the jar would begin two days before the 27th, still far past 15 days
    expect(made(twoOfOnePack(1, { maxStorageDays: 15 })).totals.costMinor).toBe(9200);
    // 240 billion are 142.9 mL at 2.1 × 0.8 billion per mL: more than one jar of 140
    const small = twoOfOnePack(1);
    // so a starter of 1 L each, First's 300 leave 120 and those grow by 140: 46.00 + 2 × 4.50 + 0.40 + 0.80
    const inOne = made({ ...small, store: { ...small.store, jarMl: 140 } });
    expect(inOne.totals.costMinor).toBe(5620);
    // or two jars of one starter
    const two = twoOfOnePack(2);
    expect(made({ ...two, store: { ...two.store, jarMl: 140 } }).totals.costMinor).toBe(5300);
  });
});
