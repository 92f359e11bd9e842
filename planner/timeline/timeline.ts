// A plan as arrays: what was decided for each brew, and all that follows from it once unfolded.
import { KEPT } from './kept.ts';
import { FRESH, type Problem } from './problem.ts';

/** Decisions and what follows, one slot a brew. Made once and written over; copy with `copyDecisions`. */
export class Timeline {
  // decided
  /** 1: brewed in this plan. */
  readonly placed: Int32Array;
  readonly day: Int32Array;
  readonly tank: Int32Array;
  readonly yeast: Int32Array;
  /** FRESH, a jar, or `jars + b` for the harvest of brew b. */
  readonly source: Int32Array;
  /** Size of the starter in quarters of the largest vessel; 0: none. */
  readonly starter: Int32Array;
  /** -1: harvest when the tank is emptied; KEPT: a part of the starter instead; k: on the k-th work day from the earliest crop on. */
  readonly crop: Int32Array;
  /** By yeast: the source from which a jar is kept for the end of the season, or -1. */
  readonly keep: Int32Array;

  // follows
  readonly emptied: Int32Array;
  readonly free: Int32Array;
  readonly ready: Int32Array;
  readonly late: Int32Array;
  readonly harvestDay: Int32Array;
  readonly crashed: Int32Array;
  /** First day on which the slurry may be drawn. */
  readonly usableFrom: Int32Array;
  readonly starterStart: Int32Array;
  readonly starterChill: Int32Array;
  readonly starterLitres: Float64Array;
  readonly seedB: Float64Array;
  /** Day on which the yeast leaves its jar or pack: the starter's start, or the brew day. */
  readonly useDay: Int32Array;
  readonly generation: Int32Array;
  /** Likely share alive when drawn. */
  readonly viability: Float64Array;
  /** Days since the harvest, or the age of the oldest pack, when drawn. */
  readonly ageDays: Int32Array;
  readonly drawMl: Float64Array;
  readonly drawJars: Int32Array;
  readonly needB: Float64Array;
  readonly pitchedB: Float64Array;
  readonly packs: Int32Array;
  readonly packsFromHand: Int32Array;
  /** Delivery that brings the packs, or -1. */
  readonly delivery: Int32Array;
  /** -1: drawn in time; otherwise days too early, FAR where the source is not there at all. */
  readonly drawnEarly: Int32Array;
  /** k·days on the beer from the end of fermentation to the harvest. */
  readonly beerLoss: Float64Array;
  /** 1: comes of a suspect jar or harvest. */
  readonly tainted: Int32Array;
  readonly cropCellsB: Float64Array;
  readonly cropMl: Float64Array;
  /** mL drawn from each source (jars first, then harvests). */
  readonly drawnMl: Float64Array;
  /** How many draws there are from each source. */
  readonly draws: Int32Array;
  readonly jarsCut: Int32Array;
  readonly keepMl: Float64Array;
  readonly keepJars: Int32Array;
  readonly keepViability: Float64Array;
  /** From what day the reserve of a brew's harvest may go, or one of the two of reserve.ts for none. */
  readonly reserveUntil: Int32Array;
  /** Hazards of the pitch, summed by the scoring. */
  readonly hazard: Float64Array;
  /** Brews in order of day; `orderCount` of them. */
  readonly order: Int32Array;
  /** Days on which packs arrive, ascending; `deliveryCount` of them. */
  readonly deliveryDay: Int32Array;
  /** What is counted over the whole plan; read by the names below. */
  private readonly counts: Int32Array;
  /** What hard rules and cost rules find on each brew, and the sums of both; kept by the scoring. */
  readonly hardAt: Float64Array;
  readonly costAt: Float64Array;
  readonly sums: Float64Array;

  // scratch
  readonly shelf: Int32Array;
  readonly vessels: Int32Array;
  readonly fresh: Int32Array;
  readonly handLeft: Int32Array;
  readonly done: Uint8Array;
  readonly carryBrew: Int32Array;
  readonly carryTurns: Int32Array;
  readonly tankUntil: Int32Array;
  readonly tankLast: Int32Array;

  /** All of the above in one piece of memory, so that a plan is copied in one stroke. */
  private readonly memory: Uint8Array;

