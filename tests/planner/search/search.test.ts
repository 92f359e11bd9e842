// What a search promises, whatever it finds: the same again, never worse, nothing broken without a reason.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Facts, type House, NO_FACTS } from '../../../planner/model/index.ts';
import { dateOrderPlan, freshOnlyPlan } from '../../../planner/search/baselines.ts';
import { Random } from '../../../planner/search/random.ts';
import { compareScores, Judge, type Score } from '../../../planner/search/score.ts';
import { defaultSteps, search } from '../../../planner/search/search.ts';
import { compile, FRESH, type Problem } from '../../../planner/timeline/problem.ts';
import { Timeline } from '../../../planner/timeline/timeline.ts';
import { unfold } from '../../../planner/timeline/unfold.ts';
import { seasons } from '../../builders/random-season.ts';
import { aBrew, aSeason, aTank, daysAfter, MONDAY } from '../../builders/season.ts';

const TODAY = '2027-02-25';
const on = () => false;
const problemOf = (house: House, facts: Facts = NO_FACTS) => compile(house, TODAY, facts, [], null);
const find = (problem: Problem, seed: number, steps: number, standing: Timeline | null = null) =>
  search(problem, { seed, steps, standing }, on);

const decided = (t: Timeline) =>
  [t.placed, t.day, t.tank, t.yeast, t.source, t.starter, t.crop, t.keep].map((list) => [...list]);

test('the same seed and steps give the same plan', () => {
  fc.assert(
    fc.property(seasons, fc.nat({ max: 1000 }), (house, seed) => {
      const [a, b] = [find(problemOf(house), seed, 800), find(problemOf(house), seed, 800)];
      expect(decided(b.timeline)).toEqual(decided(a.timeline));
      expect([b.score, b.steps]).toEqual([a.score, a.steps]);
    }),
    { numRuns: 12, seed: 1 },
  );
});

/** A plan that nobody would make: every number drawn by lot. */
function anyPlan(p: Problem, random: Random): Timeline {
  const t = new Timeline(p);
  for (let b = 0; b < p.brews.length; b++) {
    t.placed[b] = random.below(3) === 0 ? 0 : 1;
    t.day[b] = p.from + random.below(80);
    t.tank[b] = random.below(p.tanks.length);
    t.yeast[b] = random.below(p.yeasts.length);
    t.source[b] = random.below(p.jars.length + p.brews.length + 1) - 1;
  }
  unfold(t);
  return t;
}

test.each([1, 300])('the plan in force is never handed back worse, with %i steps', (steps) => {
  fc.assert(
    fc.property(seasons, fc.nat({ max: 1000 }), (house, seed) => {
      const p = problemOf(house);
      const judge = new Judge(p);
      for (const inForce of [find(p, seed, 1500).timeline, anyPlan(p, new Random(seed))]) {
        unfold(inForce);
        const before = judge.score(inForce);
        const found = find(p, seed + 1, steps, inForce);
        expect(compareScores(found.score, before)).toBeLessThanOrEqual(0);
      }
    }),
    { numRuns: 10, seed: 2 },
  );
});

test('the score that is handed back is that of the plan, judged from nothing', () => {
  fc.assert(
    fc.property(seasons, (house) => {
      const p = problemOf(house);
      const found = find(p, 7, 800);
      unfold(found.timeline);
      expect(new Judge(p).score(found.timeline)).toEqual(found.score);
    }),
    { numRuns: 15, seed: 3 },
  );
});

test('where nothing is fixed nothing is broken, and every brew is placed or left out with its priority', () => {
  fc.assert(
    fc.property(seasons, (house) => {
      const p = problemOf(house);
      const { score, timeline } = find(p, 1, 1500);
      expect(score.hard).toBe(0);
      const out = p.brews.filter((_, b) => !timeline.placed[b]);
      expect(score.leftOutCount).toBe(out.length);
      expect(score.leftOut).toBe(out.reduce((sum, brew) => sum + brew.priority, 0));
    }),
    { numRuns: 40, seed: 4 },
  );
});

test('where days are fixed, whatever is broken has a reason and a remedy', () => {
  const fixed = fc
    .tuple(seasons, fc.array(fc.integer({ min: 0, max: 20 }), { minLength: 6, maxLength: 6 }))
    .map(([house, days]) => ({
      ...house,
      brews: house.brews.map((row, i) => ({ ...row, brewOn: daysAfter(MONDAY, days[i] ?? 0) })),
    }));
  let broken = 0;
  fc.assert(
    fc.property(fixed, (house) => {
      const p = problemOf(house);
      const judge = new Judge(p);
      const { score, timeline: t } = find(p, 1, 800);
      let sum = 0;
      for (const rule of judge.hard) {
        rule.check(t, (amount, subject, other) => {
          const fact = { amount, subject, other };
          expect(Number.isInteger(amount) && amount > 0).toBe(true);
          for (const says of [rule.explain(t, fact), rule.remedy(t, fact)]) {
            expect(says).toMatch(/\.$/);
            expect(says).not.toMatch(/undefined|NaN|null|\?/);
          }
          sum += amount;
          broken++;
        });
      }
      expect(sum).toBe(score.hard);
      // a fixed brew that is brewed at all is brewed on its day
      house.brews.forEach((row, b) => {
        if (t.placed[b]) expect(t.day[b]).toBe(p.brews[b]?.days[0]);
        expect(row.brewOn).not.toBeNull();
      });
    }),
    { numRuns: 30, seed: 5 },
  );
  expect(broken).toBeGreaterThan(10);
});

