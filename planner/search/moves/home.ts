// On re-planning: takes one brew back to where the plan in force has it, source and all.
import type { Move } from './move.ts';

export const home: Move = {
  name: 'home',
  share: 12,
  apply(desk, t) {
    const was = desk.home;
    if (!was) return false;
    const { free, random } = desk;
    for (let tries = 0; tries < 10; tries++) {
      const b = free[random.below(free.length)] ?? -1;
      if (b < 0 || !was.placed[b]) continue;
      const moved = !t.placed[b] || t.day[b] !== was.day[b] || t.tank[b] !== was.tank[b];
      const fed = t.source[b] !== was.source[b] || t.yeast[b] !== was.yeast[b];
      const made = t.starter[b] !== was.starter[b] || t.crop[b] !== was.crop[b];
      if (!moved && !fed && !made) continue;
      // the place alone, or the yeast alone, or both
      const what = random.below(3);
      if (!t.placed[b] || (what !== 1 && moved)) {
        t.placed[b] = 1;
        t.day[b] = was.day[b] as number;
        t.tank[b] = was.tank[b] as number;
        t.crop[b] = was.crop[b] as number;
      }
      if (what !== 0 || !moved) {
        t.yeast[b] = was.yeast[b] as number;
        t.source[b] = was.source[b] as number;
        t.starter[b] = was.starter[b] as number;
        t.crop[b] = was.crop[b] as number;
      }
      desk.touch(b);
      return true;
    }
    return false;
  },
};
