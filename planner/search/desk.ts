// The desk the search works at: the plan it stands on, the one it tries, and the questions every move asks.
import { FRESH, type Problem, STARTER_SIZES } from '../timeline/problem.ts';
import { Marks, refold } from '../timeline/refold.ts';
import { copyDecisions, Timeline } from '../timeline/timeline.ts';
import { unfold } from '../timeline/unfold.ts';
import type { Random } from './random.ts';
import { compareScores, type Judge, type Score } from './score.ts';

/** What a search may choose; the plain baselines are kept to less. */
export type Freedom = { slurry: boolean };

export class Desk {
  current: Timeline;
  trial: Timeline;
  /** A third plan, for trying one brew in many places. */
  readonly scratch: Timeline;
  score: Score;
  readonly best: Timeline;
  bestScore: Score;
  /** Plans judged so far: the step budget counts these. */
  steps = 0;
  /** Brews that the move at hand has changed. */
  readonly touched: Int32Array;
  touchedCount = 0;
  /** Brews whose day, tank and source are still a choice. */
  readonly free: readonly number[];
  private readonly options: Int32Array;
  readonly marks: Marks;

  constructor(
    readonly problem: Problem,
    readonly judge: Judge,
    readonly random: Random,
    readonly freedom: Freedom,
    start: Timeline,
    /** The plan in force with the news applied, on re-planning: where brews can be taken back to. */
    readonly home: Timeline | null = null,
  ) {
    this.current = start;
    this.trial = new Timeline(problem);
    this.scratch = new Timeline(problem);
    this.best = new Timeline(problem);
    unfold(this.current);
    this.score = judge.settle(this.current);
    this.marks = new Marks(problem);
    this.bestScore = this.score;
    copyDecisions(this.current, this.best);
    this.touched = new Int32Array(problem.brews.length * 8 + 16);
    this.options = new Int32Array(problem.jars.length + problem.brews.length + 1);
    this.free = problem.brews.map((_, b) => b).filter((b) => !problem.brews[b]?.done);
  }

  /** Begins a move: the trial becomes what stands. */
  begin(): Timeline {
    this.trial.copyFrom(this.current);
    this.touchedCount = 0;
    return this.trial;
  }

  touch(b: number): void {
    if (this.touchedCount < this.touched.length) this.touched[this.touchedCount++] = b;
  }

  /** Judges the trial, after mending the sources of what was touched; keeps it if `accept` says so. */
  settle(accept: (candidate: Score, standing: Score) => boolean): boolean {
    const t = this.trial;
    refold(t, this.current, this.touched, this.touchedCount, this.marks);
    if (this.mendSources(t)) {
      refold(t, this.current, this.touched, this.touchedCount, this.marks, true);
    }
    this.steps++;
    const score = this.judge.rescore(t, this.marks.judge, this.score);
    return this.decide(score, accept);
  }

  /** Keeps the trial, already judged, if `accept` says so. */
  decide(score: Score, accept: (candidate: Score, standing: Score) => boolean): boolean {
    const t = this.trial;
    if (!accept(score, this.score)) return false;
    this.trial = this.current;
    this.current = t;
    this.score = score;
    if (compareScores(score, this.bestScore) < 0) {
      this.bestScore = score;
      copyDecisions(t, this.best);
    }
    return true;
  }

  /** Goes back to the best plan found. */
  returnToBest(): void {
    copyDecisions(this.best, this.current);
    unfold(this.current);
    this.score = this.judge.settle(this.current);
  }

  /** Whether the tank is free for brew b from that day on, all others standing as they do in `t`. */
  slotFree(t: Timeline, b: number, tank: number, day: number, ignore = -1): boolean {
    const p = this.problem;
    const brew = p.brews[b];
    const kit = p.tanks[tank];
    if (!brew || !kit) return false;
    const times = p.yeasts[t.yeast[b] as number]?.turnaroundTimes ?? 1;
    const emptied = p.days.nextWork[day + brew.tankDays - p.days.first] as number;
    const until = emptied + kit.turnaroundDays * times;
    let starts = 0;
    for (let i = 0; i < t.orderCount; i++) {
      const o = t.order[i] as number;
      if (o === b || o === ignore || !t.placed[o]) continue;
      const d = t.day[o] as number;
      if (d === day) starts += p.house.brewLengthL === null ? 1 : (p.brews[o]?.turns ?? 1);
      if (t.tank[o] === tank && day < (t.free[o] as number) && d < until) return false;
    }
    for (const out of kit.out) if (day <= out.to && out.from <= emptied) return false;
    return starts < p.house.brewsPerDay;
  }

