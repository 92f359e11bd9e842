// The sums of a plan, as the page and the baselines show them.
import type { Progress, Totals } from '../model/index.ts';
import type { Judge, Score } from '../search/score.ts';
import type { Problem } from '../timeline/problem.ts';
import { copyDecisions, Timeline } from '../timeline/timeline.ts';
import { unfold } from '../timeline/unfold.ts';
import { partSums, weigh } from './weighing.ts';

export function totals(judge: Judge, t: Timeline): Totals {
  const weighed = weigh(judge, t);
  const score = judge.score(t);
  const parts = partSums(judge, weighed);
  let packs = 0;
  let late = 0;
  for (let i = 0; i < t.orderCount; i++) {
    const b = t.order[i] as number;
    if (t.done[b]) continue;
    packs += (t.packs[b] as number) - (t.packsFromHand[b] as number);
    late += t.late[b] as number;
  }
  return {
    hard: score.hard,
    leftOutPriority: score.leftOut,
    leftOut: score.leftOutCount,
    costMinor: score.cost,
    cashMinor: parts.cash,
    workMinor: parts.work,
    riskMinor: parts.risk,
    packs,
    deliveries: t.deliveryCount,
    lateDays: late,
  };
}

/** The parts of the best plan so far; worked out again only when its cost is another. `plan` is left as it is. */
export function partsTold(
  problem: Problem,
  judge: Judge,
): (best: Score, plan: Timeline) => Progress['parts'] {
  const copy = new Timeline(problem);
  let cost = Number.NaN;
  let told: Progress['parts'] = null;
  return (best, plan) => {
    if (best.cost === cost) return told;
    cost = best.cost;
    copyDecisions(plan, copy);
    unfold(copy);
    const { cash, work, risk } = partSums(judge, weigh(judge, copy));
    told = { cashMinor: cash, workMinor: work, riskMinor: risk };
    return told;
  };
}
