// Two tanks change all that comes after a day: each goes on with what the other was to hold.
import { FAR } from '../../timeline/problem.ts';
import type { Timeline } from '../../timeline/timeline.ts';
import type { Desk } from '../desk.ts';
import type { Pull } from '../lanes.ts';
import { type Move, movable } from './move.ts';

/** Lays into `into` what stood in tank `out` from that day on. */
function follow(
  desk: Desk,
  t: Timeline,
  into: number,
  out: number,
  day: number,
  pull: Pull,
): boolean {
  const { lanes, current } = desk;
  const { brews, begins, row } = lanes;
  let from = -FAR;
  for (let i = begins[into] as number; i < (begins[into + 1] as number); i++) {
    const o = brews[i] as number;
    if ((current.day[o] as number) < day) from = Math.max(from, current.free[o] as number);
  }
  let count = 0;
  for (let i = begins[out] as number; i < (begins[out + 1] as number); i++) {
    const o = brews[i] as number;
    if ((current.day[o] as number) >= day) row[count++] = o;
  }
  return lanes.lay(t, current, into, count, from, pull, desk.touching);
}

export const tails: Move = {
  name: 'tails',
  share: 5,
  apply(desk, t) {
    const { random, current, problem } = desk;
    if (problem.tanks.length < 2) return false;
    const b = movable(desk);
    if (b < 0) return false;
    const one = current.tank[b] as number;
    const two = random.below(problem.tanks.length);
    if (one === two) return false;
    desk.lanes.read(current);
    const day = current.day[b] as number;
    const pull = desk.somePull();
    return follow(desk, t, one, two, day, pull) && follow(desk, t, two, one, day, pull);
  },
};
