// The desk the search works at: the plan it stands on, the one it tries, and the questions every move asks.
import { FRESH, type Problem, STARTER_SIZES } from '../timeline/problem.ts';
import { Marks, pitchAgain, refoldDays, refoldPitches, refoldRooms } from '../timeline/refold.ts';
import { copyDecisions, Timeline } from '../timeline/timeline.ts';
import { unfold } from '../timeline/unfold.ts';
import { Places } from './insert.ts';
import { Lanes, type Pull } from './lanes.ts';
import { mend } from './mend.ts';
import { Quotes } from './quotes.ts';
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
  readonly lanes: Lanes;
  readonly quotes: Quotes;
  readonly places = new Places();
  /** A list of one brew. */
  readonly one = new Int32Array(1);
  /** How hot the search is, minor units: how far from the cheapest it still chooses. */
  heat = 0;
  /** How much dearer a plan the search would take this time; what is dearer by `slack` more is not worth mending. */
  limit = Infinity;
  slack = 0;
  /** Brews whose pitch is no longer what it was; scratch of mending. */
  readonly changed: Uint8Array;
  /** The brew whose source the move at hand has chosen, or -1. */
  chosen = -1;
  /** As `touch`, to be handed on. */
  readonly touching = (b: number): void => this.touch(b);

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
    this.lanes = new Lanes(problem);
    this.quotes = new Quotes(problem, judge, freedom.slurry);
    this.changed = new Uint8Array(problem.brews.length);
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
    this.chosen = -1;
    return this.trial;
  }

  touch(b: number): void {
    if (this.touchedCount < this.touched.length) this.touched[this.touchedCount++] = b;
  }

  /** How what stands in a row closes up, by lot. */
  somePull(): Pull {
    const what = this.random.next();
    return what < 0.5 ? 'none' : what < 0.75 ? 'late' : 'all';
  }

  /** Unfolds the trial, and mends the sources of what was touched and of what follows from it. */
  unfoldTrial(): void {
    const { trial: t, current, marks, touched } = this;
    refoldPitches(t, current, touched, this.touchedCount, marks);
    this.mendTrial(Infinity);
  }

  /** Mends the trial unless that makes it dearer by more than `room`; false if so. */
  private mendTrial(room: number): boolean {
    const { trial: t, current, marks, touched } = this;
    const before = this.touchedCount;
    if (mend(this, t, room) > room) return false;
    if (this.touchedCount > before) {
      refoldPitches(t, current, touched, this.touchedCount, marks, true);
    }
    refoldRooms(t, current, marks);
    return true;
  }

  /** Judges the trial, after mending the sources of what was touched; keeps it if `accept` says so. */
  settle(accept: (candidate: Score, standing: Score) => boolean): boolean {
    const { trial: t, current, marks, touched } = this;
    this.steps++;
    refoldDays(t, current, touched, this.touchedCount, marks);
    if (this.dearerByDays() > this.limit + 5 * this.slack) return false;
    pitchAgain(t, current, marks);
    const room = this.room();
    if (room < 0 || !this.mendTrial(room)) return false;
    const score = this.judge.rescore(t, this.marks.judge, this.score);
    return this.decide(score, accept);
  }

  /** How much dearer the days of what was touched are by themselves; what they would save elsewhere is a matter of `slack`. */
  private dearerByDays(): number {
    if (this.limit === Infinity || this.score.hard > 0) return 0;
    const { trial: t, current, touched, judge } = this;
    let dearer = 0;
    for (let i = 0; i < this.touchedCount; i++) {
      const b = touched[i] as number;
      if (!t.placed[b] || !current.placed[b]) return 0;
      if (t.day[b] !== current.day[b]) dearer += judge.askSlot(t, b) - judge.askSlot(current, b);
    }
    return dearer;
  }

  /**
   * How much dearer mending may still make the trial before it would be thrown away; what was touched is judged as it
   * stands. A guess: it saves mending and judging most of the moves that lead nowhere.
   */
  private room(): number {
    if (this.limit === Infinity || this.score.hard > 0) return Infinity;
    const { trial: t, current, touched, judge } = this;
    let dearer = 0;
    for (let i = 0; i < this.touchedCount; i++) {
      const b = touched[i] as number;
      if (t.done[b]) return Infinity;
      if (!t.placed[b] || !current.placed[b]) continue;
      dearer += judge.askCost(t, b) - (current.costAt[b] as number);
    }
    return this.limit + this.slack - dearer;
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
      // turns that do not fit run on to the next brew days: that is for the rule to judge
      if (d === day) starts++;
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

  /** A starter size at random; none for dry yeast or without a vessel. */
  randomStarter(t: Timeline, b: number): number {
    const p = this.problem;
    if (p.house.starterGear.vessels === 0 || p.yeasts[t.yeast[b] as number]?.dry) return 0;
    return this.random.below(STARTER_SIZES + 1);
  }
}
