// Four tiny seasons in which one insight wins, and regressions named by what the search once missed.
//
// All sums are worked out from docs/planner.md. In these houses yeast never dies and a jar for the next season is worth
// nothing. A fresh pitch of 20 L at 12 °P wants 180 billion cells: one pack of 200 for 10.50, a delivery for 6.00. It grows
// to 800 billion, of which 0.65 are harvested: 520, enough for two pitches of 240. A harvest is 20 minutes at 0.08 = 1.60,
// a jar 0.40, the check before a pitch 0.80.
import { expect, test } from 'vitest';
import { type House, NO_FACTS } from '../../../planner/model/index.ts';
import { search } from '../../../planner/search/search.ts';
import { dayNumber } from '../../../planner/timeline/calendar.ts';
import { compile, FRESH } from '../../../planner/timeline/problem.ts';
import { aBrew, aJar, aSeason, aTank, aYeast, TWELVE_P, UNDYING } from '../../builders/season.ts';

const STEPS = 6000;

/** The best plan found for a house, looked up by brew. */
function best(house: House, today = '2027-02-10') {
  const p = compile(house, today, NO_FACTS, [], null);
  const { score, timeline: t } = search(p, { seed: 1, steps: STEPS }, () => false);
  const at = (brew: string) => p.brews.findIndex(({ name }) => name === brew);
  return {
    cost: score.cost,
    score,
    day: (brew: string) => t.day[at(brew)],
    placed: (brew: string) => t.placed[at(brew)] === 1,
    strain: (brew: string) => p.yeasts[t.yeast[at(brew)] ?? 0]?.row.yeast,
    /** 'fresh', the jar's code, or the brew whose harvest it is. */
    source: (brew: string) => {
      const s = t.source[at(brew)] ?? FRESH;
      return s === FRESH
        ? 'fresh'
        : s < p.jars.length
          ? p.jars[s]?.name
          : p.brews[s - p.jars.length]?.name;
    },
    t,
  };
}

const RULES = { ...UNDYING, endJarValue: 0 };
const twelveP = (brew: string, part: Parameters<typeof aBrew>[0] = {}) =>
  aBrew({ brew, og: TWELVE_P, value: 0, ...part });
const kegs = [aTank(), aTank({ tank: 'Keg B' }), aTank({ tank: 'Keg C' })];

test('consolidating strains: a brew gives up its favourite strain and spares a pack', () => {
  const house = (yeasts: string[]) =>
    aSeason({
      rules: RULES,
      tanks: kegs,
      yeasts: [
        aYeast({ packsOnHand: 0, packsMadeOn: null }),
        aYeast({ yeast: 'Ferry Ale', packsOnHand: 0, packsMadeOn: null }),
      ],
      brews: [twelveP('First'), twelveP('Second', { yeasts })],
    });
  const apart = best(house(['Ferry Ale']));
  const together = best(house(['Ferry Ale', 'Mill Lane Ale']));
  // two packs, one delivery: 21.00 + 6.00
  expect(apart.cost).toBe(2700);
  // one pack and its delivery 16.50, harvest, jar and check 2.80, the second choice 1.50: 6.20 less
  expect(together.cost).toBe(2080);
  expect(together.strain('Second')).toBe('Mill Lane Ale');
  expect(together.source('Second')).toBe('First');
});

test('splitting a harvest: two brews of one day share what the first beer gives', () => {
  const house = (maxJars: number) =>
    aSeason({
      rules: RULES,
      tanks: kegs,
      store: { tempC: 3, maxJars, jarMl: 500, settleDays: 1 },
      brews: [
        twelveP('First', { brewOn: '2027-03-01' }),
        twelveP('Left', { brewOn: '2027-03-27' }),
        twelveP('Right', { brewOn: '2027-03-27' }),
      ],
    });
  const split = best(house(2));
  // a pack, a delivery, a harvest, two jars, two checks: 16.50 + 1.60 + 0.80 + 1.60
  expect(split.cost).toBe(2050);
  expect([split.source('Left'), split.source('Right')]).toEqual(['First', 'First']);
  // with room for one jar the other brew wants a pack and, 26 days on, a delivery of its own: 33.00 + 2.80
  expect(best(house(1)).cost).toBe(3580);
});

