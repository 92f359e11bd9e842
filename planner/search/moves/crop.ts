// Harvests a beer on another day, where the tank has a bottom outlet.
import { type Move, movable } from './move.ts';

export const crop: Move = {
  name: 'crop',
  share: 5,
  apply(desk, t) {
    const b = movable(desk);
    if (b < 0 || !desk.problem.tanks[t.tank[b] as number]?.bottomOutlet) return false;
    const next = desk.random.below(6) - 1;
    if (next === t.crop[b]) return false;
    t.crop[b] = next;
    desk.touch(b);
    return true;
  },
};
