// Two brews change places: day and tank.
import { type Move, movable } from './move.ts';

export const swap: Move = {
  name: 'swap',
  share: 8,
  apply(desk, t) {
    const a = movable(desk);
    const b = movable(desk);
    if (a < 0 || b < 0 || a === b) return false;
    const brewA = desk.problem.brews[a];
    const brewB = desk.problem.brews[b];
    if (!brewA || !brewB) return false;
    const dayA = t.day[a] as number;
    const dayB = t.day[b] as number;
    const tankA = t.tank[a] as number;
    const tankB = t.tank[b] as number;
    if (!brewA.tanks.includes(tankB) || !brewB.tanks.includes(tankA)) return false;
    if (!brewA.days.includes(dayB) || !brewB.days.includes(dayA)) return false;
    if (!desk.slotFree(desk.current, a, tankB, dayB, b)) return false;
    if (!desk.slotFree(desk.current, b, tankA, dayA, a)) return false;
    t.day[a] = dayB;
    t.tank[a] = tankB;
    t.day[b] = dayA;
    t.tank[b] = tankA;
    desk.touch(a);
    desk.touch(b);
    return true;
  },
};
