// The search with a clock beside it: as many steps as a time allows, and when its first whole plan stood.
import { Judge, type Score } from '../../planner/search/score.ts';
import { search } from '../../planner/search/search.ts';
import type { Problem } from '../../planner/timeline/problem.ts';

const cpuNow = (): number => {
  const used = process.cpuUsage();
  return (used.user + used.system) / 1e6;
};

export type Timed = {
  score: Score;
  seconds: number;
  steps: number;
  /** CPU seconds until the first plan with every brew placed and no hard rule broken; Infinity: never. */
  firstWhole: number;
};

/** Steps that the search makes in a CPU second on this season, the start left out. */
function stepsASecond(problem: Problem, seconds: number): number {
  const began = cpuNow();
  let first = -1;
  let firstSteps = 0;
  let steps = 0;
  search(problem, { seed: 1, steps: 1_000_000 }, (done) => {
    const now = cpuNow();
    if (first < 0) {
      first = now;
      firstSteps = done;
    }
    steps = done;
    return now - began > seconds && now - first > seconds / 2;
  });
  return Math.max(1, steps - firstSteps) / Math.max(1e-6, cpuNow() - first);
}

/** Searches for so many CPU seconds: the budget is set by a short run before, and the clock has the last word. */
export function searchFor(problem: Problem, seed: number, seconds: number): Timed {
  const rate = stepsASecond(problem, Math.min(1, seconds / 4));
  const budget = Math.max(500, Math.round(rate * seconds * 0.95));
  const began = cpuNow();
  let firstWhole = Infinity;
  const found = search(problem, { seed, steps: budget }, (_done, best) => {
    const spent = cpuNow() - began;
    if (firstWhole === Infinity && best.hard === 0 && best.leftOutCount === 0) firstWhole = spent;
    return spent > seconds;
  });
  return { score: found.score, seconds: cpuNow() - began, steps: found.steps, firstWhole };
}

export const judgeOf = (problem: Problem): Judge => new Judge(problem);

/** The middle of some figures; of an even number of them the mean of the two in the middle. */
export function middle(xs: readonly number[]): number {
  const sorted = [...xs].sort((a, b) => a - b);
  const half = sorted.length >> 1;
  const high = sorted[half] ?? 0;
  return sorted.length % 2 === 1 ? high : ((sorted[half - 1] ?? high) + high) / 2;
}

/** One number for a plan that leaves something out or breaks something: it counts as infinitely dear. */
export const costOf = (score: Score, leftOut: number): number =>
  score.hard > 0 || score.leftOut > leftOut ? Infinity : score.cost;
