// Puts a brew into a tank's row, between or over others: what follows there gives way, what it left behind may close up.
import { FAR } from '../../timeline/problem.ts';
import type { Timeline } from '../../timeline/timeline.ts';
import type { Desk } from '../desk.ts';
import type { Pull } from '../lanes.ts';
import type { Move } from './move.ts';

/** Lays brew b into the tank around that day; false if something that may not move stands in the way. */
export function insertInto(
  desk: Desk,
  t: Timeline,
  b: number,
  tank: number,
  day: number,
  pull: Pull,
): boolean {
  const { lanes, current } = desk;
  const { brews, begins, row } = lanes;
  const begin = begins[tank] as number;
  const end = begins[tank + 1] as number;
  let count = 0;
  let from = -FAR;
  let laid = false;
  // from its own old place on, if that is in this row and earlier: what follows may close up
  let started = false;
  for (let i = begin; i < end; i++) {
    const o = brews[i] as number;
    if (o === b) {
      started = true;
      continue;
    }
    const start = current.day[o] as number;
    if (!laid && start >= day) {
      row[count++] = b;
      laid = true;
    }
    // one that still stands there on that day gives way as well, or is let be and b waits for it
    if (!laid && !started && (current.free[o] as number) > day && desk.random.next() < 0.5) {
      row[count++] = b;
      laid = true;
    }
    if (laid || started) row[count++] = o;
    else from = Math.max(from, current.free[o] as number);
  }
  if (!laid) row[count++] = b;
  t.day[b] = day;
  const old = current.tank[b] as number;
  const moves = current.placed[b] === 1 && old !== tank;
  if (!lanes.lay(t, current, tank, count, from, pull, desk.touching)) return false;
  return !moves || pull === 'none' || closeUp(desk, t, old, b, pull);
}

/** Lets what followed brew b in its old tank move up. */
function closeUp(desk: Desk, t: Timeline, tank: number, b: number, pull: Pull): boolean {
  const { lanes, current } = desk;
  const { brews, begins, row } = lanes;
  const end = begins[tank + 1] as number;
  let count = 0;
  let from = -FAR;
  let passed = false;
  for (let i = begins[tank] as number; i < end; i++) {
    const o = brews[i] as number;
    if (o === b) passed = true;
    else if (passed) row[count++] = o;
    else from = Math.max(from, current.free[o] as number);
  }
  return lanes.lay(t, current, tank, count, from, pull, desk.touching);
}

export const insert: Move = {
  name: 'insert',
  share: 20,
  apply(desk, t) {
    const { free, random, current } = desk;
    if (free.length === 0) return false;
    // left-out brews first: this is how they find their way in
    let b = free[random.below(free.length)] as number;
    if (random.next() < 0.5) {
      const out = free.filter((x) => !t.placed[x]);
      if (out.length > 0) b = out[random.below(out.length)] as number;
    }
    const brew = desk.problem.brews[b];
    if (!brew || brew.days.length === 0 || brew.tanks.length === 0) return false;
    const placed = current.placed[b] === 1;
    let day = brew.days[random.below(brew.days.length)] as number;
    if (placed && random.next() < 0.6) {
      day = (current.day[b] as number) + random.below(43) - 21;
    }
    const tank = brew.tanks[random.below(brew.tanks.length)] as number;
    if (!placed) {
      t.yeast[b] = brew.yeasts[random.below(brew.yeasts.length)] ?? 0;
      t.starter[b] = 0;
    }
    desk.lanes.read(current);
    return insertInto(desk, t, b, tank, day, desk.somePull());
  },
};
