// One tank, ample yeast, only lateness priced: the search against the exact order, by dynamic programming over subsets.
//
// Outside source: the single machine with weighted tardiness, cases by the recipe of Potts & Van Wassenhove, Operations Research 33
// (1985); the optimum by Held & Karp's dynamic programming (1962) over sets of jobs, in tests/bench/scheduling.ts.
import { expect, test } from 'vitest';
import { NO_FACTS } from '../../../planner/index.ts';
import { search } from '../../../planner/search/search.ts';
import { compile } from '../../../planner/timeline/problem.ts';
import { asSeason, jobsOf, leastTardiness } from '../../bench/scheduling.ts';

const CASES = [
  { rdd: 0.2, tf: 0.6 },
  { rdd: 0.6, tf: 0.8 },
  { rdd: 1, tf: 0.4 },
  { rdd: 0.8, tf: 1 },
] as const;

test.each(CASES)('eleven brews in the best order, due dates %o', ({ rdd, tf }) => {
  const jobs = jobsOf(11, rdd, tf, 1100 + Math.round(rdd * 50 + tf * 10));
  const problem = compile(asSeason(jobs), '2027-01-01', NO_FACTS, [], null);
  const { score } = search(problem, { seed: 1, steps: 5000 }, () => false);
  expect(score).toEqual({ hard: 0, leftOut: 0, leftOutCount: 0, cost: leastTardiness(jobs) });
});