  constructor(readonly problem: Problem) {
    const n = problem.brews.length;
    const y = problem.yeasts.length;
    const sources = problem.jars.length + n;
    const stretch = problem.days.count + 2;
    const room = new Room(n, y, sources);
    this.memory = room.bytes;
    const ints = (size = n) => room.ints(size);
    const floats = (size = n) => room.floats(size);
    this.hazard = floats();
    this.costAt = floats();
    this.hardAt = floats();
    this.starterLitres = floats();
    this.seedB = floats();
    this.viability = floats();
    this.drawMl = floats();
    this.needB = floats();
    this.pitchedB = floats();
    this.beerLoss = floats();
    this.cropCellsB = floats();
    this.cropMl = floats();
    this.drawnMl = floats(sources);
    this.keepMl = floats(y);
    this.keepViability = floats(y);
    this.sums = floats(SUMS);
    this.placed = ints();
    this.day = ints();
    this.tank = ints();
    this.yeast = ints();
    this.source = ints();
    this.starter = ints();
    this.crop = ints();
    this.keep = ints(y);
    this.emptied = ints();
    this.free = ints();
    this.ready = ints();
    this.late = ints();
    this.harvestDay = ints();
    this.crashed = ints();
    this.usableFrom = ints();
    this.starterStart = ints();
    this.starterChill = ints();
    this.useDay = ints();
    this.generation = ints();
    this.ageDays = ints();
    this.drawJars = ints();
    this.packs = ints();
    this.packsFromHand = ints();
    this.delivery = ints();
    this.drawnEarly = ints();
    this.tainted = ints();
    this.draws = ints(sources);
    this.jarsCut = ints(sources);
    this.keepJars = ints(y);
    this.reserveUntil = ints();
    this.order = ints();
    this.deliveryDay = ints();
    this.counts = ints(COUNTS);
    this.source.fill(FRESH);
    this.crop.fill(-1);
    this.keep.fill(-1);
    this.reserveUntil.fill(-1);
    this.starterChill.fill(-1);
    this.delivery.fill(-1);
    this.drawnEarly.fill(-1);
    this.shelf = new Int32Array(stretch);
    this.vessels = new Int32Array(stretch);
    this.fresh = new Int32Array(n);
    const batches = problem.yeasts.reduce((sum, yeast) => sum + yeast.hand.length, 0);
    this.handLeft = new Int32Array(batches);
    this.carryBrew = new Int32Array(n + 1);
    this.carryTurns = new Int32Array(n + 1);
    this.tankUntil = new Int32Array(problem.tanks.length);
    this.tankLast = new Int32Array(problem.tanks.length);
    this.done = new Uint8Array(n);
    for (let b = 0; b < n; b++) this.done[b] = problem.brews[b]?.done ? 1 : 0;
  }

  /** Becomes the same as another timeline of the same problem, all that follows included. */
  copyFrom(other: Timeline): void {
    this.memory.set(other.memory);
  }

  get orderCount(): number {
    return this.counts[0] as number;
  }
  set orderCount(n: number) {
    this.counts[0] = n;
  }
  get deliveryCount(): number {
    return this.counts[1] as number;
  }
  set deliveryCount(n: number) {
    this.counts[1] = n;
  }
  get shelfOver(): number {
    return this.counts[2] as number;
  }
  set shelfOver(n: number) {
    this.counts[2] = n;
  }
  get shelfOverDay(): number {
    return this.counts[3] as number;
  }
  set shelfOverDay(n: number) {
    this.counts[3] = n;
  }
  get turnsOver(): number {
    return this.counts[4] as number;
  }
  set turnsOver(n: number) {
    this.counts[4] = n;
  }
  get turnsOverDay(): number {
    return this.counts[5] as number;
  }
  set turnsOverDay(n: number) {
    this.counts[5] = n;
  }
  get startersOver(): number {
    return this.counts[6] as number;
  }
  set startersOver(n: number) {
    this.counts[6] = n;
  }
  get startersOverDay(): number {
    return this.counts[7] as number;
  }
  set startersOverDay(n: number) {
    this.counts[7] = n;
  }
}

const COUNTS = 8;
/** Running sums of what the rules find brew by brew: hard, cost. */
const SUMS = 2;
const BREW_FLOATS = 12;
const BREW_INTS = 28;

/** One piece of memory handed out as arrays: floats first, so that all are aligned. */
class Room {
  readonly bytes: Uint8Array;
  private readonly buffer: ArrayBuffer;
  private floatsUsed = 0;
  private intsUsed: number;

  constructor(n: number, y: number, sources: number) {
    const floats = n * BREW_FLOATS + sources + y * 2 + SUMS;
    const ints = n * BREW_INTS + sources * 2 + y * 2 + COUNTS;
    this.buffer = new ArrayBuffer(floats * 8 + ints * 4);
    this.bytes = new Uint8Array(this.buffer);
    this.intsUsed = floats * 8;
  }

  floats(size: number): Float64Array {
    const out = new Float64Array(this.buffer, this.floatsUsed, size);
    this.floatsUsed += size * 8;
    return out;
  }

  ints(size: number): Int32Array {
    const out = new Int32Array(this.buffer, this.intsUsed, size);
    this.intsUsed += size * 4;
    return out;
  }
}

/** Copies what was decided, not what follows. */
export function copyDecisions(from: Timeline, into: Timeline): void {
  into.placed.set(from.placed);
  into.day.set(from.day);
  into.tank.set(from.tank);
  into.yeast.set(from.yeast);
  into.source.set(from.source);
  into.starter.set(from.starter);
  into.crop.set(from.crop);
  into.keep.set(from.keep);
}

/** Writes the facts of a brewed brew into its slot. */
export function placeDone(t: Timeline): void {
  t.problem.brews.forEach((brew, b) => {
    if (!brew.done) return;
    t.placed[b] = 1;
    t.day[b] = brew.done.day;
    t.tank[b] = brew.done.tank;
    t.yeast[b] = brew.done.yeast;
    t.source[b] = brew.done.source;
    t.starter[b] = 0;
    if (brew.keptStarter) t.crop[b] = KEPT;
  });
}
