// A first whole plan: brews by how soon they must be brewed, each put where the plan so far likes it best.
import type { Problem } from '../timeline/problem.ts';
import { placeDone, Timeline } from '../timeline/timeline.ts';
import { unfold } from '../timeline/unfold.ts';
import { Desk, type Freedom } from './desk.ts';
import { insertBest, type Reach } from './insert.ts';
import type { Random } from './random.ts';
import type { Judge } from './score.ts';

/** A timeline with the facts in it and nothing else decided. */
export function onlyFacts(problem: Problem): Timeline {
  const t = new Timeline(problem);
  problem.brews.forEach((brew, b) => {
    t.yeast[b] = brew.yeasts[0] ?? 0;
    t.tank[b] = brew.tanks[0] ?? 0;
    t.day[b] = brew.days[0] ?? problem.from;
  });
  placeDone(t);
  unfold(t);
  return t;
}

/** The order in which brews are placed: held ones first, then by latest day, important ones before. */
export function placingOrder(problem: Problem, missing: readonly number[]): number[] {
  const key = (b: number) => {
    const brew = problem.brews[b];
    if (!brew) return 0;
    if (brew.pinDay >= 0 || brew.fixedDay >= 0) return -1e9;
    return brew.latest - 7 * (brew.priority - 1);
  };
  return [...missing].sort((a, b) => key(a) - key(b) || a - b);
}

/** Places every brew that is still missing in `t`, in order. */
export function construct(
  problem: Problem,
  judge: Judge,
  random: Random,
  freedom: Freedom,
  t: Timeline,
  reach: Reach,
  order?: readonly number[],
): Desk {
  const desk = new Desk(problem, judge, random, freedom, t);
  const missing = desk.free.filter((b) => !t.placed[b]);
  let standing = desk.score;
  for (const b of order ?? placingOrder(problem, missing)) {
    if (t.placed[b]) continue;
    standing = insertBest(desk, t, b, standing, reach) ?? standing;
  }
  const done = new Desk(problem, judge, random, freedom, t);
  done.steps = desk.steps;
  return done;
}
