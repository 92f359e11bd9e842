// What it costs at least to pitch one brew from the crop of another, by age of the slurry and size of the starter.
import type { Asker, CropWay } from './ask.ts';
import type { Spot } from './takers.ts';

/** The crops of one kind with one size of starter: pitches by age, and the youngest age found forbidden. */
type Line = { forbiddenFrom: number; pitches: number[] };

/** What is forbidden. */
export const NEVER = -1;

/** Pitches that have been worked out, side by side: the mL drawn, then the cost by generation of the giver. */
export class Pitches {
  private data = new Float64Array(1 << 14);
  private length = 0;
  constructor(readonly levels: number) {}

  add(drawMl: number): number {
    const at = this.length;
    this.length += this.levels + 1;
    if (this.length > this.data.length) {
      const larger = new Float64Array(this.data.length * 2);
      larger.set(this.data);
      this.data = larger;
    }
    this.data[at] = drawMl;
    this.data.fill(Infinity, at + 1, this.length);
    return at;
  }
  set(at: number, level: number, cost: number): void {
    this.data[at + 1 + level] = cost;
  }
  drawMl(at: number): number {
    return this.data[at] as number;
  }
  cost(at: number, level: number): number {
    return this.data[at + 1 + level] as number;
  }
}

/** How finely slurry is told apart: what lies between two steps is taken to be as good as the better one. */
export type Grain = {
  exact: boolean;
  /** Days of age, without a starter and with one. */
  days: number;
  starterDays: number;
  /** Loss on the beer, a share. */
  loss: number;
};

/** A crop, and the number that all crops share which are told apart no further. */
export type CropKind = { crop: CropWay; key: number };

/**
 * The kinds of crops that are told apart. Where that is not done to the day, those of one kind are one crop that is there as
 * early as the first and as young as the last. `hopDay`: days after its pitch on which the giver is dry-hopped.
 */
export function kindsOf(
  crops: readonly CropWay[],
  giverDay: number,
  hopDay: number | null,
  grain: Grain,
): CropKind[] {
  const out: CropKind[] = [];
  for (const crop of crops) {
    const after = crop.day - giverDay;
    const crashed = crop.crashed ? 1 : 0;
    if (grain.exact) {
      out.push({ crop, key: after * 2 + crashed });
      continue;
    }
    const step = Math.floor(crop.beerLoss / grain.loss);
    const hopped = hopDay !== null && after > hopDay ? 1 : 0;
    const key = (step * 2 + hopped) * 2 + crashed;
    const alike = out.find((kind) => kind.key === key);
    if (!alike) out.push({ crop: { ...crop, beerLoss: step * grain.loss }, key });
    else {
      alike.crop.day = Math.max(alike.crop.day, crop.day);
      alike.crop.usableFrom = Math.min(alike.crop.usableFrom, crop.usableFrom);
    }
  }
  return out;
}

/** Sizes of starters that are told apart in the key of a line. */
const SIZES = 8;

/**
 * One giver, one taker, one strain. Answers are kept: they depend on the crop only through how long after its pitch it
 * was taken and whether it was crashed. Older slurry of a later generation is never better: that is taken for granted.
 */
export class Pair {
  private readonly lines: (Line | undefined)[] = [];
  /** By level of the giver: the hazard that its generation adds, or Infinity. */
  private more: Float64Array | null = null;

  constructor(
    private readonly asker: Asker,
    private readonly giver: number,
    private readonly source: number,
    private readonly taker: number,
    private readonly yeast: number,
    private readonly perJar: number,
    private readonly pitches: Pitches,
    private readonly grain: Grain,
    /** Level of a brewed giver, or -1. */
    private readonly only: number,
  ) {}

  /**
   * Where among the pitches is that of a taker in this spot, with a starter of this size, from a crop that is so old when
   * it is drawn; or NEVER.
   */
  pitch(size: number, giverDay: number, kind: CropKind, drawn: number, spot: Spot): number {
    let age = drawn;
    const { grain } = this;
    if (age > 1 && this.only < 0 && !grain.exact) {
      age -= (age - 1) % (size > 0 ? grain.starterDays : grain.days);
    }
    const key = kind.key * SIZES + size;
    let line = this.lines[key];
    if (!line) {
      line = { forbiddenFrom: Infinity, pitches: [] };
      this.lines[key] = line;
    }
    // a brewed beer cannot be moved: it is asked about as it stands
    if (age >= line.forbiddenFrom && this.only < 0) return NEVER;
    const known = line.pitches[age];
    if (known !== undefined) return known;
    const made = this.make(size, giverDay, kind.crop, age, spot);
    line.pitches[age] = made;
    // what is forbidden on the very day may be forbidden for being too fresh
    if (made === NEVER && age > 0) line.forbiddenFrom = Math.min(line.forbiddenFrom, age);
    return made;
  }

  private make(size: number, giverDay: number, crop: CropWay, age: number, spot: Spot): number {
    const { asker, taker, pitches } = this;
    asker.stand(taker, spot.day, spot.tank, this.yeast, size);
    const asked = this.ask(giverDay, crop, age, 0);
    let made = NEVER;
    if (!asked.broken) {
      const more_ = this.more ?? this.byGeneration(giverDay, crop, age, asked.hazard);
      if (asker.problem.settings.ageingPerGeneration === 0) this.more = more_;
      made = pitches.add(asked.drawMl);
      for (let level = 0; level < pitches.levels; level++) {
        const more = more_[level] as number;
        if (more === Infinity) continue;
        const cost = asked.cost + asked.jars * this.perJar + asker.risk(taker, asked.hazard + more);
        pitches.set(made, level, cost);
      }
    }
    asker.leave(taker);
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
    const more = new Float64Array(this.pitches.levels).fill(Infinity);
    if (this.only >= 0) {
      more[this.only] = 0;
      return more;
    }
    for (let level = 0; level < this.pitches.levels; level++) {
      const asked = this.ask(giverDay, crop, age, level);
      if (!asked.broken) more[level] = Math.max(0, asked.hazard - least);
    }
    return more;
  }
}
