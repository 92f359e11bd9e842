// A brew overtakes the one before it in its tank: it takes that place, and what it passes follows as soon as it can.
import { type Move, movable } from './move.ts';
import { pushInto } from './push.ts';

export const overtake: Move = {
  name: 'overtake',
  share: 8,
  apply(desk, t) {
    const b = movable(desk);
    const brew = desk.problem.brews[b];
    if (!brew || brew.days.length < 2) return false;
    const { current } = desk;
    const tank = current.tank[b] as number;
    const day = current.day[b] as number;
    // the two that stand before it in this tank
    let before = -1;
    let beforeThat = -1;
    for (let i = 0; i < current.orderCount; i++) {
      const o = current.order[i] as number;
      if (o === b || current.tank[o] !== tank || (current.day[o] as number) >= day) continue;
      beforeThat = before;
      before = o;
    }
    if (before < 0) return false;
    const from = beforeThat < 0 ? 0 : (current.free[beforeThat] as number);
    let to = -1;
    for (let k = 0; k < brew.days.length; k++) {
      const d = brew.days[k] as number;
      if (d < from) continue;
      if (d >= day) break;
      to = d;
      break;
    }
    return to >= 0 && pushInto(desk, t, b, tank, to);
  },
};
