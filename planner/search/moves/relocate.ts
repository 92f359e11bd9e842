// Moves one brew to another free day and tank.
import { type Move, movable } from './move.ts';

export const relocate: Move = {
  name: 'relocate',
  share: 30,
  apply(desk, t) {
    const b = movable(desk);
    const brew = desk.problem.brews[b];
    if (!brew) return false;
    const { random, current } = desk;
    if (brew.days.length === 0 || brew.tanks.length === 0) return false;
    desk.lanes.read(current);
    const near = random.next() < 0.5;
    let here = 0;
    while (here < brew.days.length - 1 && (brew.days[here] as number) < (current.day[b] as number))
      here++;
    for (let tries = 0; tries < 12; tries++) {
      const at = near
        ? Math.min(brew.days.length - 1, Math.max(0, here + random.below(9) - 4))
        : random.below(brew.days.length);
      const day = brew.days[at] as number;
      const tank = brew.tanks[random.below(brew.tanks.length)] as number;
      if (day === current.day[b] && tank === current.tank[b]) continue;
      if (desk.lanes.blockedUntil(current, b, tank, day) > day) continue;
      t.day[b] = day;
      t.tank[b] = tank;
      if (random.next() < 0.3) t.crop[b] = random.below(5) - 1;
      desk.touch(b);
      return true;
    }
    return false;
  },
};
