// Plans a season: the house in, the plan out. Also re-plans from the plan in force.
import type { z } from 'zod';
import { boundingFor, whyNoBound } from './bound/bounding.ts';
import { compare } from './changes/index.ts';
import { whatForces } from './forced.ts';
import { mend } from './mend.ts';
import type { Changes, Plan, Progress, Totals } from './model/index.ts';
import { PlanRequest } from './model/index.ts';
import { findings, publish } from './report/index.ts';
import { partsTold, totals } from './report/totals.ts';
import { dateOrderPlan, freshOnlyPlan } from './search/baselines.ts';
import { Desk } from './search/desk.ts';
import { Random } from './search/random.ts';
import { Judge, type Score } from './search/score.ts';
import { defaultSteps, type Found, mendingSteps, search } from './search/search.ts';
import { standingPlan } from './search/standing.ts';
import { steadied } from './tasks/steady.ts';
import { compile, type Problem } from './timeline/problem.ts';
import type { Timeline } from './timeline/timeline.ts';

export type Watch = (progress: Progress) => boolean;
type Request = z.output<typeof PlanRequest>;
type Baselines = Plan['baselines'];

/** Share of the budget that goes to the fresh-packs baseline, so that it is an honest one. */
const BASELINE_SHARE = 0.15;
/** Share of the budget after which a first bound is worked out, so that it can be told while the search goes on. */
const EARLY_SHARE = 0.2;

/**
 * Plans the season of a request. `watch` is told how far it is and may stop it by returning true; the best
 * plan so far is kept. The same request gives the same plan. Throws a ZodError on a request that is none.
 */
export function plan(request: z.input<typeof PlanRequest>, watch?: Watch): Plan {
  const r = PlanRequest.parse(request);
  return solve(r, watch, compile(r.house, r.today, r.facts, r.pins, r.inForce), null);
}

/**
 * Re-plans from the plan in force with what has happened since: never worse than that plan with the news
 * applied and nothing else moved. Throws a RangeError without a plan in force.
 */
export function replan(
  request: z.input<typeof PlanRequest>,
  watch?: Watch,
): { plan: Plan; changes: Changes } {
  const r = PlanRequest.parse(request);
  if (r.inForce === null) throw new RangeError('a re-plan needs the plan in force');
  const problem = compile(r.house, r.today, r.facts, r.pins, r.inForce);
  const standing = standingPlan(problem, r.inForce);
  const judge = new Judge(problem);
  const before = totals(judge, standing);
  const broken = findings(judge, standing);
  const after = steadied(solve(r, watch, problem, standing), r.inForce, r.house);
  const forced = whatForces(standing, after);
  const changes = compare(r.inForce, after, r.house, { facts: r.facts, broken, forced });
  return { plan: after, changes: { ...changes, before, after: after.totals } };
}

function solve(
  r: Request,
  watch: Watch | undefined,
  problem: Problem,
  standing: Timeline | null,
): Plan {
  const n = problem.brews.length;
  const steps = r.steps ?? (standing === null ? defaultSteps(n) : mendingSteps(n));
  const baselineSteps = r.inForce === null ? Math.round(steps * BASELINE_SHARE) : 0;
  const all = steps + baselineSteps;
  let before = 0;
  const judge = new Judge(problem);
  const bounding = boundingFor(problem, judge, steps);
  const parts = watch ? partsTold(problem, judge) : null;
  const told = (done: number, best: Score, plan: Timeline): boolean => {
    if (done >= steps * EARLY_SHARE) bounding?.early(best);
    if (!watch || !parts) return false;
    return watch({
      stepsDone: before + done,
      steps: all,
      hard: best.hard,
      leftOut: best.leftOutCount,
      costMinor: best.cost,
      parts: parts(best, plan),
      boundMinor: bounding?.known(best) ?? null,
    });
  };
  const found: Found =
    standing === null
      ? search(problem, { seed: r.seed, steps }, told)
      : mend(problem, standing, { seed: r.seed, steps }, told);
  before = steps;
  const baselines: Baselines = r.inForce?.baselines ?? {
    freshOnly: sums(
      judge,
      freshOnlyPlan(problem, r.seed, found.stopped ? 0 : baselineSteps, (done) =>
        told(done, found.score, found.timeline),
      ),
    ),
    dateOrder: sums(judge, dateOrderPlan(problem)),
  };
  const desk = new Desk(problem, judge, new Random(r.seed), { slurry: true }, found.timeline);
  const bound = found.stopped ? null : (bounding?.publish(found.score) ?? null);
  return publish(desk, found.timeline, {
    house: r.house,
    today: r.today,
    facts: r.facts,
    pins: r.pins,
    inForce: r.inForce,
    seed: r.seed,
    steps,
    stepsDone: found.steps,
    baselines,
    bound,
    noBound: bound ? null : whyNoBound(problem, found.score, steps, found.stopped),
  });
}

const sums = (judge: Judge, t: Timeline): Totals => totals(judge, t);
