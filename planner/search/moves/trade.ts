// Two brews of a strain change their sources.
import { FRESH } from '../../timeline/problem.ts';
import { type Move, movable } from './move.ts';

export const trade: Move = {
  name: 'trade',
  share: 6,
  apply(desk, t) {
    const a = movable(desk);
    const b = movable(desk);
    if (a < 0 || b < 0 || a === b || t.yeast[a] !== t.yeast[b] || t.source[a] === t.source[b]) {
      return false;
    }
    const { brews, jars } = desk.problem;
    if ((brews[a]?.pinSource ?? 0) >= FRESH || (brews[b]?.pinSource ?? 0) >= FRESH) return false;
    const ofA = t.source[a] as number;
    const ofB = t.source[b] as number;
    if (ofA === jars.length + b || ofB === jars.length + a) return false;
    t.source[a] = ofB;
    t.source[b] = ofA;
    if (desk.random.next() < 0.5) {
      const starter = t.starter[a] as number;
      t.starter[a] = t.starter[b] as number;
      t.starter[b] = starter;
    }
    desk.chosen = a;
    desk.touch(a);
    desk.touch(b);
    return true;
  },
};
