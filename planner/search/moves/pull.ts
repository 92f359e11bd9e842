// Pulls a brew forward to the first day on which its tank, or another, is free.
import { type Move, movable } from './move.ts';

export const pull: Move = {
  name: 'pull',
  share: 6,
  apply(desk, t) {
    const b = movable(desk);
    const brew = desk.problem.brews[b];
    if (!brew || brew.tanks.length === 0) return false;
    const { current, random } = desk;
    const tank =
      random.next() < 0.6
        ? (current.tank[b] as number)
        : (brew.tanks[random.below(brew.tanks.length)] as number);
    for (let k = 0; k < brew.days.length; k++) {
      const d = brew.days[k] as number;
      if (d >= (current.day[b] as number)) return false;
      if (!desk.slotFree(current, b, tank, d)) continue;
      t.day[b] = d;
      t.tank[b] = tank;
      desk.touch(b);
      return true;
    }
    return false;
  },
};
