// The reserve, where a house asks for one: a jar of each harvest that feeds a brew, kept until the first of those beers
// has been tasted and passed, so that a culture that went bad can be gone back one generation.
import { KEPT } from './kept.ts';
import { FAR, type Problem } from './problem.ts';
import type { Timeline } from './timeline.ts';

/** Less than this share of a jar is not worth keeping. Common practice, no source. */
const LEAST_SHARE = 0.2;

/** No harvest that is to have a reserve. */
export const NO_RESERVE = -1;
/** There is to be one, and too little is left after the draws. */
export const TOO_LITTLE = 0;
/** While the days are gathered: a beer of it has been passed. */
const PASSED = -2;

/** mL of what brew b gives that are left after the draws, at most a jar. */
export function reserveMl(t: Timeline, b: number): number {
  const p = t.problem;
  const left = (t.cropMl[b] as number) - (t.drawnMl[p.jars.length + b] as number);
  return Math.min(p.house.store.jarMl, left);
}

/** The beer that decides on the reserve of what brew b gives: the first to be ready of those that were pitched with it. */
export function firstToTaste(t: Timeline, b: number): number {
  let first = -1;
  for (let i = 0; i < t.orderCount; i++) {
    const child = t.order[i] as number;
    if (t.source[child] !== t.problem.jars.length + b) continue;
    if (first < 0 || (t.ready[child] as number) < (t.ready[first] as number)) first = child;
  }
  return first;
}

/**
 * The day from which each reserve may go: the first of its beers is ready, or its storage limit is reached. A beer that
 * is ready and not yet passed may be so tomorrow. Draws, crops and days have to be worked out before.
 */
export function setReserves(p: Problem, t: Timeline): void {
  if (p.settings.reserve <= 0) return;
  const { reserveUntil, order } = t;
  const nJars = p.jars.length;
  reserveUntil.fill(FAR);
  for (let i = 0; i < t.orderCount; i++) {
    const child = order[i] as number;
    const from = (t.source[child] as number) - nJars;
    if (from < 0 || reserveUntil[from] === PASSED) continue;
    const ready = Math.max(t.ready[child] as number, p.today + 1);
    reserveUntil[from] = p.brews[child]?.passed
      ? PASSED
      : Math.min(reserveUntil[from] as number, ready);
  }
  for (let b = 0; b < reserveUntil.length; b++) reserveUntil[b] = mayGo(p, t, b);
}

function mayGo(p: Problem, t: Timeline, b: number): number {
  const ready = t.reserveUntil[b] as number;
  // a part kept of a starter is no harvest
  if (ready === FAR || ready === PASSED || !t.placed[b] || t.crop[b] === KEPT) return NO_RESERVE;
  // nothing to go back to
  if (p.brews[b]?.state === 'suspect' || t.tainted[b]) return NO_RESERVE;
  const harvested = t.harvestDay[b] as number;
  const until = Math.min(ready, harvested + p.settings.maxStorageDays);
  if (until <= harvested || until <= p.today) return NO_RESERVE;
  return reserveMl(t, b) < LEAST_SHARE * p.house.store.jarMl - 1e-9 ? TOO_LITTLE : until;
}
