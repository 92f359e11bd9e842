// After a move: brews whose yeast can no longer come, or does not suffice, are pitched from the best that is left.
import { dates } from '../timeline/dates.ts';
import { pitch } from '../timeline/pitch.ts';
import { FRESH } from '../timeline/problem.ts';
import type { Timeline } from '../timeline/timeline.ts';
import type { Desk } from './desk.ts';
import { NO_STARTER } from './quotes.ts';

/**
 * Goes through the trial in order of day, pitches worked out, and gives another source to each brew whose own one breaks
 * a rule. Touches what it looks at. `desk.chosen` keeps its source at others' expense. Returns how much dearer what it gave
 * another source has become, `room` as soon as it is more than that.
 */
export function mend(desk: Desk, t: Timeline, room: number): number {
  const { current, problem: p, quotes, judge, marks, random } = desk;
  const nJars = p.jars.length;
  dropKeeps(desk, t);
  let dearer = 0;
  quotes.read(t);
  const { changed } = desk;
  changed.fill(0);
  for (let i = 0; i < t.orderCount; i++) {
    const b = t.order[i] as number;
    const source = t.source[b] as number;
    const after = source >= nJars && changed[source - nJars] === 1;
    if (t.done[b]) continue;
    const brew = p.brews[b];
    if (after) {
      quotes.claim(source, t.drawMl[b] as number, -1);
      pitch(p, t, b);
      quotes.claim(source, t.drawMl[b] as number, 1);
      changed[b] = 1;
      desk.touch(b);
    }
    if (b === desk.chosen || (brew && brew.pinSource >= FRESH)) continue;
    const short = source >= 0 && quotes.over(t, source) > 1e-6;
    if (!short) {
      if (!after && !marks.dirty[b]) continue;
      if (judge.askHard(t, b) === 0) continue;
    }
    const starter = t.starter[b] as number;
    quotes.claim(source, t.drawMl[b] as number, -1);
    const now = quotes.price(t, b, source);
    const sizes = NO_STARTER | (1 << starter) | (1 << desk.randomStarter(t, b));
    const best = quotes.best(t, b, sizes, random, desk.heat * 0.5);
    if (best < now) {
      t.source[b] = quotes.source;
      t.starter[b] = quotes.starter;
      changed[b] = 1;
    } else {
      t.source[b] = source;
      t.starter[b] = starter;
    }
    dates(p, t, b);
    dearer +=
      quotes.price(t, b, t.source[b] as number) - Math.min(now, current.costAt[b] as number);
    if (dearer > room) return dearer;
    quotes.claim(t.source[b] as number, t.drawMl[b] as number, 1);
    desk.touch(b);
  }
  return dearer;
}

/** A jar kept of a beer that is not brewed is no jar. */
function dropKeeps(desk: Desk, t: Timeline): void {
  for (let y = 0; y < t.keep.length; y++) {
    const k = (t.keep[y] as number) - desk.problem.jars.length;
    if (k >= 0 && !t.placed[k]) t.keep[y] = -1;
  }
}
