// The search of a re-plan: first with all that is near held fast, then, only where a hard rule stays broken, without.
import {
  changedInside,
  forcedBrews,
  frozenBrews,
  heldFast,
  lessBroken,
  noWorse,
  thawOnlyForced,
} from './freeze.ts';
import type { Watch } from './search/anneal.ts';
import { Judge } from './search/score.ts';
import { type Found, search } from './search/search.ts';
import type { Problem } from './timeline/problem.ts';
import { copyDecisions, Timeline } from './timeline/timeline.ts';
import { unfold } from './timeline/unfold.ts';

/** Share of the budget that the search with all held fast gets where something is broken. */
const HELD_SHARE = 0.5;

/**
 * Never worse than `standing`, the plan in force with the news applied. Inside the freeze window a brew changes only if
 * putting it back would break a hard rule.
 */
export function mend(
  problem: Problem,
  standing: Timeline,
  options: { seed: number; steps: number },
  watch: Watch,
): Found {
  const judge = new Judge(problem);
  const frozen = frozenBrews(problem, standing);
  const forced = forcedBrews(judge, standing, frozen);
  const sound = judge.score(standing).hard === 0;
  const { seed } = options;
  const tried = (p: Problem, steps: number, seen: Watch): Found => {
    const found = search(p, { seed, steps, standing: onto(p, standing) }, seen);
    const timeline = settled(judge, onto(problem, found.timeline), standing, frozen);
    return { ...found, timeline, score: judge.score(timeline) };
  };
  const held = heldFast(
    problem,
    standing,
    frozen.filter((b) => !forced.includes(b)),
  );
  const first = tried(held, sound ? options.steps : share(options.steps), watch);
  if (first.score.hard === 0 || first.stopped || frozen.length === 0) return first;
  const rest = Math.max(0, options.steps - first.steps);
  const second = tried(problem, rest, (done, best, plan) => watch(first.steps + done, best, plan));
  const best = lessBroken(first, second);
  return { ...best, steps: first.steps + second.steps, stopped: second.stopped };
}

const share = (steps: number): number => Math.ceil(steps * HELD_SHARE);

function onto(problem: Problem, t: Timeline): Timeline {
  const copy = new Timeline(problem);
  copyDecisions(t, copy);
  unfold(copy);
  return copy;
}

/** Only what is forced changed inside the window, and nothing came out worse than it stood. */
function settled(
  judge: Judge,
  found: Timeline,
  standing: Timeline,
  frozen: readonly number[],
): Timeline {
  if (changedInside(found, standing, frozen).length === 0) return noWorse(judge, found, standing);
  return noWorse(judge, thawOnlyForced(judge, found, standing, frozen), standing);
}