  /** Lists the sources that no rule's shortcut forbids for brew b on that day. Returns how many; see `option`. */
  listSources(t: Timeline, b: number, useDay: number): number {
    const p = this.problem;
    const nJars = p.jars.length;
    let n = 0;
    if (!this.judge.bars(t, b, FRESH, useDay)) this.options[n++] = FRESH;
    if (!this.freedom.slurry) return n;
    for (let j = 0; j < nJars; j++) {
      if (!this.judge.bars(t, b, j, useDay)) this.options[n++] = j;
    }
    for (let i = 0; i < t.orderCount; i++) {
      const from = t.order[i] as number;
      if (from === b || (t.usableFrom[from] as number) > useDay) continue;
      if (!this.judge.bars(t, b, nJars + from, useDay)) this.options[n++] = nJars + from;
    }
    return n;
  }

  option(i: number): number {
    return this.options[i] as number;
  }

  /** A source for brew b: most often the youngest slurry with enough left, sometimes any. */
  pickSource(t: Timeline, b: number, useDay: number): number {
    const n = this.listSources(t, b, useDay);
    if (n === 0) return FRESH;
    if (this.random.next() < 0.3) return this.option(this.random.below(n));
    const nJars = this.problem.jars.length;
    const need = this.problem.brews[b]?.needHarvestedB ?? 0;
    for (let i = n - 1; i >= 0; i--) {
      const s = this.option(i);
      if (s === FRESH) continue;
      if (s < nJars) {
        if ((t.draws[s] as number) === 0) return s;
        continue;
      }
      const left = (t.cropMl[s - nJars] as number) - (t.drawnMl[s] as number);
      const density = this.problem.yeasts[t.yeast[b] as number]?.density ?? 1;
      if (left * density * 0.85 >= need) return s;
    }
    return this.option(0);
  }

  /** Re-sources what was touched, and what was fed by it, where the yeast can no longer come in time. */
  private mendSources(t: Timeline): boolean {
    let mended = false;
    const nJars = this.problem.jars.length;
    const touchedNow = this.touchedCount;
    for (let i = 0; i < touchedNow; i++) {
      const b = this.touched[i] as number;
      if (t.placed[b] && this.mendOne(t, b)) mended = true;
      for (let j = 0; j < t.orderCount; j++) {
        const child = t.order[j] as number;
        if (t.source[child] === nJars + b && this.mendOne(t, child)) mended = true;
      }
    }
    for (let y = 0; y < t.keep.length; y++) {
      const k = (t.keep[y] as number) - nJars;
      if (k >= 0 && !t.placed[k]) {
        t.keep[y] = -1;
        mended = true;
      }
    }
    return mended;
  }

  private mendOne(t: Timeline, b: number): boolean {
    if (t.done[b]) return false;
    const brew = this.problem.brews[b];
    if (brew && brew.pinSource >= FRESH) return false;
    const source = t.source[b] as number;
    const use = t.useDay[b] as number;
    if ((t.drawnEarly[b] as number) <= 0 && !this.judge.bars(t, b, source, use)) return false;
    const next = this.pickSource(t, b, t.day[b] as number);
    if (next === source) return false;
    t.source[b] = next;
    this.touch(b);
    if (next !== FRESH || this.problem.yeasts[t.yeast[b] as number]?.dry) t.starter[b] = 0;
    return true;
  }

  /** A starter size at random; none for dry yeast or without a vessel. */
  randomStarter(t: Timeline, b: number): number {
    const p = this.problem;
    if (p.house.starterGear.vessels === 0 || p.yeasts[t.yeast[b] as number]?.dry) return 0;
    return this.random.below(STARTER_SIZES + 1);
  }
}
