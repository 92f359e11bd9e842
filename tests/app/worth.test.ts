// The figures of the savings page, worked out by hand from a small plan.
import { describe, expect, it } from 'vitest';
import { strainsOf, waysOf } from '../../app/pages/worth/weighing.ts';
import { aHouse, aPlan } from '../builders/plan.ts';

describe('waysOf', () => {
  it('puts this plan beside the two plain ways, with the minutes that the work stands for', () => {
    const plan = aPlan();
    // the house prices a minute at 0.08: work of 20.00 is 250 minutes
    const house = aHouse({ rules: { pricePerMinute: 0.08 } });
    const ways = waysOf(plan, house);
    expect(ways.map(({ id }) => id)).toEqual(['plan', 'freshOnly', 'dateOrder']);
    for (const way of ways) {
      const totals = way.id === 'plan' ? plan.totals : plan.baselines[way.id];
      expect(way).toMatchObject({ cashMinor: totals.cashMinor, riskMinor: totals.riskMinor });
      expect(way.workMinutes).toBe(Math.round(totals.workMinor / 8));
    }
  });

  it('tells no minutes where work has no price', () => {
    const ways = waysOf(aPlan(), aHouse({ rules: { pricePerMinute: 0 } }));
    expect(ways.map(({ workMinutes }) => workMinutes)).toEqual([null, null, null]);
  });
});

describe('strainsOf', () => {
  it('counts beers, packs, re-pitches and the longest line of each strain', () => {
    // Millrace fresh and Quill out of it, and a jar kept; Heron fresh with another strain
    expect(strainsOf(aPlan())).toEqual([
      {
        yeast: 'Mill Lane Ale',
        brews: 2,
        packs: 1,
        repitches: 1,
        oldest: 1,
        longest: 2,
        keptForNext: true,
      },
      {
        yeast: 'Harbour Lager',
        brews: 1,
        packs: 1,
        repitches: 0,
        oldest: 0,
        longest: 1,
        keptForNext: false,
      },
    ]);
  });

  it('is empty for a plan without brews', () => {
    expect(strainsOf({ ...aPlan(), brews: [], chains: [] })).toEqual([]);
  });
});
