// A brew that is left out takes the place of one that is brewed and matters no more; that one is left out instead.
import { insertInto } from './insert.ts';
import type { Move } from './move.ts';

export const instead: Move = {
  name: 'instead',
  share: 8,
  apply(desk, t) {
    const { free, random, current, problem } = desk;
    // one of the left-out and one of the brewed, both by lot
    let a = -1;
    let outs = 0;
    for (const b of free) {
      if (!current.placed[b] && random.below(++outs) === 0) a = b;
    }
    const brew = problem.brews[a];
    if (!brew || brew.days.length === 0) return false;
    let b = -1;
    let ins = 0;
    for (const o of free) {
      const other = problem.brews[o];
      if (!current.placed[o] || !other || other.priority > brew.priority) continue;
      // a day that is fixed or pinned stays, met or not
      if (other.fixedDay >= 0 || other.pinDay >= 0) continue;
      if (!brew.tanks.includes(current.tank[o] as number)) continue;
      if (random.below(++ins) === 0) b = o;
    }
    if (b < 0) return false;
    t.placed[b] = 0;
    desk.touch(b);
    t.yeast[a] = brew.yeasts[random.below(brew.yeasts.length)] ?? 0;
    t.starter[a] = 0;
    t.crop[a] = current.crop[b] as number;
    desk.lanes.read(current, b);
    const day = current.day[b] as number;
    return insertInto(desk, t, a, current.tank[b] as number, day, desk.somePull());
  },
};
