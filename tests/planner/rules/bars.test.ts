// The rules' shortcuts against their checks: what a shortcut forbids, the check must find. Random whole plans.
//
// A shortcut may be silent where its rule would still find something:
// - a rule without one (too little alive, more drawn than there is) says nothing before the plan is unfolded;
// - packs in the cupboard are taken to be enough, though more may have to be ordered too late;
// - a starter begins days before the brew day, and the caller may ask about the brew day alone;
// - the harvest of a beer that is not brewed before is forbidden by one rule and passed over by the others.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { House } from '../../../planner/model/index.ts';
import { RULES } from '../../../planner/rules/index.ts';
import type { HardRule } from '../../../planner/rules/rule.ts';
import { Judge } from '../../../planner/search/score.ts';
import { compile, FRESH, type Problem } from '../../../planner/timeline/problem.ts';
import { Timeline } from '../../../planner/timeline/timeline.ts';
import { unfold } from '../../../planner/timeline/unfold.ts';
import { aBrew, aJar, aSeason, aYeast, daysAfter } from '../../builders/season.ts';

const WITH_SHORTCUT = RULES.filter(
  (rule): rule is HardRule & Required<Pick<HardRule, 'bars'>> =>
    rule.level === 'hard' && rule.bars !== undefined,
);

const STRAINS = ['Ash', 'Birch'] as const;
const maybe = <T>(value: fc.Arbitrary<T>) => fc.option(value, { nil: null });

const brew = fc.record({
  yeasts: fc.shuffledSubarray([...STRAINS], { minLength: 1 }),
  og: fc.integer({ min: 1030, max: 1090 }).map((points) => points / 1000),
  tankDays: fc.integer({ min: 7, max: 20 }),
  dryHopDay: maybe(fc.integer({ min: 2, max: 10 })),
  souring: maybe(fc.constantFrom('kettle' as const, 'mixed' as const)),
  additions: fc.constantFrom<string[]>([], ['fruit']),
});

const jar = fc.record({
  yeast: fc.constantFrom(...STRAINS),
  generation: fc.integer({ min: 1, max: 7 }),
  harvestedOn: fc.integer({ min: -40, max: 3 }).map((days) => daysAfter('2027-03-01', days)),
  sourceOg: fc.constantFrom(null, 1.045, 1.062, 1.07, 1.08),
  sourceSouring: maybe(fc.constantFrom('kettle' as const, 'mixed' as const)),
  sourceAdditions: fc.constantFrom<string[]>([], ['smoke']),
  sourceDryHopped: fc.boolean(),
  state: fc.constantFrom('sound' as const, 'watch' as const, 'suspect' as const),
});

const houses: fc.Arbitrary<House> = fc
  .record({
    brews: fc.array(brew, { minLength: 3, maxLength: 6 }),
    jars: fc.array(jar, { maxLength: 3 }),
    hand: fc.integer({ min: 0, max: 1 }),
    settleDays: fc.integer({ min: 0, max: 2 }),
    maxGeneration: fc.integer({ min: 1, max: 5 }),
    maxStorageDays: fc.integer({ min: 3, max: 30 }),
  })
  .map(({ brews, jars, hand, settleDays, maxGeneration, maxStorageDays }) =>
    aSeason({
      rules: { maxGeneration, maxStorageDays },
      store: { tempC: 3, maxJars: 12, jarMl: 500, settleDays },
      yeasts: STRAINS.map((yeast) =>
        aYeast({ yeast, packsOnHand: hand, packsMadeOn: '2027-01-10', maxGeneration: null }),
      ),
      jars: jars.map((row, i) => aJar({ jar: `J${i}`, ...row })),
      brews: brews.map((row, i) => aBrew({ brew: `B${i}`, ...row })),
    }),
  );

/** Numbers that lay a plan: the same ones, whatever the house. */
const decisions = fc.infiniteStream(fc.nat({ max: 9999 }));

const RULED_OUT = {
  brew: 'B0',
  day: null,
  tank: null,
  source: null,
  forbidden: [{ kind: 'fresh' as const }, { kind: 'jar' as const, jar: 'J0' }],
};

function randomPlan(p: Problem, next: (below: number) => number): Timeline {
  const t = new Timeline(p);
  for (let b = 0; b < p.brews.length; b++) {
    t.placed[b] = next(6) === 0 ? 0 : 1;
    t.day[b] = p.from + next(60);
    t.tank[b] = next(p.tanks.length);
    t.yeast[b] = next(p.yeasts.length);
    t.crop[b] = next(5) - 1;
    t.starter[b] = next(3) === 0 ? next(5) : 0;
    t.source[b] = next(p.jars.length + p.brews.length + 1) - 1;
  }
  unfold(t);
  return t;
}

test('whatever a shortcut forbids, its rule finds once the plan is so', () => {
  const seen = new Map<string, number>();
  fc.assert(
    fc.property(houses, decisions, (house, numbers) => {
      const next = (below: number) => (numbers.next().value ?? 0) % below;
      // half of the time the season is under way, so that orders and jars can come too late
      const p = compile(
        house,
        next(2) === 0 ? '2027-02-01' : '2027-03-10',
        {
          brewed: [],
          harvested: [],
          notBefore: [],
          begun: [],
          bought: [],
          goneJars: next(4) === 0 ? ['J0'] : [],
          measured: [],
          passed: [],
          lostPacks: [],
        },
        next(4) === 0 ? [RULED_OUT] : [],
        null,
      );
      const t = randomPlan(p, next);
      for (let b = 0; b < p.brews.length; b++) {
        if (!t.placed[b]) continue;
        const was = t.source[b] ?? FRESH;
        for (let source = FRESH; source < p.jars.length + p.brews.length; source++) {
          const barred = WITH_SHORTCUT.filter((rule) => rule.bars(t, b, source, t.useDay[b] ?? 0));
          if (barred.length === 0) continue;
          t.source[b] = source;
          unfold(t);
          for (const rule of barred) {
            let found = false;
            rule.check(t, (amount, subject) => {
              if (subject === b && amount > 0) found = true;
            });
            if (!found)
              throw new Error(`${rule.id} forbids source ${source} for brew ${b} in vain`);
            seen.set(rule.id, (seen.get(rule.id) ?? 0) + 1);
          }
          t.source[b] = was;
          unfold(t);
        }
      }
    }),
    { numRuns: 300, seed: 20270301 },
  );
  // every shortcut has been at work, or the property would say nothing about it
  expect([...seen.keys()].sort()).toEqual(WITH_SHORTCUT.map((rule) => rule.id).sort());
});

test('the judge asks every shortcut of the rules that the house has not relaxed', () => {
  const house = (relaxed: string[]) =>
    aSeason({ jars: [aJar({ sourceOg: 1.09, harvestedOn: '2027-02-25' })], relaxed });
  const barred = (relaxed: string[]) => {
    const p = compile(
      house(relaxed),
      '2027-02-01',
      {
        brewed: [],
        harvested: [],
        notBefore: [],
        begun: [],
        bought: [],
        goneJars: [],
        measured: [],
        passed: [],
        lostPacks: [],
      },
      [],
      null,
    );
    const t = new Timeline(p);
    t.placed[0] = 1;
    t.day[0] = p.from;
    unfold(t);
    return new Judge(p).bars(t, 0, 0, p.from);
  };
  expect(barred([])).toBe(true);
  expect(barred(['gravity-ceiling'])).toBe(false);
});
