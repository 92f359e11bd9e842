// From what was decided to all that follows: days, packs, draws, cells, jars.
import { dates } from './dates.ts';
import { buyPacks } from './packs.ts';
import { keepForNextSeason, pitch } from './pitch.ts';
import { FRESH } from './problem.ts';
import { setReserves } from './reserve.ts';
import { fillKettle, fillShelf, fillVessels } from './room.ts';
import type { Timeline } from './timeline.ts';

/** Works out everything that follows from the decisions in `t`, in place. */
export function unfold(t: Timeline): void {
  const p = t.problem;
  sortByDay(t);
  for (let i = 0; i < t.orderCount; i++) dates(p, t, t.order[i] as number);
  buyPacks(p, t);
  for (let i = 0; i < t.orderCount; i++) pitch(p, t, t.order[i] as number);
  keepForNextSeason(p, t);
  t.drawnMl.fill(0);
  t.draws.fill(0);
  t.jarsCut.fill(0);
  for (let i = 0; i < t.orderCount; i++) {
    const b = t.order[i] as number;
    addDraw(t, t.source[b] as number, t.drawMl[b] as number, t.drawJars[b] as number);
  }
  for (let y = 0; y < t.keep.length; y++) addKeep(t, y);
  setReserves(p, t);
  fillShelf(p, t);
  fillVessels(p, t);
  fillKettle(p, t);
}

/** Counts one draw on a source. */
export function addDraw(t: Timeline, source: number, ml: number, jars: number): void {
  if (source === FRESH) return;
  t.drawnMl[source] = (t.drawnMl[source] as number) + ml;
  t.draws[source] = (t.draws[source] as number) + 1;
  t.jarsCut[source] = (t.jarsCut[source] as number) + jars;
}

/** Counts the jars kept of strain y as a draw on their source. */
export function addKeep(t: Timeline, y: number): void {
  const jars = t.keepJars[y] as number;
  if (jars > 0) addDraw(t, t.keep[y] as number, t.keepMl[y] as number, jars);
}

function sortByDay(t: Timeline): void {
  const { order, placed, day } = t;
  let n = 0;
  for (let b = 0; b < placed.length; b++) if (placed[b]) order[n++] = b;
  t.orderCount = n;
  for (let i = 1; i < n; i++) {
    const b = order[i] as number;
    const d = day[b] as number;
    let j = i - 1;
    while (j >= 0) {
      const other = order[j] as number;
      if ((day[other] as number) <= d) break;
      order[j + 1] = other;
      j--;
    }
    order[j + 1] = b;
  }
}
