// Which limit of the house costs most: each is widened in turn, and the season planned again from the plan as it is.
import type { z } from 'zod';
import {
  type Plan,
  PlanRequest,
  type Progress,
  type SeasonLimits,
  type Totals,
  type WidenedLimit,
} from '../model/index.ts';
import { totals } from '../report/totals.ts';
import { inMoney, plural } from '../rules/rule.ts';
import { Judge } from '../search/score.ts';
import { defaultSteps, search } from '../search/search.ts';
import { standingPlan } from '../search/standing.ts';
import { compile } from '../timeline/problem.ts';
import { widen } from './list.ts';

/** Share of the default budget that one question gets: it starts from a finished plan. */
const SHARE = 0.4;

/**
 * Answers for every limit of the house what the season would save with a little more of it. The plan as it is gets
 * the same further search as each of the others, so that what is told is the limit's doing and not the search's.
 * What is told is found, not proven: a longer search may save more. `watch` is told the steps over all questions
 * and may stop it by returning true: the questions answered so far are kept.
 * @throws ZodError on a request that is none
 */
export function seasonLimits(
  request: z.input<typeof PlanRequest>,
  plan: Plan,
  watch?: (progress: Progress) => boolean,
): SeasonLimits {
  const r = PlanRequest.parse(request);
  const steps = r.steps ?? Math.round(defaultSteps(r.house.brews.length) * SHARE);
  const questions = widen(r.house);
  const all = steps * (questions.length + 1);
  let before = 0;
  let stopped = false;

  function sums(house: PlanRequest['house']): Totals {
    // the plan is not held against itself: what it costs to move a brew is not asked here
    const problem = compile(house, r.today, r.facts, r.pins, null);
    const standing = standingPlan(problem, plan);
    const found = search(problem, { seed: r.seed, steps, standing }, (done, best) => {
      const { hard, leftOutCount: leftOut, cost: costMinor } = best;
      const untold = { parts: null, boundMinor: null };
      const stepsDone = before + done;
      return watch?.({ stepsDone, steps: all, hard, leftOut, costMinor, ...untold }) ?? false;
    });
    before += steps;
    stopped = found.stopped;
    return totals(new Judge(problem), found.timeline);
  }

  const today = sums(r.house);
  const problem = compile(r.house, r.today, r.facts, r.pins, null);
  const money = (minor: number) => inMoney(problem, minor);
  const limits: WidenedLimit[] = [];
  for (const { id, says, house } of questions) {
    if (stopped) break;
    const then = sums(house);
    if (!stopped) limits.push(told(id, says, today, then, money));
  }
  limits.sort(
    (a, z) =>
      z.leftOutFewer - a.leftOutFewer || z.savesMinor - a.savesMinor || (a.id < z.id ? -1 : 1),
  );
  return { today, steps, limits, stopped };
}

function told(
  id: string,
  says: string,
  now: Totals,
  then: Totals,
  money: (minor: number) => string,
): WidenedLimit {
  const leftOutFewer = now.leftOut - then.leftOut;
  const savesMinor = now.costMinor - then.costMinor;
  const lateDaysFewer = now.lateDays - then.lateDays;
  const limit = {
    id,
    says,
    leftOutFewer,
    savesMinor,
    savesCashMinor: now.cashMinor - then.cashMinor,
    savesWorkMinor: now.workMinor - then.workMinor,
    savesRiskMinor: now.riskMinor - then.riskMinor,
    lateDaysFewer,
  };
  return { ...limit, verdict: verdict(limit, now, then, money) };
}

function verdict(
  limit: Omit<WidenedLimit, 'verdict'>,
  now: Totals,
  then: Totals,
  money: (minor: number) => string,
): string {
  const { leftOutFewer, savesMinor, savesCashMinor, lateDaysFewer } = limit;
  const late = lateDaysFewer === 0 ? '' : `, with ${lateDays(lateDaysFewer)}`;
  if (then.hard < now.hard) {
    return `The plan would break less: ${then.hard} in place of ${now.hard}.`;
  }
  if (leftOutFewer > 0) return `${plural(leftOutFewer, 'more brew')} would find a place${late}.`;
  if (savesMinor <= 0) {
    return 'Nothing better was found with it: this is not what holds the season back.';
  }
  const cash =
    savesCashMinor > 0
      ? `, ${money(savesCashMinor)} of it cash`
      : savesCashMinor < 0
        ? `, though ${money(-savesCashMinor)} more goes out in cash`
        : '';
  return `Saves at least ${money(savesMinor)}${cash}${late}.`;
}

const lateDays = (fewer: number): string =>
  `${Math.abs(fewer)} ${fewer > 0 ? 'fewer' : 'more'} late ${Math.abs(fewer) === 1 ? 'day' : 'days'}`;