test('waiting a week to save a pack: a beer that is seven days late costs less than a fresh pitch', () => {
  const house = (lateness: number) =>
    aSeason({
      rules: RULES,
      weights: { lateness },
      tanks: kegs,
      // brewed on 9 March it is ready on 5 April, 27 days on; the slurry of 15 March settles until the 16th
      brews: [
        twelveP('First', { brewOn: '2027-03-01' }),
        twelveP('Second', { notBefore: '2027-03-09', readyBy: '2027-04-05' }),
      ],
    });
  const waits = best(house(0.4));
  // a pack and its delivery 16.50, harvest, jar and check 2.80, seven days at 0.40
  expect(waits.cost).toBe(2210);
  expect(waits.day('Second')).toBe(dayNumber('2027-03-16'));
  // where lateness is dear: a second pack, which joins the delivery
  expect(best(house(9)).cost).toBe(2700);
});

test('brewing the pale one first: the other way round the dark beer shows in the pale one', () => {
  const house = (darkOn: string | null) =>
    aSeason({
      rules: RULES,
      tanks: [aTank()],
      brews: [
        twelveP('Dark', { ebc: 70, value: 100, brewOn: darkOn }),
        twelveP('Pale', { ebc: 6, value: 100 }),
      ],
    });
  // 16.50 + 2.80, and the risk of a first generation (0.006) a day in the cold (0.004 ÷ 7): 100 × (1 − e^−0.006571) = 0.65
  const free = best(house(null));
  expect(free.cost).toBe(1995);
  expect(free.day('Pale')).toBeLessThan(free.day('Dark') ?? 0);
  // 142.9 mL drawn (240 ÷ 2.1 ÷ 0.8) hold 0.0857 L of beer: 64 × 0.0857 ÷ 20.0857 = 0.273 EBC of 1 that shows, × 0.02:
  // 100 × (1 − e^−0.012033) = 1.20
  expect(best(house('2027-03-01')).cost).toBe(2050);
});

test('a starter that draws its yeast in time is seen, though on the brew day the jar is too old', () => {
  const found = best(
    aSeason({
      rules: { maxStorageDays: 30, endJarValue: 0 },
      jars: [aJar({ harvestedOn: '2027-02-10', generation: 1 })],
      brews: [aBrew({ brew: 'First', og: TWELVE_P, value: 0, brewOn: '2027-03-13' })],
    }),
    '2027-02-12',
  );
  // 31 days on the brew day, 30 or fewer when the starter begins: 3.60 for its work and 0.80 for the check, no pack
  expect(found.source('First')).toBe('J1');
  expect(found.score.hard).toBe(0);
  expect(found.cost).toBeLessThan(1050);
});

test('two large brews share a day and a delivery, and run on to the next brew day', () => {
  const found = best(
    aSeason({
      rules: { ...RULES, orderWindowDays: 0 },
      brewsPerDay: 2,
      brewLengthL: 15,
      deliveryCost: 20,
      tanks: kegs.slice(0, 2),
      // nothing is harvested from beer with fruit, so both want packs
      brews: ['First', 'Second'].map((brew) => twelveP(brew, { additions: ['fruit'] })),
    }),
  );
  // 2 × 10.50 + 20.00
  expect(found.cost).toBe(4100);
  expect(found.day('First')).toBe(found.day('Second'));
});

test('of two brews that matter as much, the one is left out that costs more', () => {
  const found = best(
    aSeason({
      to: '2027-03-10',
      rules: RULES,
      tanks: [aTank()],
      // the one that must be brewed first wants two packs: 20 L × 18 °P × 0.75 are more than 200 billion
      brews: [
        twelveP('Strong', { og: 1.074, readyBy: '2027-04-05' }),
        twelveP('Small', { readyBy: '2027-04-12' }),
      ],
    }),
  );
  expect([found.placed('Strong'), found.placed('Small')]).toEqual([false, true]);
});

test('a crop day and the source of the next brew are chosen together', () => {
  const found = best(
    aSeason({
      rules: RULES,
      tanks: [aTank({ tank: 'Cone', bottomOutlet: true }), aTank()],
      // emptied on the 15th, but cropped from the 6th on (5 days after the pitch): in time for the second
      brews: [
        twelveP('First', { brewOn: '2027-03-01' }),
        twelveP('Second', { brewOn: '2027-03-10' }),
      ],
    }),
  );
  expect(found.source('Second')).toBe('First');
  expect(found.cost).toBe(1930);
});
