// How good a plan is: three levels compared in order, worked out by asking every rule. Names no rule.
import { RULES } from '../rules/index.ts';
import type { CostRule, HardRule, HazardRule, LeftOutRule } from '../rules/rule.ts';
import type { Problem } from '../timeline/problem.ts';
import type { Timeline } from '../timeline/timeline.ts';

/** The three levels: hard rules broken, brews left out (priority, then count), cost in minor units. */
export type Score = { hard: number; leftOut: number; leftOutCount: number; cost: number };

export const WORST: Score = {
  hard: Number.MAX_SAFE_INTEGER,
  leftOut: Number.MAX_SAFE_INTEGER,
  leftOutCount: Number.MAX_SAFE_INTEGER,
  cost: Number.MAX_SAFE_INTEGER,
};

/** Negative if a is the better plan. */
export function compareScores(a: Score, b: Score): number {
  return (
    a.hard - b.hard || a.leftOut - b.leftOut || a.leftOutCount - b.leftOutCount || a.cost - b.cost
  );
}

type Weighted<R> = { rule: R; weight: number };

/** The rules of one house: which forbid, which cost, with the weights that hold there. */
export class Judge {
  readonly hard: readonly HardRule[];
  readonly relaxed: readonly Weighted<HardRule>[];
  readonly leftOut: readonly LeftOutRule[];
  readonly hazards: readonly Weighted<HazardRule>[];
  readonly costs: readonly Weighted<CostRule>[];

  constructor(readonly problem: Problem) {
    const own = problem.house.weights;
    const kind = problem.house.kind;
    const hard: HardRule[] = [];
    const relaxed: Weighted<HardRule>[] = [];
    const leftOut: LeftOutRule[] = [];
    const hazards: Weighted<HazardRule>[] = [];
    const costs: Weighted<CostRule>[] = [];
    for (const rule of RULES) {
      if (rule.level === 'hard') {
        if (rule.relaxedTo && problem.relaxed.has(rule.id)) {
          relaxed.push({ rule, weight: own[rule.id] ?? rule.relaxedTo[kind] });
        } else hard.push(rule);
      } else if (rule.level === 'left-out') leftOut.push(rule);
      else if (rule.level === 'hazard') {
        hazards.push({ rule, weight: own[rule.id] ?? rule.weight[kind] });
      } else costs.push({ rule, weight: own[rule.id] ?? rule.weight?.[kind] ?? 1 });
    }
    this.hard = hard;
    this.relaxed = relaxed;
    this.leftOut = leftOut;
    this.hazards = hazards;
    this.costs = costs;
  }

  private sum = 0;
  private count = 0;
  private hazard: Float64Array = new Float64Array(0);
  private readonly add = (amount: number): void => {
    this.sum += amount;
    this.count++;
  };
  private readonly addHazard = (amount: number, subject: number): void => {
    this.hazard[subject] = (this.hazard[subject] as number) + amount;
  };

  /** Scores an unfolded plan. Stops after the first level that is worse than `limit`, leaving the rest as worst. */
  score(t: Timeline, limit: Score = WORST): Score {
    this.sum = 0;
    for (let i = 0; i < this.hard.length; i++) this.hard[i]?.check(t, this.add);
    const hard = this.sum;
    if (hard > limit.hard) return { ...WORST, hard };
    this.sum = 0;
    this.count = 0;
    for (let i = 0; i < this.leftOut.length; i++) this.leftOut[i]?.check(t, this.add);
    const leftOut = this.sum;
    const leftOutCount = this.count;
    if (hard === limit.hard && leftOut > limit.leftOut) {
      return { ...WORST, hard, leftOut, leftOutCount };
    }
    this.joinHazards(t);
    this.sum = 0;
    for (let i = 0; i < this.costs.length; i++) {
      const c = this.costs[i] as Weighted<CostRule>;
      c.rule.check(t, c.weight, this.add);
    }
    return { hard, leftOut, leftOutCount, cost: this.sum };
  }

  /** Sums the hazards of every pitch into `t.hazard`, as the cost of risk needs them. */
  joinHazards(t: Timeline): void {
    this.hazard = t.hazard;
    t.hazard.fill(0);
    for (let i = 0; i < this.hazards.length; i++) {
      const h = this.hazards[i] as Weighted<HazardRule>;
      h.rule.check(t, h.weight, this.addHazard);
    }
    for (let i = 0; i < this.relaxed.length; i++) {
      const r = this.relaxed[i] as Weighted<HardRule>;
      r.rule.check(t, (_amount, subject) => this.addHazard(r.weight, subject));
    }
  }

  /** Whether a hard rule is known to forbid this source for brew b on this day: a shortcut of the rules' own. */
  bars(t: Timeline, b: number, source: number, useDay: number): boolean {
    for (let i = 0; i < this.hard.length; i++) {
      const rule = this.hard[i] as HardRule;
      if (rule.bars?.(t, b, source, useDay)) return true;
    }
    return false;
  }
}
