// Two plain ways of doing it without us, on the same season, each obeying every hard rule.
import type { Problem } from '../timeline/problem.ts';
import type { Timeline } from '../timeline/timeline.ts';
import { construct, onlyFacts } from './construct.ts';
import { Random } from './random.ts';
import { compareScores, Judge, type Score } from './score.ts';
import { search } from './search.ts';

/** Fresh packs for everything: days, tanks and starters searched like ours, but no slurry pitched. */
export function freshOnlyPlan(
  problem: Problem,
  seed: number,
  steps: number,
  watch: (done: number, best: Score) => boolean,
): Timeline {
  return search(problem, { seed, steps, freedom: { slurry: false } }, watch).timeline;
}

/**
 * Re-pitching in date order without looking ahead: brews are taken by date, each gets the first free day of
 * some tank and whatever source is cheapest at that moment, splitting harvests where they hold enough. Both
 * usual meanings of date order, first possible day and day wanted, are tried, and the better one kept.
 */
export function dateOrderPlan(problem: Problem): Timeline {
  const judge = new Judge(problem);
  let best: Timeline | null = null;
  let bestScore: Score | null = null;
  for (const by of ['earliest', 'latest'] as const) {
    const order = problem.brews
      .map((brew, b) => ({
        b,
        held: brew.fixedDay >= 0 || brew.pinDay >= 0 ? 0 : 1,
        day: brew[by],
      }))
      .sort((x, y) => x.held - y.held || x.day - y.day || x.b - y.b)
      .map(({ b }) => b);
    const tanks = Math.max(1, problem.tanks.length);
    const desk = construct(
      problem,
      judge,
      new Random(1),
      { slurry: true },
      onlyFacts(problem),
      { slots: tanks, judged: tanks },
      order,
    );
    if (bestScore === null || compareScores(desk.score, bestScore) < 0) {
      best = desk.current;
      bestScore = desk.score;
    }
  }
  return best ?? onlyFacts(problem);
}
