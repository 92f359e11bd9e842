// An earlier plan put back: as far as what has happened since allows, and nothing else searched for.
import type { z } from 'zod';
import { compare } from './changes/index.ts';
import type { Changes, Plan } from './model/index.ts';
import { PlanRequest } from './model/index.ts';
import { findings, publish } from './report/index.ts';
import { settledPlan } from './report/settled.ts';
import { totals } from './report/totals.ts';
import { Desk } from './search/desk.ts';
import { Random } from './search/random.ts';
import { Judge } from './search/score.ts';
import { standingPlan } from './search/standing.ts';
import { steadied } from './tasks/steady.ts';
import { compile } from './timeline/problem.ts';

/**
 * The earlier plan with all news applied and nothing else moved, and what differs from the plan in force.
 * What it would break is in `plan.broken`: then it cannot be put back.
 * @param request house, facts and pins as they are now; `inForce` is the plan in force
 * @throws RangeError without a plan in force
 */
export function earlierPlan(
  request: z.input<typeof PlanRequest>,
  earlier: Plan,
): { plan: Plan; changes: Changes } {
  const r = PlanRequest.parse(request);
  const { inForce, house, today, facts, pins } = r;
  if (inForce === null)
    throw new RangeError('an earlier plan is put back in place of one in force');
  // measured against itself: going back is not charged for
  const problem = compile(house, today, facts, pins, earlier);
  const t = standingPlan(problem, earlier);
  const judge = new Judge(problem);
  const made = publish(new Desk(problem, judge, new Random(r.seed), { slurry: true }, t), t, {
    house,
    today,
    facts,
    pins,
    inForce: earlier,
    seed: earlier.seed,
    steps: 0,
    stepsDone: 0,
    baselines: earlier.baselines,
    bound: null,
    noBound: 'How far this is above the best possible is not known: it was put back, not planned.',
  });
  const plan = steadied(settledPlan(made), inForce, house);
  const now = compile(house, today, facts, pins, inForce);
  const standing = standingPlan(now, inForce);
  const nowJudge = new Judge(now);
  const changes = compare(inForce, plan, house, { facts, broken: findings(nowJudge, standing) });
  return { plan, changes: { ...changes, before: totals(nowJudge, standing), after: plan.totals } };
}
