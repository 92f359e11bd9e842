// Weighs a plan rule by rule, so that what decides between two plans can be named by the rule itself.
import type { CostPart } from '../model/index.ts';
import type { CostRule, Fact, HardRule, Rule } from '../rules/rule.ts';
import type { Judge } from '../search/score.ts';
import type { Timeline } from '../timeline/timeline.ts';

export type Weighed = {
  hard: Map<string, number>;
  cost: Map<string, number>;
  hardSum: number;
  costSum: number;
};

/** Amounts by rule of an unfolded plan. */
export function weigh(judge: Judge, t: Timeline): Weighed {
  const hard = new Map<string, number>();
  const cost = new Map<string, number>();
  let hardSum = 0;
  let costSum = 0;
  for (const rule of judge.hard) {
    let sum = 0;
    rule.check(t, (amount) => {
      sum += amount;
    });
    hard.set(rule.id, sum);
    hardSum += sum;
  }
  judge.joinHazards(t);
  for (const { rule, weight } of judge.costs) {
    let sum = 0;
    rule.check(t, weight, (amount) => {
      sum += amount;
    });
    cost.set(rule.id, sum);
    costSum += sum;
  }
  return { hard, cost, hardSum, costSum };
}

/** Everything that a hard rule finds in a plan. */
export function hardFindings(judge: Judge, t: Timeline): { rule: HardRule; fact: Fact }[] {
  const out: { rule: HardRule; fact: Fact }[] = [];
  for (const rule of judge.hard) {
    rule.check(t, (amount, subject, other) => out.push({ rule, fact: { amount, subject, other } }));
  }
  return out;
}

/** The rule that gained most from one plan to the other, or null if none did. */
export function decidingRule(judge: Judge, before: Weighed, after: Weighed): Rule | null {
  let worst: Rule | null = null;
  let most = 0;
  for (const rule of judge.hard) {
    const gain = (after.hard.get(rule.id) ?? 0) - (before.hard.get(rule.id) ?? 0);
    if (gain > most) {
      most = gain;
      worst = rule;
    }
  }
  if (worst) return worst;
  for (const { rule } of judge.costs) {
    const gain = (after.cost.get(rule.id) ?? 0) - (before.cost.get(rule.id) ?? 0);
    if (gain > most) {
      most = gain;
      worst = rule;
    }
  }
  return worst;
}

/** Cost by part: cash, work, risk. */
export function partSums(judge: Judge, weighed: Weighed): Record<CostPart, number> {
  const sums: Record<CostPart, number> = { cash: 0, work: 0, risk: 0 };
  for (const { rule } of judge.costs as readonly { rule: CostRule }[]) {
    sums[rule.part] += weighed.cost.get(rule.id) ?? 0;
  }
  return sums;
}
