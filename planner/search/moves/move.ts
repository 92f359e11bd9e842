// What a move is: it changes the trial on the desk, or says that it cannot.
import type { Timeline } from '../../timeline/timeline.ts';
import type { Desk } from '../desk.ts';

export type Move = {
  name: string;
  /** How often it is tried, against the others. */
  share: number;
  /** Changes `t` (a copy of what stands, not yet unfolded) and touches what it changed; false: nothing to do. */
  apply(desk: Desk, t: Timeline): boolean;
};

/** A brew whose day or tank may be moved; -1 if there is none. */
export function movable(desk: Desk): number {
  const { free, random, current } = desk;
  if (free.length === 0) return -1;
  for (let tries = 0; tries < 8; tries++) {
    const b = free[random.below(free.length)] as number;
    if (current.placed[b]) return b;
  }
  return -1;
}
