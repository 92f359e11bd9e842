// A brew is brewed as soon as another's harvest can feed it and is pitched from it; or that other one early enough to feed it.
import { FRESH } from '../../timeline/problem.ts';
import type { Desk } from '../desk.ts';
import { firstAtLeast } from '../lanes.ts';
import { insertInto } from './insert.ts';
import { type Move, movable } from './move.ts';

/** So many brew days after the first possible one the child may be brewed, or before the last possible one the parent. */
const LATEST = 3;

/** A brew by lot that could give brew b yeast of its strain, where it stands or brewed earlier. */
function parentOf(desk: Desk, b: number, yeast: number, earlier: boolean): number {
  const { current: t, random, problem: p } = desk;
  const days = p.brews[b]?.days;
  const last = earlier ? (t.useDay[b] as number) : (days?.[days.length - 1] ?? 0);
  // by lot where to begin looking; the first that will do is taken
  const begin = random.below(t.orderCount);
  for (let i = 0; i < t.orderCount; i++) {
    const o = t.order[(begin + i) % t.orderCount] as number;
    if (o === b || t.yeast[o] !== yeast) continue;
    if (earlier ? t.done[o] : (t.usableFrom[o] as number) > last) continue;
    if (!desk.judge.bars(t, b, p.jars.length + o, last)) return o;
  }
  return -1;
}

export const follow: Move = {
  name: 'follow',
  share: 14,
  apply(desk, t) {
    const { current, problem: p, random, freedom } = desk;
    const b = movable(desk);
    const brew = p.brews[b];
    if (!brew || !freedom.slurry || brew.pinSource >= FRESH) return false;
    const earlier = random.next() < 0.35;
    const yeast = earlier
      ? (current.yeast[b] as number)
      : (brew.yeasts[random.below(brew.yeasts.length)] ?? 0);
    const parent = parentOf(desk, b, yeast, earlier);
    const other = p.brews[parent];
    if (!other) return false;
    // what is moved: the child to the parent's harvest, or the parent before the child
    const mover = earlier ? parent : b;
    const { days, tanks } = earlier ? other : brew;
    if (days.length === 0 || tanks.length === 0) return false;
    let at: number;
    if (earlier) {
      const span = (current.usableFrom[parent] as number) - (current.day[parent] as number);
      at = firstAtLeast(days, (current.day[b] as number) - span + 1) - 1 - random.below(LATEST);
    } else at = firstAtLeast(days, current.usableFrom[parent] as number) + random.below(LATEST);
    const day = days[Math.min(days.length - 1, Math.max(0, at))] as number;
    const tank =
      random.next() < 0.5
        ? (current.tank[mover] as number)
        : (tanks[random.below(tanks.length)] as number);
    t.yeast[b] = yeast;
    t.source[b] = p.jars.length + parent;
    if (random.next() < 0.7) t.starter[b] = 0;
    desk.chosen = b;
    desk.touch(b);
    if (day === current.day[mover] && tank === current.tank[mover])
      return current.source[b] !== t.source[b];
    desk.lanes.read(current);
    return insertInto(desk, t, mover, tank, day, desk.somePull());
  },
};
