// Tanks that are alike are one group with room for several; and which days the bound counts in.
import type { Problem } from '../timeline/problem.ts';
import type { Timeline } from '../timeline/timeline.ts';

export type Groups = {
  groupOf: number[];
  groups: number;
  /** Brew days on which some brew may start, ascending. */
  days: Int32Array;
  /** First index of `days` on or after a day. */
  indexFrom(day: number): number;
  /** By group and index of `days`: tanks not held by a beer that is in them already. */
  roomOf: Int32Array;
  /** By index of `days`: how many brews may start. */
  startsOf: Int32Array;
};

/** `facts`: a timeline on which only brewed brews stand, unfolded. */
export function groupTanks(p: Problem, facts: Timeline): Groups {
  const apart = p.inForce.some((was) => was !== null) || p.brews.some((brew) => brew.pinTank >= 0);
  const keys = p.tanks.map(({ name, ...kit }, k) => JSON.stringify(apart ? k : kit));
  const names = [...new Set(keys)];
  const groupOf = keys.map((key) => names.indexOf(key));
  const all = new Set<number>();
  for (const brew of p.brews) if (!brew.done) for (const day of brew.days) all.add(day);
  const days = Int32Array.from([...all].sort((a, b) => a - b));
  const indexFrom = (day: number): number => {
    let low = 0;
    let high = days.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((days[middle] as number) < day) low = middle + 1;
      else high = middle;
    }
    return low;
  };
  const roomOf = new Int32Array(names.length * days.length);
  p.tanks.forEach((_, k) => {
    const row = (groupOf[k] as number) * days.length;
    for (let i = 0; i < days.length; i++) roomOf[row + i] = (roomOf[row + i] as number) + 1;
  });
  const startsOf = new Int32Array(days.length).fill(p.house.brewsPerDay);
  p.brews.forEach((brew, b) => {
    if (!brew.done) return;
    const row = (groupOf[facts.tank[b] as number] ?? 0) * days.length;
    const until = indexFrom(facts.free[b] as number);
    for (let i = indexFrom(brew.done.day); i < until; i++) {
      roomOf[row + i] = Math.max(0, (roomOf[row + i] as number) - 1);
    }
  });
  return { groupOf, groups: names.length, days, indexFrom, roomOf, startsOf };
}
