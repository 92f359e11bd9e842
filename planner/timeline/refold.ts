// Unfolds only what a change touches, with the same end as unfolding everything. A test holds the two together.
import { dates } from './dates.ts';
import { buyPacks } from './packs.ts';
import { keepForNextSeason, pitch } from './pitch.ts';
import { FRESH, type Problem } from './problem.ts';
import { setReserves } from './reserve.ts';
import { fillKettle, fillShelf, fillVessels } from './room.ts';
import type { Timeline } from './timeline.ts';
import { addDraw, addKeep } from './unfold.ts';

/** Adds up the draws of one source anew, in the order in which `unfold` does. */
function sumSource(t: Timeline, source: number): void {
  t.drawnMl[source] = 0;
  t.draws[source] = 0;
  t.jarsCut[source] = 0;
  for (let i = 0; i < t.orderCount; i++) {
    const b = t.order[i] as number;
    if (t.source[b] === source) addDraw(t, source, t.drawMl[b] as number, t.drawJars[b] as number);
  }
  for (let y = 0; y < t.keep.length; y++) if (t.keep[y] === source) addKeep(t, y);
}

/** What a partial unfolding works with: marks a brew, a source. Made once a desk. */
export class Marks {
  /** Brews whose slot, source or own harvest is not what it was: what must be judged again. */
  readonly judge: Uint8Array;
  readonly dirty: Uint8Array;
  readonly gives: Uint8Array;
  readonly source: Uint8Array;
  /** Whether packs had to be bought anew. */
  packs = false;
  /** Whether the order of days changed. */
  moved = false;

  constructor(p: Problem) {
    this.judge = new Uint8Array(p.brews.length);
    this.dirty = new Uint8Array(p.brews.length);
    this.gives = new Uint8Array(p.brews.length);
    this.source = new Uint8Array(p.jars.length + p.brews.length);
  }
}

/**
 * Unfolds only what follows from the brews in `touched`: `t` was a copy of `was` (unfolded) before the change.
 * Ends with exactly what `unfold` would give, and marks in `marks.judge` every brew to be judged again.
 */
export function refold(
  t: Timeline,
  was: Timeline,
  touched: Int32Array,
  touchedCount: number,
  marks: Marks,
): void {
  refoldPitches(t, was, touched, touchedCount, marks);
  refoldRooms(t, was, marks);
}

/**
 * The first half: days, packs and pitches. `again`: `t` has been through this since it was a copy, with the same
 * marks, and more has been touched.
 */
export function refoldPitches(
  t: Timeline,
  was: Timeline,
  touched: Int32Array,
  touchedCount: number,
  marks: Marks,
  again = false,
): void {
  refoldDays(t, was, touched, touchedCount, marks, again);
  pitchAgain(t, was, marks);
}

/** The days alone: the order, and what follows from each touched brew's day, tank and strain. */
export function refoldDays(
  t: Timeline,
  was: Timeline,
  touched: Int32Array,
  touchedCount: number,
  marks: Marks,
  again = false,
): void {
  const p = t.problem;
  const { judge, dirty, gives, source: sources } = marks;
  if (!again) {
    judge.fill(0);
    dirty.fill(0);
    gives.fill(0);
    sources.fill(0);
    marks.packs = false;
    marks.moved = false;
  }
  let left = false;
  let moved = false;
  for (let i = 0; i < touchedCount; i++) {
    const b = touched[i] as number;
    if (!dirty[b]) {
      if (t.placed[b] !== was.placed[b]) {
        moved = true;
        if (t.placed[b]) t.order[t.orderCount++] = b;
        else left = true;
      } else if (t.day[b] !== was.day[b]) moved = true;
    }
    dirty[b] = 1;
    gives[b] = 1;
    if (t.placed[b]) dates(p, t, b);
    if ((t.placed[b] && t.source[b] === FRESH) || (was.placed[b] && was.source[b] === FRESH)) {
      marks.packs = true;
    }
  }
  if (!moved) return;
  marks.moved = true;
  if (left) closeOrder(t);
  sortAgain(t);
}

/** Works out anew the packs and pitches that the days and sources touched lead to. */
export function pitchAgain(t: Timeline, was: Timeline, marks: Marks): void {
  const p = t.problem;
  const nJars = p.jars.length;
  const { dirty, gives } = marks;
  if (marks.packs) {
    buyPacks(p, t);
    for (let i = 0; i < t.orderCount; i++) {
      const b = t.order[i] as number;
      if (
        t.packs[b] !== was.packs[b] ||
        t.seedB[b] !== was.seedB[b] ||
        t.packsFromHand[b] !== was.packsFromHand[b] ||
        t.ageDays[b] !== was.ageDays[b] ||
        t.drawnEarly[b] !== was.drawnEarly[b] ||
        t.viability[b] !== was.viability[b]
      ) {
        dirty[b] = 1;
      }
    }
  }
  for (let i = 0; i < t.orderCount; i++) {
    const b = t.order[i] as number;
    const from = (t.source[b] as number) - nJars;
    if (!dirty[b] && !(from >= 0 && gives[from])) continue;
    dirty[b] = 1;
    pitch(p, t, b);
    if (
      t.pitchedB[b] !== was.pitchedB[b] ||
      t.generation[b] !== was.generation[b] ||
      t.tainted[b] !== was.tainted[b] ||
      t.cropMl[b] !== was.cropMl[b]
    ) {
      gives[b] = 1;
    }
  }
}

/** The second half: what is kept and drawn of each source, the shelf, the vessels, the kettle. */
export function refoldRooms(t: Timeline, was: Timeline, marks: Marks): void {
  const p = t.problem;
  const nJars = p.jars.length;
  const { judge, dirty, source: sources } = marks;
  for (let y = 0; y < t.keep.length; y++) {
    const s = t.keep[y] as number;
    if (s >= 0) sources[s] = 1;
    const before = was.keep[y] as number;
    if (before >= 0) sources[before] = 1;
  }
  keepForNextSeason(p, t);
  for (let b = 0; b < dirty.length; b++) {
    if (!dirty[b]) continue;
    judge[b] = 1;
    if (t.placed[b] && (t.source[b] as number) >= 0) sources[t.source[b] as number] = 1;
    if (was.placed[b] && (was.source[b] as number) >= 0) sources[was.source[b] as number] = 1;
  }
  for (let s = 0; s < sources.length; s++) {
    if (!sources[s]) continue;
    sumSource(t, s);
    if (s >= nJars) judge[s - nJars] = 1;
  }
  setReserves(p, t);
  fillShelf(p, t);
  fillVessels(p, t);
  if (marks.moved) fillKettle(p, t);
}

/** Takes out of the order what is no longer brewed. */
function closeOrder(t: Timeline): void {
  const { order, placed } = t;
  let n = 0;
  for (let i = 0; i < t.orderCount; i++) {
    const b = order[i] as number;
    if (placed[b]) order[n++] = b;
  }
  t.orderCount = n;
}

/** Sorts the order by day, and by number on the same day; most of it is in order already. */
function sortAgain(t: Timeline): void {
  const { order, day } = t;
  for (let i = 1; i < t.orderCount; i++) {
    const b = order[i] as number;
    const d = day[b] as number;
    let j = i - 1;
    while (j >= 0) {
      const other = order[j] as number;
      const od = day[other] as number;
      if (od < d || (od === d && other < b)) break;
      order[j + 1] = other;
      j--;
    }
    order[j + 1] = b;
  }
}