test.each([
  ['no tank at all', { tanks: [] }],
  ['tanks that are too small', { tanks: [aTank({ minFillL: 1, maxFillL: 5 })] }],
  ['tanks that are too warm', { tanks: [aTank({ minC: 24, maxC: 30 })] }],
  ['no time before it is too late', { brews: [aBrew({ readyBy: '2027-01-10' })] }],
  ['no brew day in the season', { brewDays: ['sat' as const], to: '2027-03-04' }],
])('%s: the brew is left out and nothing is broken', (_what, part) => {
  const p = problemOf(aSeason(part));
  expect(find(p, 1, 300).score).toEqual({ hard: 0, leftOut: 1, leftOutCount: 1, cost: 0 });
});

test('where there is room for some, the important ones are brewed', () => {
  // packs come from 4 March on; 14 days in the one tank and a day of turnaround: the next on the 19th, a third never
  const p = problemOf(
    aSeason({
      to: '2027-03-20',
      tanks: [aTank()],
      brews: [
        aBrew({ brew: 'A', priority: 1 }),
        aBrew({ brew: 'B', priority: 5 }),
        aBrew({ brew: 'C', priority: 3 }),
      ],
    }),
  );
  const { score, timeline } = find(p, 1, 600);
  expect(score).toMatchObject({ hard: 0, leftOut: 1, leftOutCount: 1 });
  expect([...timeline.placed]).toEqual([0, 1, 1]);
});

test('the budget is kept, and a watcher may stop the search', () => {
  const p = problemOf(aSeason({ brews: ['A', 'B', 'C'].map((brew) => aBrew({ brew })) }));
  const whole = find(p, 1, 3000);
  expect(whole.steps).toBeGreaterThanOrEqual(3000);
  // the last move may overrun it by one brew's tries
  expect(whole.steps).toBeLessThan(3500);
  expect(whole.stopped).toBe(false);
  const told: number[] = [];
  const stopped = search(p, { seed: 1, steps: 3000 }, (done) => told.push(done) >= 2);
  expect(stopped.stopped).toBe(true);
  expect(stopped.steps).toBeLessThan(whole.steps);
  expect(compareScores(whole.score, stopped.score)).toBeLessThanOrEqual(0);
});

test('the budget grows with the season and ends', () => {
  const budgets = [0, 1, 24, 60, 500, 2000].map(defaultSteps);
  expect(budgets).toEqual([...budgets].sort((a, b) => a - b));
  expect(budgets[0]).toBeGreaterThan(1000);
  expect(budgets[5]).toBeLessThanOrEqual(1_000_000);
});

test('both baselines obey every hard rule; one of them pitches no slurry', () => {
  fc.assert(
    fc.property(seasons, (house) => {
      const p = problemOf(house);
      const judge = new Judge(p);
      const fresh = freshOnlyPlan(p, 1, 500, on);
      expect(judge.score(fresh).hard).toBe(0);
      for (let b = 0; b < p.brews.length; b++) {
        if (fresh.placed[b]) expect(fresh.source[b]).toBe(FRESH);
      }
      expect(judge.score(dateOrderPlan(p)).hard).toBe(0);
    }),
    { numRuns: 15, seed: 6 },
  );
});

const score = (part: Partial<Score>): Score => ({
  hard: 0,
  leftOut: 0,
  leftOutCount: 0,
  cost: 0,
  ...part,
});

test.each([
  [
    { hard: 1 },
    { leftOut: 99, leftOutCount: 99, cost: 99_999 },
    'a broken rule outweighs all else',
  ],
  [{ leftOut: 3, leftOutCount: 1 }, { leftOut: 2, leftOutCount: 2, cost: 9999 }, 'priority first'],
  [{ leftOut: 2, leftOutCount: 2 }, { leftOut: 2, leftOutCount: 1, cost: 9999 }, 'then the count'],
  [{ cost: 2 }, { cost: 1 }, 'then the cost'],
])('%j is worse than %j (%s)', (worse, better, _why) => {
  expect(compareScores(score(worse), score(better))).toBeGreaterThan(0);
  expect(compareScores(score(better), score(worse))).toBeLessThan(0);
  expect(compareScores(score(better), score(better))).toBe(0);
});

test('the generator of random numbers gives the same ones for a seed, evenly', () => {
  const draw = (seed: number) => {
    const random = new Random(seed);
    return Array.from({ length: 6000 }, () => random.below(6));
  };
  expect(draw(42)).toEqual(draw(42));
  expect(draw(42)).not.toEqual(draw(43));
  for (let face = 0; face < 6; face++) {
    // 1,000 expected; the standard deviation is 29
    const count = draw(42).filter((n) => n === face).length;
    expect(Math.abs(count - 1000)).toBeLessThan(120);
  }
});
