// What one more of something would save: worked on paper where a season is small enough, and held to fresh plans.
import { describe, expect, it } from 'vitest';
import { plan, type SeasonLimits, seasonLimits } from '../../../planner/index.ts';
import { widen } from '../../../planner/limits/list.ts';
import type { House } from '../../../planner/model/index.ts';
import { aBrew, aSeason, aTank, MONDAY, UNDYING } from '../../builders/season.ts';

const today = '2027-02-01';
const STEPS = 400;

/** Two beers with fruit, so that neither gives yeast to the other, wanted on one day; one tank, undying packs. */
const oneTank = (part: Partial<House> = {}): House =>
  aSeason({
    tanks: [aTank()],
    rules: UNDYING,
    starterGear: { vessels: 0, maxLitres: 0, stirred: false },
    brews: ['Sloe', 'Bullace'].map((brew) =>
      aBrew({ brew, additions: ['fruit'], notBefore: MONDAY, readyBy: '2027-03-28' }),
    ),
    ...part,
  });

function asked(house: House): SeasonLimits {
  const request = { house, today, steps: STEPS };
  return seasonLimits(request, plan(request));
}

describe('seasonLimits', () => {
  it('finds that a second tank saves the wait for the first', () => {
    // brewed 1 March, emptied 15 March after 14 tank days, ready 28 March after 13 days of conditioning: in time.
    // The second waits for 1 day of turnaround: 16 March, ready 12 April, 15 days late at 0.40 a day = 6.00.
    // 15 days apart, their packs come in two deliveries; on one day in one: 6.00 more, in cash.
    const { today: now, limits } = asked(oneTank());
    expect(now.lateDays).toBe(15);
    const [first, ...others] = limits;
    expect(first).toMatchObject({
      id: 'tank:Keg A',
      savesMinor: 1200,
      savesCashMinor: 600,
      savesWorkMinor: 0,
      savesRiskMinor: 600,
      lateDaysFewer: 15,
      verdict: 'Saves at least €12, €6 of it cash, with 15 fewer late days.',
    });
    // no other limit holds this season back
    for (const other of others) expect(other.savesMinor, other.id).toBe(0);
  });

  it('counts a brew that finds a place before any money', () => {
    // ready-by + 28 days is the last that is brewed at all: 12 April is past 14 March + 28 = 11 April
    const house = oneTank();
    const brews = house.brews.map((brew) => ({ ...brew, readyBy: '2027-03-14' }));
    const { today: now, limits } = asked({ ...house, brews });
    expect(now.leftOut).toBe(1);
    expect(limits[0]).toMatchObject({ id: 'tank:Keg A', leftOutFewer: 1 });
    expect(limits[0]?.verdict).toMatch(/^1 more brew would find a place/);
  });

  it('tells what a plan of the widened house from nothing costs, too', () => {
    const house = oneTank();
    const { today: now, limits } = asked(house);
    for (const { id, house: wide } of widen(house)) {
      const anew = plan({ house: wide, today, steps: 4000 });
      const saved = limits.find((limit) => limit.id === id)?.savesMinor;
      expect(saved, id).toBe(now.costMinor - anew.totals.costMinor);
    }
  });

  it('gives the same answers to the same question, and keeps what it has when it is stopped', () => {
    expect(asked(oneTank())).toEqual(asked(oneTank()));
    const request = { house: oneTank(), today, steps: STEPS };
    const made = plan(request);
    let told = 0;
    const cut = seasonLimits(request, made, ({ stepsDone }) => {
      told = Math.max(told, stepsDone);
      return stepsDone > 2.5 * STEPS;
    });
    expect(cut.stopped).toBe(true);
    expect(cut.limits.length).toBeLessThan(asked(oneTank()).limits.length);
    expect(told).toBeGreaterThan(2.5 * STEPS);
  });
});

describe('widen', () => {
  it('asks for tanks of one build once, and not for what the house has no use of', () => {
    const house = aSeason({ brewDays: ['sat', 'sun'] });
    const ids = widen(house).map(({ id }) => id);
    expect(ids).toEqual([...new Set(ids)]);
    expect(ids.filter((id) => id.startsWith('brew-day:'))).toHaveLength(5);
    expect(ids).not.toContain('conditioning');
  });

  it('names a tank as no other is named', () => {
    const house = aSeason({ tanks: [aTank(), aTank({ tank: 'Keg A 2', maxFillL: 40 })] });
    const wide = widen(house).find(({ id }) => id === 'tank:Keg A')?.house.tanks ?? [];
    expect(wide.map(({ tank }) => tank)).toEqual(['Keg A', 'Keg A 2', 'Keg A 3']);
  });
});
