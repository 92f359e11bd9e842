// The brews of each tank one after another, and how a changed row of them is laid out in days again.
import { FAR, type Problem } from '../timeline/problem.ts';
import type { Timeline } from '../timeline/timeline.ts';

/** Which brews of a row are taken to the first day they can have; the others keep theirs where they can. */
export type Pull = 'none' | 'late' | 'all';

/** The first place in ascending `days` whose day is not before `from`. */
export function firstAtLeast(days: Int32Array, from: number): number {
  let low = 0;
  let high = days.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((days[middle] as number) < from) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** How far back a brew's turns may still be running on, days. */
const RUN_ON_DAYS = 9;

/** Rows of brews by tank, as a plan has them, and the kettle's starts by day. Made once a desk. */
export class Lanes {
  /** Brews by tank, each tank's in order of day. */
  readonly brews: Int32Array;
  /** Where each tank's row begins in `brews`; one more at the end. */
  readonly begins: Int32Array;
  /** Brews begun by day of the stretch, and the turns they want of the kettle. */
  private readonly starts: Int32Array;
  private readonly turns: Int32Array;
  private readonly runsOn: boolean;
  /** A row being put together by a move. */
  readonly row: Int32Array;
  private readonly next: Int32Array;

  constructor(private readonly problem: Problem) {
    const n = problem.brews.length;
    this.brews = new Int32Array(n);
    this.begins = new Int32Array(problem.tanks.length + 1);
    this.next = new Int32Array(problem.tanks.length + 1);
    this.starts = new Int32Array(problem.days.count);
    this.turns = new Int32Array(problem.days.count);
    this.runsOn = problem.brews.some((brew) => brew.turns > 1);
    this.row = new Int32Array(n + 4);
  }

  /** Reads the rows and the kettle's starts off an unfolded plan, without brew `but`. */
  read(t: Timeline, but = -1): void {
    const { brews, begins, next, starts } = this;
    begins.fill(0);
    starts.fill(0);
    this.turns.fill(0);
    for (let i = 0; i < t.orderCount; i++) {
      const b = t.order[i] as number;
      if (b === but) continue;
      const k = (t.tank[b] as number) + 1;
      begins[k] = (begins[k] as number) + 1;
      this.count(b, t.day[b] as number, 1);
    }
    for (let k = 1; k < begins.length; k++) {
      begins[k] = (begins[k] as number) + (begins[k - 1] as number);
      next[k - 1] = begins[k - 1] as number;
    }
    for (let i = 0; i < t.orderCount; i++) {
      const b = t.order[i] as number;
      if (b === but) continue;
      const k = t.tank[b] as number;
      brews[next[k] as number] = b;
      next[k] = (next[k] as number) + 1;
    }
  }

  /** Takes the start of brew b on that day out of the kettle's, or puts it in. */
  private count(b: number, day: number, by: 1 | -1): void {
    const d = day - this.problem.days.first;
    this.starts[d] = (this.starts[d] as number) + by;
    if (!this.runsOn) return;
    this.turns[d] = (this.turns[d] as number) + by * (this.problem.brews[b]?.turns ?? 1);
  }

  /** Whether the kettle has room for brew b from that day on: a close guess where turns run on, which the rule judges. */
  private kettleFree(b: number, day: number): boolean {
    const { days, house, brews } = this.problem;
    const most = house.brewsPerDay;
    const at = day - days.first;
    if ((this.starts[at] as number) >= most) return false;
    if (!this.runsOn) return true;
    let wanted = 0;
    let underWay = 0;
    for (let d = Math.max(0, at - RUN_ON_DAYS); d < days.count; d++) {
      if (!days.brew[d] && d !== at) continue;
      const mine = d === at ? 1 : 0;
      wanted += (this.turns[d] as number) + mine * (brews[b]?.turns ?? 1);
      underWay += (this.starts[d] as number) + mine;
      if (d >= at && underWay > most) return false;
      wanted = Math.max(0, wanted - most);
      underWay = Math.min(underWay, wanted);
      if (d >= at && wanted === 0) return true;
    }
    return true;
  }

  /** The day on which the tank is free again if brew b goes in on `day`. */
  freeAfter(t: Timeline, b: number, tank: number, day: number): number {
    const p = this.problem;
    const brew = p.brews[b];
    const times = p.yeasts[t.yeast[b] as number]?.turnaroundTimes ?? 1;
    const emptied = p.days.nextWork[day + (brew?.tankDays ?? 0) - p.days.first] as number;
    return emptied + (p.tanks[tank]?.turnaroundDays ?? 0) * times;
  }

  /**
   * `day`, or less, if brew b could begin in that tank on it with the others as they were read; else the first day after
   * what stands in the way.
   */
  blockedUntil(t: Timeline, b: number, tank: number, day: number): number {
    if (!this.kettleFree(b, day)) return day + 1;
    const p = this.problem;
    const brew = p.brews[b];
    if (!brew) return FAR;
    const until = this.freeAfter(t, b, tank, day);
    const begin = this.begins[tank] as number;
    let low = begin;
    let high = this.begins[tank + 1] as number;
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((t.day[this.brews[middle] as number] as number) < until) low = middle + 1;
      else high = middle;
    }
    // the last that begins before this one would be out of the tank
    for (let i = low - 1; i >= begin; i--) {
      const o = this.brews[i] as number;
      if (o === b) continue;
      if ((t.free[o] as number) > day) return t.free[o] as number;
      break;
    }
    const out = p.tanks[tank]?.out;
    if (out && out.length > 0) {
      const emptied = p.days.nextWork[day + brew.tankDays - p.days.first] as number;
      for (const o of out) if (day <= o.to && o.from <= emptied) return o.to + 1;
    }
    return day;
  }

  /** The first day from `from` on which brew b may begin in that tank, as far as kettle and tank go; FAR for none. */
  firstDay(b: number, tank: number, from: number): number {
    const p = this.problem;
    const brew = p.brews[b];
    const out = p.tanks[tank]?.out;
    if (!brew) return FAR;
    const { days } = brew;
    for (let k = firstAtLeast(days, from); k < days.length; k++) {
      const day = days[k] as number;
      if (!this.kettleFree(b, day)) continue;
      if (out && out.length > 0) {
        const emptied = p.days.nextWork[day + brew.tankDays - p.days.first] as number;
        let clash = false;
        for (const o of out) if (day <= o.to && o.from <= emptied) clash = true;
        if (clash) continue;
      }
      return day;
    }
    return FAR;
  }

  /**
   * Lays the first `count` brews of `row` into a tank one after another, the first not before `from`. `day` of each in `t`
   * is the one that it would like. Calls `touch` for each that changes; one that finds no day is left out. Returns false,
   * with `t` half changed, if a brew that may not move stands in the way.
   */
  lay(
    t: Timeline,
    was: Timeline,
    tank: number,
    count: number,
    from: number,
    pull: Pull,
    touch: (b: number) => void,
  ): boolean {
    const p = this.problem;
    const { row } = this;
    for (let i = 0; i < count; i++) {
      const o = row[i] as number;
      if (was.placed[o]) this.count(o, was.day[o] as number, -1);
    }
    let free = from;
    for (let i = 0; i < count; i++) {
      const o = row[i] as number;
      const brew = p.brews[o];
      if (!brew) return false;
      const held = brew.done !== null || brew.pinDay >= 0 || brew.fixedDay >= 0;
      if (held) {
        const day = was.day[o] as number;
        if (!was.placed[o] || was.tank[o] !== tank || (day < free && i > 0)) return false;
        t.day[o] = day;
        this.count(o, day, 1);
        free = Math.max(free, was.free[o] as number);
        continue;
      }
      if (was.tank[o] !== tank && !brew.tanks.includes(tank)) return false;
      const wish = t.day[o] as number;
      const early = pull === 'all' || (pull === 'late' && (was.late[o] as number) > 0);
      const day = this.firstDay(o, tank, early ? free : Math.max(free, wish));
      if (day === FAR) {
        // no day is left for it here: it is left out, for the scores to compare
        if (!was.placed[o]) return false;
        t.placed[o] = 0;
        touch(o);
        continue;
      }
      t.placed[o] = 1;
      t.day[o] = day;
      t.tank[o] = tank;
      this.count(o, day, 1);
      if (!was.placed[o] || was.day[o] !== day || was.tank[o] !== tank) touch(o);
      free = this.freeAfter(t, o, tank, day);
    }
    return true;
  }
}
