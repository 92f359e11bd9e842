// A plan as arrays: what was decided for each brew, and all that follows from it once unfolded.
import { FRESH, type Problem } from './problem.ts';

/** Decisions and what follows, one slot a brew. Made once and written over; copy with `copyDecisions`. */
export class Timeline {
  // decided
  /** 1: brewed in this plan. */
  readonly placed: Uint8Array;
  readonly day: Int32Array;
  readonly tank: Int32Array;
  readonly yeast: Int32Array;
  /** FRESH, a jar, or `jars + b` for the harvest of brew b. */
  readonly source: Int32Array;
  /** Size of the starter in quarters of the largest vessel; 0: none. */
  readonly starter: Int32Array;
  /** -1: harvest when the tank is emptied; k: on the k-th work day from the earliest crop on. */
  readonly crop: Int32Array;
  /** By yeast: the source from which a jar is kept for the end of the season, or -1. */
  readonly keep: Int32Array;

  // follows
  readonly emptied: Int32Array;
  readonly free: Int32Array;
  readonly ready: Int32Array;
  readonly late: Int32Array;
  readonly harvestDay: Int32Array;
  readonly crashed: Uint8Array;
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
  /** Hazards of the pitch, summed by the scoring. */
  readonly hazard: Float64Array;
  /** Brews in order of day. */
  readonly order: Int32Array;
  orderCount = 0;
  /** Days on which packs arrive, ascending; `deliveryCount` of them. */
  readonly deliveryDay: Int32Array;
  deliveryCount = 0;
  /** Most jars above what the shelf holds, and the day of it. */
  shelfOver = 0;
  shelfOverDay = 0;
  /** Kettle turns above what the house can, summed, and the first day of it. */
  turnsOver = 0;
  turnsOverDay = 0;
  /** Starters above the vessels there are, at worst, and the day of it. */
  startersOver = 0;
  startersOverDay = 0;

  // scratch
  readonly shelf: Int32Array;
  readonly vessels: Int32Array;
  readonly fresh: Int32Array;
  readonly handLeft: Int32Array;
  readonly done: Uint8Array;
  readonly carryBrew: Int32Array;
  readonly carryTurns: Int32Array;

  constructor(readonly problem: Problem) {
    const n = problem.brews.length;
    const sources = problem.jars.length + n;
    const ints = (fill = 0, size = n) => new Int32Array(size).fill(fill);
    const floats = (size = n) => new Float64Array(size);
    this.placed = new Uint8Array(n);
    this.day = ints();
    this.tank = ints();
    this.yeast = ints();
    this.source = ints(FRESH);
    this.starter = ints();
    this.crop = ints(-1);
    this.keep = ints(-1, problem.yeasts.length);
    this.emptied = ints();
    this.free = ints();
    this.ready = ints();
    this.late = ints();
    this.harvestDay = ints();
    this.crashed = new Uint8Array(n);
    this.usableFrom = ints();
    this.starterStart = ints();
    this.starterChill = ints(-1);
    this.starterLitres = floats();
    this.seedB = floats();
    this.useDay = ints();
    this.generation = ints();
    this.viability = floats();
    this.ageDays = ints();
    this.drawMl = floats();
    this.drawJars = ints();
    this.needB = floats();
    this.pitchedB = floats();
    this.packs = ints();
    this.packsFromHand = ints();
    this.delivery = ints(-1);
    this.drawnEarly = ints(-1);
    this.beerLoss = floats();
    this.cropCellsB = floats();
    this.cropMl = floats();
    this.drawnMl = floats(sources);
    this.draws = ints(0, sources);
    this.jarsCut = ints(0, sources);
    this.keepMl = floats(problem.yeasts.length);
    this.keepJars = ints(0, problem.yeasts.length);
    this.keepViability = floats(problem.yeasts.length);
    this.hazard = floats();
    this.order = ints();
    this.deliveryDay = ints();
    this.shelf = ints(0, problem.days.count + 2);
    this.vessels = ints(0, problem.days.count + 2);
    this.fresh = ints();
    this.handLeft = ints(0, problem.yeasts.length);
    this.done = new Uint8Array(n);
    this.carryBrew = ints(0, n + 1);
    this.carryTurns = ints(0, n + 1);
    for (let b = 0; b < n; b++) this.done[b] = problem.brews[b]?.done ? 1 : 0;
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
  });
}
