// The whole search: a start, annealing, and a last look around. Deterministic by seed and steps.
import type { Problem } from '../timeline/problem.ts';
import { copyDecisions, Timeline } from '../timeline/timeline.ts';
import { unfold } from '../timeline/unfold.ts';
import { anneal, type Watch } from './anneal.ts';
import { construct, onlyFacts } from './construct.ts';
import { Desk, type Freedom } from './desk.ts';
import { Random } from './random.ts';
import { compareScores, Judge, type Score } from './score.ts';

export type Found = { timeline: Timeline; score: Score; steps: number; stopped: boolean };

/** The default budget: plans judged, growing with the season. */
export function defaultSteps(brews: number): number {
  return Math.min(400_000, 20_000 + brews * 4_500);
}

/**
 * Searches from `starts` (plans to stand on, e.g. the one in force) and from a plan built from nothing;
 * never returns a worse one than any of the starts.
 */
export function search(
  problem: Problem,
  options: { seed: number; steps: number; freedom?: Freedom; starts?: readonly Timeline[] },
  watch: Watch,
): Found {
  const judge = new Judge(problem);
  const random = new Random(options.seed);
  const freedom = options.freedom ?? { slurry: true };
  const built = construct(problem, judge, random, freedom, onlyFacts(problem), {
    slots: 8,
    sources: 3,
  });
  let desk = built;
  for (const start of options.starts ?? []) {
    const other = new Desk(problem, judge, random, freedom, start);
    other.steps = desk.steps;
    // on equal terms the plan that people know wins
    if (compareScores(other.bestScore, desk.bestScore) <= 0) desk = other;
  }
  const { stopped } = anneal(desk, Math.max(options.steps, desk.steps), watch);
  const timeline = new Timeline(problem);
  copyDecisions(desk.best, timeline);
  unfold(timeline);
  return { timeline, score: judge.score(timeline), steps: desk.steps, stopped };
}
