// A plan as it is followed: what it cost to move away from the plan before it is past, and no part of its sum any more.
import type { CostPart, Plan } from '../model/index.ts';
import { RULES } from '../rules/index.ts';

const PASSING = new Set(RULES.flatMap((rule) => (isPassing(rule) ? [rule.id] : [])));

function isPassing(rule: (typeof RULES)[number]): boolean {
  return rule.level === 'cost' && rule.againstInForce === true;
}

/** The plan without the charges for differing from an earlier one. A plan without any comes back as it is. */
export function settledPlan(plan: Plan): Plan {
  const passing = plan.costs.filter((line) => PASSING.has(line.rule));
  if (passing.length === 0) return plan;
  const of = (part: CostPart) =>
    passing.reduce((sum, line) => sum + (line.part === part ? line.amountMinor : 0), 0);
  const [cash, work, risk] = [of('cash'), of('work'), of('risk')];
  const { totals } = plan;
  return {
    ...plan,
    // it was proven of the sum with them in it
    bound: null,
    noBound:
      'How far this is above the best possible is not known: it was worked out with what changing the plan cost.',
    costs: plan.costs.filter((line) => !PASSING.has(line.rule)),
    totals: {
      ...totals,
      costMinor: totals.costMinor - cash - work - risk,
      cashMinor: totals.cashMinor - cash,
      workMinor: totals.workMinor - work,
      riskMinor: totals.riskMinor - risk,
    },
  };
}
