// A brew, or two or three in a row, goes a few places up or down in its tank's row; what it passes closes up.
import { FAR } from '../../timeline/problem.ts';
import type { Pull } from '../lanes.ts';
import { type Move, movable } from './move.ts';

const LONGEST = 3;
/** How many places further each next one is as likely: most shifts are of one or two. */
const PLACES = 2;

/** What follows mostly closes up: a gap left behind is seldom wanted. */
const pullOf = (what: number): Pull => (what < 0.2 ? 'none' : what < 0.55 ? 'late' : 'all');

export const shift: Move = {
  name: 'shift',
  share: 14,
  apply(desk, t) {
    const b = movable(desk);
    if (b < 0) return false;
    const { current, lanes, random } = desk;
    const tank = current.tank[b] as number;
    lanes.read(current);
    const { brews, begins, row } = lanes;
    const begin = begins[tank] as number;
    const end = begins[tank + 1] as number;
    let at = begin;
    while (at < end && brews[at] !== b) at++;
    const length = Math.min(end - at, 1 + (random.next() < 0.6 ? 0 : random.below(LONGEST)));
    const far = 1 + Math.floor(-PLACES * Math.log(1 - random.next()));
    const to = random.next() < 0.5 ? Math.max(begin, at - far) : Math.min(end - length, at + far);
    if (to === at) return false;
    let from = -FAR;
    const first = Math.min(at, to);
    for (let i = begin; i < first; i++) {
      from = Math.max(from, current.free[brews[i] as number] as number);
    }
    let count = 0;
    const put = (low: number, high: number, early: boolean): void => {
      for (let i = low; i < high; i++) {
        const o = brews[i] as number;
        row[count++] = o;
        if (early) t.day[o] = 0;
      }
    };
    if (to < at) {
      put(at, at + length, true);
      put(to, at, false);
    } else {
      put(at + length, to + length, true);
      put(at, at + length, true);
    }
    put(Math.max(at, to) + length, end, false);
    // a held brew asks for its own day
    return (
      lanes.lay(t, current, tank, count, from, pullOf(random.next()), desk.touching) &&
      desk.touchedCount > 0
    );
  },
};
