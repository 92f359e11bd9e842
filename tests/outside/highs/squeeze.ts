// One random season seen three ways: the proven bound, the exact optimum, and the plan.
import { boundOf } from '../../../planner/bound/index.ts';
import { NO_FACTS, plan } from '../../../planner/index.ts';
import { Judge } from '../../../planner/search/score.ts';
import { compile } from '../../../planner/timeline/problem.ts';
import { solveExactly } from './exact.ts';
import { randomShape } from './seasons.ts';
import { SMALL_TODAY, smallSeason } from './small-season.ts';

export type Squeezed = {
  bound: number;
  optimum: number;
  plan: number;
  /** The plan leaves out what the optimum does, no more: only then its cost may be compared. */
  leftOutAlike: boolean;
};

/** Season `number` of `most` brews at most. The bound is aimed above the optimum, so that only the truth holds it back. */
export function squeeze(number: number, most: number, steps: number): Squeezed {
  const house = smallSeason(randomShape(number, most));
  const optimum = solveExactly(house, SMALL_TODAY);
  const problem = compile(house, SMALL_TODAY, NO_FACTS, [], null);
  const at = { leftOut: optimum.leftOutPriority, cost: Math.abs(optimum.costMinor) * 1.3 + 500 };
  // as large seasons are bounded, and as small ones are
  const coarse = number % 3 === 0;
  const effort = { turns: 120, visits: 6_000_000, levels: 1 + (number % 4), coarse };
  const bound = boundOf(problem, new Judge(problem), at, effort);
  if (!bound) throw new RangeError(`season ${number} has no bound`);
  const { totals } = plan({ house, today: SMALL_TODAY, steps });
  return {
    bound: bound.costMinor,
    optimum: optimum.costMinor,
    plan: totals.costMinor,
    leftOutAlike:
      totals.hard === 0 &&
      totals.leftOutPriority === optimum.leftOutPriority &&
      totals.leftOut === optimum.leftOutCount,
  };
}
