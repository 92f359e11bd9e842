// Takes several brews out that have to do with each other, and puts them back one by one where each does best.

import type { Timeline } from '../../timeline/timeline.ts';

import type { Desk } from '../desk.ts';
import { insertBest } from '../insert.ts';
import { type Score, WORST } from '../score.ts';

/** Chooses brews by time, tank, or strain around one at random. */
function related(desk: Desk, count: number): number[] {
  const { current: t, random, free } = desk;
  const placed = free.filter((b) => t.placed[b]);
  if (placed.length === 0) return [];
  const seed = placed[random.below(placed.length)] as number;
  const how = random.below(3);
  const distance = (b: number) => {
    const days = Math.abs((t.day[b] as number) - (t.day[seed] as number));
    const same =
      how === 0 || (how === 1 ? t.tank[b] === t.tank[seed] : t.yeast[b] === t.yeast[seed]);
    return days + (same ? 0 : 1000) + random.next();
  };
  return placed
    .map((b) => ({ b, d: distance(b) }))
    .sort((x, y) => x.d - y.d)
    .slice(0, count)
    .map(({ b }) => b);
}

/** One round of ruin and recreate on the desk's trial; keeps it if `accept` says so. */
export function ruinAndRecreate(
  desk: Desk,
  count: number,
  accept: (candidate: Score, standing: Score) => boolean,
): boolean {
  const t: Timeline = desk.begin();
  const out = related(desk, count);
  if (out.length === 0) return false;
  for (const b of out) {
    t.placed[b] = 0;
    desk.touch(b);
  }
  for (const b of desk.free) if (!t.placed[b] && !out.includes(b)) out.push(b);
  desk.unfoldTrial();
  let score = desk.judge.rescore(t, desk.marks.judge, WORST);
  // the hardest to place first, now and then shuffled
  const slack = (b: number) => {
    const brew = desk.problem.brews[b];
    return (brew?.days.length ?? 0) * (brew?.tanks.length ?? 0) - (brew?.priority ?? 1);
  };
  const shuffled = desk.random.next() < 0.4;
  const keyed = out.map((b) => ({ b, key: shuffled ? desk.random.next() : slack(b) }));
  keyed.sort((x, y) => x.key - y.key || x.b - y.b);
  for (const { b } of keyed) {
    score = insertBest(desk, t, b, score, { slots: 8, judged: 4 }) ?? score;
  }
  return desk.decide(score, accept);
}
