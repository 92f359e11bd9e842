// Gives a pitch a starter, another size of it, or none.
import { type Move, movable } from './move.ts';

export const wake: Move = {
  name: 'wake',
  share: 8,
  apply(desk, t) {
    const b = movable(desk);
    if (b < 0) return false;
    const size = desk.randomStarter(t, b);
    if (size === t.starter[b]) return false;
    t.starter[b] = size;
    desk.touch(b);
    return true;
  },
};
