// The sums of a plan, as the page and the baselines show them.
import type { Totals } from '../model/index.ts';
import type { Judge } from '../search/score.ts';
import type { Timeline } from '../timeline/timeline.ts';
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
