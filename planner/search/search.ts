// The whole search: a start, annealing, and a last look around. Deterministic by seed and steps.
import { KEPT } from '../timeline/kept.ts';
import type { Problem } from '../timeline/problem.ts';
import { copyDecisions, Timeline } from '../timeline/timeline.ts';
import { unfold } from '../timeline/unfold.ts';
import { anneal, polish, type Watch } from './anneal.ts';
import { construct, onlyFacts } from './construct.ts';
import { Desk, type Freedom } from './desk.ts';
import type { Reach } from './insert.ts';
import { Random } from './random.ts';
import { compareScores, Judge, type Score } from './score.ts';

export type Found = { timeline: Timeline; score: Score; steps: number; stopped: boolean };

const REACH: Reach = { slots: 8, judged: 4 };
/** From so many brews on a plan to begin from must stand at once; it is cooled for long enough to forget how it began. */
const LARGE = 100;
const QUICK_REACH: Reach = { slots: 3, judged: 1, plain: true };

/** The default budget: plans judged, growing with the season. */
export function defaultSteps(brews: number): number {
  return Math.min(400_000, Math.max(30_000, 8_000 + brews * (300 + brews * 32)));
}

/** The default budget of a re-plan: it begins at the plan in force and has to answer while the brewer waits. */
export function mendingSteps(brews: number): number {
  return Math.min(100_000, 12_000 + brews * 80);
}

/** Share of the budget in which the best plan is polished at the end. */
const POLISHING_SHARE = 0.06;

/** Seasons of up to so many brews are searched several times over; one slow cooling suits larger ones better. */
const SMALL = 16;
/** Attempts, the share of the budget of each, and how warm the best begins again. */
const FEW_BREWS = { attempts: 4, share: 0.2, again: 0.3 };
const MANY_BREWS = { attempts: 1, share: 1 - POLISHING_SHARE, again: 0 };

/** A re-plan begins this much cooler than a plan from nothing: it mends, it does not begin again. */
const MENDING_HEAT = 0.12;
const MENDING_ATTEMPTS = 5;

/**
 * Searches from nothing, or, with `standing` (the plan in force with the news applied), from there: what does
 * not have to move then moves only if that pays for itself. Never returns a worse plan than `standing`. Where
 * mending leaves a hard rule broken or a brew out, a plan from nothing is tried too.
 */
export function search(
  problem: Problem,
  options: { seed: number; steps: number; freedom?: Freedom; standing?: Timeline | null },
  watch: Watch,
): Found {
  const judge = new Judge(problem);
  const random = new Random(options.seed);
  const freedom = options.freedom ?? { slurry: true };
  const standing = options.standing ?? null;
  let desk: Desk | null = null;
  let stopped = false;
  if (standing) {
    // the first way out of a broken rule decides much: several are tried, each from where things stand
    for (let attempt = 0; attempt < MENDING_ATTEMPTS && !stopped; attempt++) {
      const from = copyOf(standing);
      const tried: Desk = new Desk(problem, judge, random, freedom, from, standing);
      const before: number = desk?.steps ?? 0;
      tried.steps = before;
      const best = desk;
      const until = before + Math.ceil(options.steps / MENDING_ATTEMPTS);
      const seen = betterOf(best, watch);
      stopped = anneal(tried, until, seen, MENDING_HEAT).stopped;
      if (desk === null || compareScores(tried.bestScore, desk.bestScore) < 0) desk = tried;
      else desk.steps = tried.steps;
    }
  }
  if (desk === null || (!stopped && (desk.bestScore.hard > 0 || desk.bestScore.leftOutCount > 0))) {
    const start = { problem, judge, random, freedom, before: desk?.steps ?? 0 };
    const { built, stopped: ended } = fromNothing(start, options.steps, watch);
    stopped = ended;
    // on equal terms the plan that people know wins
    if (desk === null || mendsMore(built.bestScore, desk.bestScore)) desk = built;
    else desk.steps = built.steps;
  }
  const timeline = new Timeline(problem);
  copyDecisions(desk.best, timeline);
  dropIdleKeeps(judge, timeline);
  return { timeline, score: judge.score(timeline), steps: desk.steps, stopped };
}

/** Tells of the better one: what an attempt before has found, or what is being found. */
const betterOf =
  (before: Desk | null, watch: Watch): Watch =>
  (done, score, plan) =>
    before && compareScores(before.bestScore, score) < 0
      ? watch(done, before.bestScore, before.best)
      : watch(done, score, plan);

const courseFor = (brews: number) => (brews <= SMALL ? FEW_BREWS : MANY_BREWS);

type Start = {
  problem: Problem;
  judge: Judge;
  random: Random;
  freedom: Freedom;
  /** Plans judged before. */
  before: number;
};

/** Several plans from nothing, each with a share of the budget; the best of them is warmed up again, then polished. */
function fromNothing(start: Start, steps: number, watch: Watch): { built: Desk; stopped: boolean } {
  const { problem, judge, random, freedom, before } = start;
  const { attempts, share, again } = courseFor(problem.brews.length);
  const reach = problem.brews.length < LARGE ? REACH : QUICK_REACH;
  let built: Desk | null = null;
  let stopped = false;
  for (let attempt = 0; attempt < attempts && !stopped; attempt++) {
    const tried = construct(problem, judge, random, freedom, onlyFacts(problem), reach);
    const begun: number = built?.steps ?? before;
    tried.steps += begun;
    const best = built;
    const seen = betterOf(best, watch);
    stopped = anneal(tried, begun + Math.ceil(steps * share), seen).stopped;
    if (built === null || compareScores(tried.bestScore, built.bestScore) < 0) built = tried;
    else built.steps = tried.steps;
  }
  if (built === null) throw new RangeError('a search makes one attempt at least');
  const until = Math.max(before + steps, built.steps);
  const polishing = Math.round(steps * POLISHING_SHARE);
  if (!stopped && again > 0 && built.steps < until - polishing) {
    stopped = anneal(built, until - polishing, watch, again).stopped;
  }
  if (!stopped) stopped = polish(built, until, watch).stopped;
  return { built, stopped };
}

/** Whether a plan from nothing breaks less or leaves less out; by cost alone it never takes the place of a mended one. */
function mendsMore(a: Score, b: Score): boolean {
  return (a.hard - b.hard || a.leftOut - b.leftOut || a.leftOutCount - b.leftOutCount) < 0;
}

function copyOf(t: Timeline): Timeline {
  const copy = new Timeline(t.problem);
  copyDecisions(t, copy);
  unfold(copy);
  return copy;
}

/** Takes out jars kept for the end of the season that are worth nothing there: harvested in vain. */
function dropIdleKeeps(judge: Judge, t: Timeline): void {
  unfold(t);
  let score = judge.score(t);
  for (let y = 0; y < t.keep.length; y++) {
    const source = t.keep[y] as number;
    if (source < 0) continue;
    t.keep[y] = -1;
    unfold(t);
    const without = judge.score(t);
    if (compareScores(without, score) <= 0) score = without;
    else t.keep[y] = source;
  }
  // nobody takes the part that could be kept of a starter: all of it is pitched
  for (let b = 0; b < t.crop.length; b++) {
    if (t.crop[b] === KEPT && !t.done[b] && !t.draws[t.problem.jars.length + b]) t.crop[b] = -1;
  }
  unfold(t);
}
