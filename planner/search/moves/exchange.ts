// Two brews change places in the rows of their tanks; what follows gives way or closes up.
import { FAR } from '../../timeline/problem.ts';
import type { Timeline } from '../../timeline/timeline.ts';
import type { Desk } from '../desk.ts';
import type { Pull } from '../lanes.ts';
import { type Move, movable } from './move.ts';

/** Lays a tank's row anew from the first of a or b on, with each standing where the other did. */
function layWith(desk: Desk, t: Timeline, tank: number, a: number, b: number, pull: Pull): boolean {
  const { lanes, current } = desk;
  const { brews, begins, row } = lanes;
  const end = begins[tank + 1] as number;
  let count = 0;
  let from = -FAR;
  for (let i = begins[tank] as number; i < end; i++) {
    const o = brews[i] as number;
    if (o === a) row[count++] = b;
    else if (o === b) row[count++] = a;
    else if (count > 0) row[count++] = o;
    else from = Math.max(from, current.free[o] as number);
  }
  return lanes.lay(t, current, tank, count, from, pull, desk.touching);
}

export const exchange: Move = {
  name: 'exchange',
  share: 16,
  apply(desk, t) {
    const { random, current } = desk;
    const a = movable(desk);
    if (a < 0) return false;
    let b = -1;
    for (let tries = 0; tries < 8; tries++) {
      const o = movable(desk);
      if (o < 0 || o === a) continue;
      b = o;
      // mostly with one that is brewed at about the same time
      if (Math.abs((current.day[o] as number) - (current.day[a] as number)) < 35) break;
    }
    if (b < 0) return false;
    const tankA = current.tank[a] as number;
    const tankB = current.tank[b] as number;
    desk.lanes.read(current);
    const pull = desk.somePull();
    t.day[a] = current.day[b] as number;
    t.day[b] = current.day[a] as number;
    if (random.next() < 0.5) {
      // half of the time in order only: each as soon as its new place is free
      t.day[a] = 0;
      t.day[b] = 0;
    }
    if (!layWith(desk, t, tankA, a, b, pull)) return false;
    return tankA === tankB || layWith(desk, t, tankB, a, b, pull);
  },
};
