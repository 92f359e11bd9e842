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

  /** Those that look at single brews, and those that look at the whole plan. */
  private readonly barring: readonly HardRule[];
  private readonly hardAt: readonly HardRule[];
  private readonly hardWhole: readonly HardRule[];
  private readonly costAt: readonly Weighted<CostRule>[];
  private readonly slotAt: readonly Weighted<CostRule>[];
  private readonly costWhole: readonly Weighted<CostRule>[];

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
    this.barring = hard.filter((rule) => rule.bars);
    this.hardAt = hard.filter((rule) => rule.at);
    this.hardWhole = hard.filter((rule) => !rule.at);
    this.costAt = costs.filter(({ rule }) => rule.at);
    this.slotAt = this.costAt.filter(({ rule }) => rule.follows === 'slot');
    this.costWhole = costs.filter(({ rule }) => !rule.at);
  }

  private sum = 0;
  private count = 0;
  private hazardSum = 0;
  private readonly add = (amount: number): void => {
    this.sum += amount;
    this.count++;
  };
  private readonly addHazard = (amount: number): void => {
    this.hazardSum += amount;
  };

  /** Scores an unfolded plan from nothing by every rule's own `check`: the truth the shortcuts are held to. */
  score(t: Timeline): Score {
    this.sum = 0;
    for (const rule of this.hard) rule.check(t, this.add);
    const hard = this.sum;
    this.sum = 0;
    this.count = 0;
    for (const rule of this.leftOut) rule.check(t, this.add);
    const leftOut = this.sum;
    const leftOutCount = this.count;
    this.joinHazards(t);
    this.sum = 0;
    for (const { rule, weight } of this.costs) rule.check(t, weight, this.add);
    return { hard, leftOut, leftOutCount, cost: this.sum };
  }

  /** Sums the hazards of every pitch into `t.hazard`, as the cost of risk needs them. */
  joinHazards(t: Timeline): void {
    t.hazard.fill(0);
    for (const { rule, weight } of this.hazards) {
      rule.check(t, weight, (amount, subject) => {
        t.hazard[subject] = (t.hazard[subject] as number) + amount;
      });
    }
    for (const { rule, weight } of this.relaxed) {
      rule.check(t, (_amount, subject) => {
        t.hazard[subject] = (t.hazard[subject] as number) + weight;
      });
    }
  }

  /** Judges every brew of an unfolded plan and keeps what each adds, so that `rescore` can start from it. */
  settle(t: Timeline): Score {
    t.sums.fill(0);
    t.hardAt.fill(0);
    t.costAt.fill(0);
    for (let b = 0; b < t.placed.length; b++) this.judgeBrew(t, b);
    return this.whole(t, WORST);
  }

  /**
   * Scores a plan of which only the marked brews are to be judged again. Stops after the first level that is
   * worse than `limit`, leaving the rest as worst; such a plan is to be thrown away.
   */
  rescore(t: Timeline, marked: Uint8Array, limit: Score): Score {
    for (let b = 0; b < marked.length; b++) if (marked[b]) this.judgeBrew(t, b);
    return this.whole(t, limit);
  }

  /** What the rules that look at single brews find broken on one brew of `t`. Leaves the sums as they are. */
  askHard(t: Timeline, b: number): number {
    this.sum = 0;
    for (let i = 0; i < this.hardAt.length; i++) this.hardAt[i]?.at?.(t, b, this.add);
    return this.sum;
  }

  /** What the rules that look at single brews find that one brew of `t` costs. Leaves the sums as they are. */
  askCost(t: Timeline, b: number): number {
    this.joinAt(t, b);
    this.sum = 0;
    for (let i = 0; i < this.costAt.length; i++) {
      const c = this.costAt[i] as Weighted<CostRule>;
      c.rule.at?.(t, b, c.weight, this.add);
    }
    return this.sum;
  }

  /** What the day, tank and strain of one brew cost by themselves; nothing but its days need be worked out. */
  askSlot(t: Timeline, b: number): number {
    this.sum = 0;
    for (let i = 0; i < this.slotAt.length; i++) {
      const c = this.slotAt[i] as Weighted<CostRule>;
      c.rule.at?.(t, b, c.weight, this.add);
    }
    return this.sum;
  }

  /** Sums the hazards of one pitch. */
  private joinAt(t: Timeline, b: number): void {
    this.hazardSum = 0;
    for (let i = 0; i < this.hazards.length; i++) {
      const h = this.hazards[i] as Weighted<HazardRule>;
      h.rule.at(t, b, h.weight, this.addHazard);
    }
    for (let i = 0; i < this.relaxed.length; i++) {
      const r = this.relaxed[i] as Weighted<HardRule>;
      this.relaxedWeight = r.weight;
      r.rule.at?.(t, b, this.addRelaxed);
    }
    t.hazard[b] = this.hazardSum;
  }

  private judgeBrew(t: Timeline, b: number): void {
    let hard = 0;
    let cost = 0;
    t.hazard[b] = 0;
    if (t.placed[b]) {
      if (!t.done[b]) {
        this.sum = 0;
        for (let i = 0; i < this.hardAt.length; i++) this.hardAt[i]?.at?.(t, b, this.add);
        hard = this.sum;
        this.joinAt(t, b);
      }
      this.sum = 0;
      for (let i = 0; i < this.costAt.length; i++) {
        const c = this.costAt[i] as Weighted<CostRule>;
        if (!t.done[b] || c.rule.factsToo) c.rule.at?.(t, b, c.weight, this.add);
      }
      cost = this.sum;
    }
    t.sums[0] = (t.sums[0] as number) + hard - (t.hardAt[b] as number);
    t.sums[1] = (t.sums[1] as number) + cost - (t.costAt[b] as number);
    t.hardAt[b] = hard;
    t.costAt[b] = cost;
  }

  private relaxedWeight = 0;
  private readonly addRelaxed = (): void => {
    this.hazardSum += this.relaxedWeight;
  };

  private whole(t: Timeline, limit: Score): Score {
    this.sum = t.sums[0] as number;
    for (let i = 0; i < this.hardWhole.length; i++) this.hardWhole[i]?.check(t, this.add);
    const hard = this.sum;
    if (hard > limit.hard) return { ...WORST, hard };
    this.sum = 0;
    this.count = 0;
    for (let i = 0; i < this.leftOut.length; i++) this.leftOut[i]?.check(t, this.add);
    const leftOut = this.sum;
    const leftOutCount = this.count;
    this.sum = t.sums[1] as number;
    for (let i = 0; i < this.costWhole.length; i++) {
      const c = this.costWhole[i] as Weighted<CostRule>;
      c.rule.check(t, c.weight, this.add);
    }
    return { hard, leftOut, leftOutCount, cost: this.sum };
  }

  /** Whether a hard rule is known to forbid this source for brew b on this day: a shortcut of the rules' own. */
  bars(t: Timeline, b: number, source: number, useDay: number): boolean {
    for (let i = 0; i < this.barring.length; i++) {
      if (this.barring[i]?.bars?.(t, b, source, useDay)) return true;
    }
    return false;
  }
}
