// Moves one brew of the plan in force and leaves everything else where it is: which rules that breaks, and what it costs.
import type { Finding, PlanRequest, Trial, TrialLine } from '../model/index.ts';
import type { CostRule, Fact, HardRule } from '../rules/rule.ts';
import { Judge } from '../search/score.ts';
import { standingPlan } from '../search/standing.ts';
import { dayNumber, isoDay } from '../timeline/calendar.ts';
import { compile, FRESH, type Problem } from '../timeline/problem.ts';
import { copyDecisions, Timeline } from '../timeline/timeline.ts';
import { unfold } from '../timeline/unfold.ts';
import { spoken, spokenFinding } from './spoken.ts';
import { hardFindings } from './weighing.ts';

export type Move = { brew: string; day: string; tank: string };

/**
 * Tries moves on the plan in force with the news applied, without a search: the brew is held to the day and the
 * tank; its source stays, and so does every other brew. The plan is unfolded once, each move in a fraction of that.
 * @returns what a move would break or cost. It throws a RangeError on an unknown brew or tank, on a brew that has
 *   been brewed, and on a day outside the season
 * @throws RangeError without a plan in force
 */
export function trials(request: PlanRequest): (move: Move) => Trial {
  const { house, today, facts, pins, inForce } = request;
  if (inForce === null) throw new RangeError('a trial needs the plan in force');
  const problem = compile(house, today, facts, pins, inForce);
  const before = new Weighing(problem, standingPlan(problem, inForce));
  return (move) => {
    const { b, tank, day } = placeOf(move, problem);
    const after = new Weighing(...moved(before.t, b, tank, day));
    const lines = after.linesAgainst(before);
    const sum = (part?: TrialLine['part']) =>
      lines
        .filter((line) => part === undefined || line.part === part)
        .reduce((total, line) => total + line.differenceMinor, 0);
    return {
      ...move,
      emptiedOn: isoDay(after.t.emptied[b] as number),
      readyOn: isoDay(after.t.ready[b] as number),
      daysLate: after.t.late[b] as number,
      breaks: after.findingsBeyond(before),
      mends: before.findingsBeyond(after),
      costMinor: sum(),
      cashMinor: sum('cash'),
      workMinor: sum('work'),
      riskMinor: sum('risk'),
      lines,
    };
  };
}

function placeOf(move: Move, problem: Problem): { b: number; tank: number; day: number } {
  const { from, to } = problem.house;
  if (move.day < from || move.day > to) throw new RangeError(`${move.day} is outside the season`);
  const b = problem.brews.findIndex((brew) => brew.name === move.brew);
  const tank = problem.tanks.findIndex((one) => one.name === move.tank);
  if (b < 0) throw new RangeError(`there is no brew ${move.brew}`);
  if (tank < 0) throw new RangeError(`there is no tank ${move.tank}`);
  if (problem.brews[b]?.done) throw new RangeError(`${move.brew} has been brewed`);
  return { b, tank, day: dayNumber(move.day) };
}

/** The same plan with brew b held elsewhere; one that was left out comes in with fresh packs. */
function moved(was: Timeline, b: number, tank: number, day: number): [Problem, Timeline] {
  const brews = was.problem.brews.map((brew, at) =>
    at === b
      ? { ...brew, pinDay: day, pinTank: tank, days: Int32Array.of(day), tanks: [tank] }
      : brew,
  );
  const problem = { ...was.problem, brews };
  const t = new Timeline(problem);
  copyDecisions(was, t);
  if (!t.placed[b]) {
    t.placed[b] = 1;
    t.source[b] = FRESH;
  }
  t.day[b] = day;
  t.tank[b] = tank;
  unfold(t);
  return [problem, t];
}

type Amount<R> = { rule: R; fact: Fact; amount: number };

/** Two findings of the same rule on the same thing are one, told with the larger amount. */
function gathered<R extends { id: string }>(
  found: readonly { rule: R; fact: Fact }[],
  keyOf: (rule: R, fact: Fact) => string,
): Map<string, Amount<R>> {
  const out = new Map<string, Amount<R>>();
  for (const { rule, fact } of found) {
    const key = keyOf(rule, fact);
    const known = out.get(key);
    if (known) known.amount += fact.amount;
    else out.set(key, { rule, fact, amount: fact.amount });
  }
  return out;
}

/** Everything that the rules find in one unfolded plan, by rule and by what it is about. */
class Weighing {
  private readonly hard: Map<string, Amount<HardRule>>;
  private readonly costs: Map<string, Amount<CostRule>>;

  constructor(
    problem: Problem,
    readonly t: Timeline,
  ) {
    const judge = new Judge(problem);
    this.hard = gathered(
      hardFindings(judge, t),
      (rule, fact) => `${rule.id} ${rule.subject(t, fact)}`,
    );
    const costs: { rule: CostRule; fact: Fact }[] = [];
    judge.joinHazards(t);
    for (const { rule, weight } of judge.costs) {
      rule.check(t, weight, (amount, subject, other) =>
        costs.push({ rule, fact: { amount, subject, other } }),
      );
    }
    this.costs = gathered(costs, (rule, fact) => `${rule.id} ${rule.subject(t, fact)}`);
  }

  /** What this plan breaks that the other keeps, or breaks by less; the worst first. */
  findingsBeyond(other: Weighing): Finding[] {
    return [...this.hard]
      .filter(([key, one]) => one.amount > (other.hard.get(key)?.amount ?? 0))
      .map(([, { rule, fact, amount }]) =>
        spokenFinding({
          rule: rule.id,
          subject: rule.subject(this.t, fact),
          amount,
          unit: rule.unit,
          says: rule.explain(this.t, fact),
          remedy: rule.remedy(this.t, fact),
        }),
      )
      .sort((a, z) => z.amount - a.amount || (a.rule < z.rule ? -1 : 1));
  }

  /** Every cost that differs, as a difference; what falls away is told in the other plan's words. */
  linesAgainst(other: Weighing): TrialLine[] {
    const lines: TrialLine[] = [];
    for (const key of new Set([...this.costs.keys(), ...other.costs.keys()])) {
      const now = this.costs.get(key);
      const was = other.costs.get(key);
      const differenceMinor = (now?.amount ?? 0) - (was?.amount ?? 0);
      const told = now ? { one: now, t: this.t } : was ? { one: was, t: other.t } : null;
      if (differenceMinor === 0 || told === null) continue;
      const { rule, fact } = told.one;
      lines.push({
        rule: rule.id,
        part: rule.part,
        title: rule.title,
        subject: rule.subject(told.t, fact),
        differenceMinor,
        says: spoken(rule.explain(told.t, fact)),
      });
    }
    return lines.sort(
      (a, z) =>
        Math.abs(z.differenceMinor) - Math.abs(a.differenceMinor) || (a.rule < z.rule ? -1 : 1),
    );
  }
}
