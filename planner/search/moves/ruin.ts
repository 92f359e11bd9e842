// Takes several brews out that have to do with each other, and puts them back one by one where each does best.

import { dates } from '../../timeline/dates.ts';
import { FRESH } from '../../timeline/problem.ts';
import { refold } from '../../timeline/refold.ts';
import type { Timeline } from '../../timeline/timeline.ts';

import type { Desk } from '../desk.ts';
import { insertBest, type Reach } from '../insert.ts';
import { NO_STARTER } from '../quotes.ts';
import { compareScores, type Score, WORST } from '../score.ts';

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
  reach: Reach = { slots: 8, judged: 4 },
): boolean {
  const out = related(desk, count);
  if (out.length === 0) return false;
  const t: Timeline = desk.begin();
  for (const b of out) {
    t.placed[b] = 0;
    desk.touch(b);
  }
  for (const b of desk.free) if (!t.placed[b] && !out.includes(b)) out.push(b);
  const taken = desk.touchedCount;
  desk.unfoldTrial();
  const orphans = [...desk.touched.subarray(taken, desk.touchedCount)];
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
    score = insertBest(desk, t, b, score, reach) ?? score;
  }
  return desk.decide(adopt(desk, t, out, orphans, score), accept);
}

/** Whether the harvest of brew a is there in time for brew b, and no rule is known to forbid it. */
function mayFeed(desk: Desk, t: Timeline, a: number, b: number): boolean {
  if (a === b || !t.placed[a] || t.yeast[a] !== t.yeast[b]) return false;
  const use = t.useDay[b] as number;
  if ((t.usableFrom[a] as number) > use) return false;
  return !desk.judge.bars(t, b, desk.problem.jars.length + a, use);
}

/** Lets the beers that came back feed those that had lost them, and those on fresh packs, where that is cheaper. */
function adopt(
  desk: Desk,
  t: Timeline,
  back: readonly number[],
  orphans: readonly number[],
  score: Score,
): Score {
  const { quotes, scratch, problem: p, random, marks, judge } = desk;
  const wanting = new Set(orphans.filter((b) => t.placed[b] && !back.includes(b)));
  for (let i = 0; i < t.orderCount; i++) {
    const b = t.order[i] as number;
    if (t.source[b] === FRESH && !t.done[b] && back.some((a) => mayFeed(desk, t, a, b)))
      wanting.add(b);
  }
  if (wanting.size === 0) return score;
  scratch.copyFrom(t);
  quotes.read(t);
  const list = [...wanting].sort((a, b) => (t.day[a] as number) - (t.day[b] as number) || a - b);
  let changed = 0;
  const touched = Int32Array.from(list);
  for (const b of list) {
    if (t.done[b] || (p.brews[b]?.pinSource ?? FRESH) >= FRESH) continue;
    const source = t.source[b] as number;
    const starter = t.starter[b] as number;
    quotes.claim(source, t.drawMl[b] as number, -1);
    const now = quotes.price(t, b, source);
    const better = quotes.best(t, b, NO_STARTER | (1 << starter), random, 0) < now - 1e-9;
    t.source[b] = better ? quotes.source : source;
    t.starter[b] = better ? quotes.starter : starter;
    dates(p, t, b);
    quotes.price(t, b, t.source[b] as number);
    quotes.claim(t.source[b] as number, t.drawMl[b] as number, 1);
    if (better) changed++;
  }
  if (changed > 0) {
    refold(t, scratch, touched, touched.length, marks);
    desk.steps++;
    const after = judge.rescore(t, marks.judge, WORST);
    if (compareScores(after, score) < 0) return after;
  }
  t.copyFrom(scratch);
  return score;
}
