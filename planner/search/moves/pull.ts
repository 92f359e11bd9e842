// Pulls a brew, or what follows it in its tank as well, forward to the first days that can be had.
import { FAR } from '../../timeline/problem.ts';
import { type Move, movable } from './move.ts';

export const pull: Move = {
  name: 'pull',
  share: 6,
  apply(desk, t) {
    const b = movable(desk);
    if (b < 0) return false;
    const { current, lanes, random } = desk;
    const tank = current.tank[b] as number;
    lanes.read(current);
    const { brews, begins, row } = lanes;
    let count = 0;
    let from = -FAR;
    for (let i = begins[tank] as number; i < (begins[tank + 1] as number); i++) {
      const o = brews[i] as number;
      if (o === b || count > 0) row[count++] = o;
      else from = Math.max(from, current.free[o] as number);
    }
    t.day[b] = 0;
    const what = random.next();
    lanes.lay(
      t,
      current,
      tank,
      count,
      from,
      what < 0.4 ? 'none' : what < 0.7 ? 'late' : 'all',
      desk.touching,
    );
    return desk.touchedCount > 0;
  },
};
