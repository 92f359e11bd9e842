// Keeps a part of the starter of one brew, made larger for it, and pitches a later one from that; or gives up a part that nobody takes.
import { KEPT } from '../../timeline/kept.ts';
import { FRESH, type Problem, STARTER_SIZES } from '../../timeline/problem.ts';
import { type Move, movable } from './move.ts';

export const keepStarter: Move = {
  name: 'keep-starter',
  share: 10,
  apply(desk, t) {
    const { current, problem: p, random, freedom } = desk;
    const b = movable(desk);
    const nJars = p.jars.length;
    if (b < 0) return false;
    if (t.crop[b] === KEPT && !t.draws[nJars + b]) {
      t.crop[b] = -1;
      desk.touch(b);
      return true;
    }
    if (!freedom.slurry || (p.brews[b]?.pinSource ?? FRESH) >= FRESH) return false;
    let from = -1;
    let seen = 0;
    for (let i = 0; i < current.orderCount; i++) {
      const o = current.order[i] as number;
      if ((current.day[o] as number) >= (current.day[b] as number)) break;
      if (current.yeast[o] !== t.yeast[b] || t.done[o] || current.source[o] !== FRESH) continue;
      if (current.source[b] === nJars + o && current.crop[o] === KEPT) continue;
      if (isHeld(p, o) && current.crop[o] !== KEPT) continue;
      if (random.below(++seen) === 0) from = o;
    }
    if (from < 0 || p.yeasts[t.yeast[b] as number]?.dry) return false;
    t.crop[from] = KEPT;
    if (!isHeld(p, from)) t.starter[from] = 1 + random.below(STARTER_SIZES);
    t.source[b] = nJars + from;
    t.starter[b] = random.next() < 0.5 ? 0 : desk.randomStarter(t, b);
    desk.chosen = b;
    desk.touch(from);
    desk.touch(b);
    return true;
  },
};

/** Whether day and yeast of a brew are held, by its brewer or for being too near: its starter then stays as it is. */
function isHeld(p: Problem, b: number): boolean {
  const brew = p.brews[b];
  return brew !== undefined && brew.pinDay >= 0 && brew.pinSource >= FRESH;
}
