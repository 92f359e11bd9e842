// Harvests a beer earlier, out of a bottom outlet, and pitches another from it that was brewed too soon for its emptying.
import { FRESH } from '../../timeline/problem.ts';
import { type Move, movable } from './move.ts';

/** So many work days after the first possible one a harvest is tried. */
const LATEST = 4;

export const tap: Move = {
  name: 'tap',
  share: 5,
  apply(desk, t) {
    const { current, problem: p, random, freedom } = desk;
    const b = movable(desk);
    if (b < 0 || !freedom.slurry || (p.brews[b]?.pinSource ?? FRESH) >= FRESH) return false;
    let from = -1;
    let seen = 0;
    for (let i = 0; i < current.orderCount; i++) {
      const o = current.order[i] as number;
      if ((current.day[o] as number) >= (current.day[b] as number)) break;
      if (current.yeast[o] !== t.yeast[b] || t.done[o]) continue;
      if (!p.tanks[current.tank[o] as number]?.bottomOutlet) continue;
      if ((current.usableFrom[o] as number) <= (current.useDay[b] as number)) continue;
      if (random.below(++seen) === 0) from = o;
    }
    if (from < 0) return false;
    t.crop[from] = random.below(LATEST);
    t.source[b] = p.jars.length + from;
    desk.chosen = b;
    desk.touch(from);
    desk.touch(b);
    return true;
  },
};
