// What it costs at least to pitch one brew from the crop of another, by age of the slurry and size of the starter.
import type { Asker, CropWay } from './ask.ts';

/** A pitch of one crop at one age: risk by generation of the giver; Infinity where a rule forbids it. */
type Pitch = { byLevel: Float64Array; drawMl: number };

/** The crops of one kind with one size of starter: pitches by age, and the oldest that no rule forbids. */
export type Line = { oldest: number; pitches: (Pitch | undefined)[] };

/** Longest that slurry is ever asked about, days. */
const FOREVER = 1000;

/**
 * One giver, one taker, one strain. Answers are kept: they depend on the crop only through how long after its pitch it
 * was taken and whether it was crashed. Older slurry of a later generation is never better: that is taken for granted.
 */
export class Pair {
  private readonly lines = new Map<number, Line>();
  /** By level of the giver: the hazard that its generation adds, or Infinity. */
  private more: Float64Array | null = null;

  constructor(
    private readonly asker: Asker,
    private readonly giver: number,
    private readonly source: number,
    private readonly taker: number,
    private readonly yeast: number,
    private readonly perJar: number,
    private readonly levels: number,
    /** Level of a brewed giver, or -1. */
    private readonly only: number,
  ) {}

  line(size: number, giverDay: number, crop: CropWay): Line {
    const key = ((crop.day - giverDay) * 2 + (crop.crashed ? 1 : 0)) * 8 + size;
    const known = this.lines.get(key);
    if (known) return known;
    const made = { oldest: this.oldest(giverDay, crop), pitches: [] };
    this.lines.set(key, made);
    return made;
  }

  /** The taker must stand, with the starter of the line. */
  pitch(line: Line, giverDay: number, crop: CropWay, age: number): Pitch {
    const known = line.pitches[age];
    if (known) return known;
    const { asker, taker } = this;
    const asked = this.ask(giverDay, crop, age, 0);
    const byLevel = new Float64Array(this.levels).fill(Infinity);
    if (!asked.broken) {
      const more_ = this.more ?? this.byGeneration(giverDay, crop, age, asked.hazard);
      if (asker.problem.settings.ageingPerGeneration === 0) this.more = more_;
      for (let level = 0; level < this.levels; level++) {
        const more = more_[level] as number;
        if (more === Infinity) continue;
        byLevel[level] =
          asked.cost + asked.jars * this.perJar + asker.risk(taker, asked.hazard + more);
      }
    }
    const made = { byLevel, drawMl: asked.drawMl };
    line.pitches[age] = made;
    return made;
  }

  private ask(giverDay: number, crop: CropWay, age: number, generation: number) {
    const { asker, taker, giver } = this;
    const { t } = asker;
    asker.give(giver, giverDay, this.yeast, generation, crop);
    if (t.done[giver] === 0) {
      // the giver is moved, not the taker, whose days are those of the spot it stands in
      const use = t.useDay[taker] as number;
      const move = use - age - crop.day;
      t.day[giver] = giverDay + move;
      t.harvestDay[giver] = use - age;
      t.usableFrom[giver] = Math.min(use, crop.usableFrom + move);
    }
    const asked = asker.pitchFrom(taker, this.source);
    asker.leave(giver);
    return asked;
  }

  private byGeneration(giverDay: number, crop: CropWay, age: number, least: number): Float64Array {
    const more = new Float64Array(this.levels).fill(Infinity);
    if (this.only >= 0) {
      more[this.only] = 0;
      return more;
    }
    for (let level = 0; level < this.levels; level++) {
      const asked = this.ask(giverDay, crop, age, level);
      if (!asked.broken) more[level] = Math.max(0, asked.hazard - least);
    }
    return more;
  }

  private oldest(giverDay: number, crop: CropWay): number {
    // a brewed beer cannot be moved: it is asked about as it stands
    if (this.only >= 0) return FOREVER;
    const fine = (age: number) => !this.ask(giverDay, crop, age, 0).broken;
    const guess = this.asker.problem.settings.maxStorageDays;
    let high = FOREVER;
    let low = 0;
    // a crop on the day of its own pitch cannot be drawn the same day
    if (!fine(0) && !fine(1)) return -1;
    if (fine(guess)) {
      low = guess;
      if (!fine(guess + 1)) return guess;
    } else high = guess;
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (fine(middle)) low = middle;
      else high = middle;
    }
    return low;
  }
}
