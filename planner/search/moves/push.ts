// Puts a brew into a tank where it is not free and pushes what follows there later; what finds no day is left out.
import { FAR } from '../../timeline/problem.ts';
import type { Timeline } from '../../timeline/timeline.ts';
import type { Desk } from '../desk.ts';
import type { Move } from './move.ts';

/** Whether another brew already takes the kettle on that day. */
function kettleTaken(desk: Desk, t: Timeline, b: number, day: number): boolean {
  const p = desk.problem;
  let turns = 0;
  for (let o = 0; o < t.placed.length; o++) {
    if (o !== b && t.placed[o] && t.day[o] === day) turns += p.brews[o]?.turns ?? 1;
  }
  return turns >= p.house.brewsPerDay;
}

/** Lays brew b into the tank on that day; false if something that may not move stands in the way. */
export function pushInto(desk: Desk, t: Timeline, b: number, tank: number, day: number): boolean {
  const p = desk.problem;
  const kit = p.tanks[tank];
  if (!kit) return false;
  const until = (o: number, from: number) => {
    const brew = p.brews[o];
    const times = p.yeasts[t.yeast[o] as number]?.turnaroundTimes ?? 1;
    const emptied = p.days.nextWork[from + (brew?.tankDays ?? 0) - p.days.first] as number;
    return emptied + kit.turnaroundDays * times;
  };
  t.placed[b] = 1;
  t.day[b] = day;
  t.tank[b] = tank;
  desk.touch(b);
  if (kettleTaken(desk, t, b, day)) return false;
  let free = until(b, day);
  // what began before and still stands there gives way behind it
  const current = desk.current;
  const pushed: number[] = [];
  for (let i = 0; i < current.orderCount; i++) {
    const o = current.order[i] as number;
    if (o === b || !t.placed[o] || t.tank[o] !== tank) continue;
    const start = t.day[o] as number;
    if (start < day && (current.free[o] as number) <= day) continue;
    pushed.push(o);
  }
  for (const o of pushed) {
    const start = t.day[o] as number;
    if (start >= free) {
      free = Math.max(free, until(o, start));
      continue;
    }
    const brew = p.brews[o];
    if (!brew || brew.done || brew.pinDay >= 0 || brew.fixedDay >= 0) return false;
    let next = FAR;
    for (let k = 0; k < brew.days.length; k++) {
      const d = brew.days[k] as number;
      if (d >= free && !kettleTaken(desk, t, o, d)) {
        next = d;
        break;
      }
    }
    desk.touch(o);
    if (next === FAR) t.placed[o] = 0;
    else {
      t.day[o] = next;
      free = until(o, next);
    }
  }
  return true;
}

export const push: Move = {
  name: 'push',
  share: 8,
  apply(desk, t) {
    const { free, random } = desk;
    if (free.length === 0) return false;
    // left-out brews first: this is how they find their way in
    let b = free[random.below(free.length)] as number;
    if (random.next() < 0.5) {
      const out = free.filter((x) => !t.placed[x]);
      if (out.length > 0) b = out[random.below(out.length)] as number;
    }
    const brew = desk.problem.brews[b];
    if (!brew || brew.days.length === 0 || brew.tanks.length === 0) return false;
    const day = brew.days[random.below(brew.days.length)] as number;
    const tank = brew.tanks[random.below(brew.tanks.length)] as number;
    if (t.placed[b] && t.day[b] === day && t.tank[b] === tank) return false;
    if (!t.placed[b]) {
      t.yeast[b] = brew.yeasts[random.below(brew.yeasts.length)] ?? 0;
      t.starter[b] = 0;
    }
    return pushInto(desk, t, b, tank, day);
  },
};
