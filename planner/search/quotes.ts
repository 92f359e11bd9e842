// Quick quotes: what a brew would cost out of each source, all else as it stands. They choose what is then judged in full.
import { dates } from '../timeline/dates.ts';
import { fromStarter } from '../timeline/kept.ts';
import { packsAlone } from '../timeline/packs.ts';
import { pitch } from '../timeline/pitch.ts';
import { FRESH, type Problem, STARTER_SIZES } from '../timeline/problem.ts';
import type { Timeline } from '../timeline/timeline.ts';
import type { Random } from './random.ts';
import type { Judge } from './score.ts';

/** What a broken rule weighs in a quote: only an order among quotes, never a score. */
const BROKEN = 1e9;

/** Starter sizes to be tried: bit k for k quarters. */
export const NO_STARTER = 1;
export const ANY_STARTER = (1 << (STARTER_SIZES + 1)) - 1;

export class Quotes {
  /** mL and draws claimed of each source, jars first, by the brews that are placed. */
  private readonly claims: Float64Array;
  private readonly draws: Int32Array;
  private readonly harvestMinor: number;
  private readonly deliveryMinor: number;
  /** The best that `best` found. */
  source = FRESH;
  starter = 0;

  constructor(
    private readonly problem: Problem,
    private readonly judge: Judge,
    private readonly slurry: boolean,
  ) {
    const sources = problem.jars.length + problem.brews.length;
    this.claims = new Float64Array(sources);
    this.draws = new Int32Array(sources);
    const { settings, minorPerMajor, house } = problem;
    this.harvestMinor = settings.harvestMinutes * settings.pricePerMinute * minorPerMajor;
    this.deliveryMinor = house.deliveryCost * minorPerMajor;
  }

  /** Reads off a plan, as far as its pitches go, what is claimed of each source. */
  read(t: Timeline): void {
    const { claims, draws } = this;
    claims.fill(0);
    draws.fill(0);
    for (let i = 0; i < t.orderCount; i++) {
      const b = t.order[i] as number;
      this.claim(t.source[b] as number, t.drawMl[b] as number, 1);
    }
    for (let y = 0; y < t.keep.length; y++) {
      const s = t.keep[y] as number;
      if (s >= 0) this.claim(s, t.keepMl[y] as number, 1);
    }
  }

  claim(source: number, ml: number, by: 1 | -1): void {
    if (source < 0) return;
    this.claims[source] = (this.claims[source] as number) + by * ml;
    this.draws[source] = (this.draws[source] as number) + by;
  }

  /** How many mL more are claimed of a source than it holds; a second claim on a jar of the shelf counts as much as there is. */
  over(t: Timeline, source: number): number {
    const nJars = this.problem.jars.length;
    const claimed = this.claims[source] as number;
    if (source >= nJars) return claimed - (t.cropMl[source - nJars] as number);
    const has = this.problem.jars[source]?.ml ?? 0;
    return (this.draws[source] as number) > 1 ? Math.max(1, claimed) : claimed - has;
  }

  /** Quotes brew b, its day, tank, yeast and starter set and its own claim not counted, out of that source. */
  price(t: Timeline, b: number, source: number, limit = Infinity): number {
    const p = this.problem;
    t.source[b] = source;
    let price = source === FRESH && packsAlone(p, t, b) ? this.deliveryMinor : 0;
    pitch(p, t, b);
    if (source >= 0) {
      const ml = t.drawMl[b] as number;
      if (source >= p.jars.length && this.draws[source] === 0 && !fromStarter(t, source))
        price += this.harvestMinor;
      this.claim(source, ml, 1);
      const over = this.over(t, source);
      this.claim(source, ml, -1);
      if (over > 1e-6) price += BROKEN * (1 + over);
      if (price >= limit) return price;
    }
    price += this.judge.askHard(t, b) * BROKEN;
    return price >= limit ? price : price + this.judge.askCost(t, b);
  }

  /** Quotes brew b out of that source alone, without a starter. */
  only(t: Timeline, b: number, source: number): number {
    this.source = source;
    this.starter = 0;
    t.starter[b] = 0;
    dates(this.problem, t, b);
    return this.price(t, b, source);
  }

  /**
   * Finds the cheapest of all sources and of the starter sizes in `sizes` for brew b (day, tank and yeast set, its own
   * claim not counted), each made `heat` times a random amount cheaper. Leaves it in `source` and `starter`, and b's
   * slots in any state. Returns the price.
   */
  best(t: Timeline, b: number, sizes: number, random: Random, heat: number): number {
    const p = this.problem;
    const nJars = p.jars.length;
    const y = t.yeast[b] as number;
    const most = p.yeasts[y]?.dry || p.house.starterGear.vessels === 0 ? 0 : STARTER_SIZES;
    this.source = FRESH;
    this.starter = 0;
    const needB = (p.brews[b]?.needHarvestedB ?? 0) * p.settings.pitchMargin;
    let best = Infinity;
    for (let size = 0; size <= most; size++) {
      if (!((sizes >> size) & 1)) continue;
      t.starter[b] = size;
      dates(p, t, b);
      const use = t.useDay[b] as number;
      if (size > 0 && !this.vesselFree(t, b)) continue;
      for (let s = FRESH; s < nJars; s++) {
        if (s >= 0 && (!this.slurry || p.jars[s]?.yeast !== y)) continue;
        // an opened jar feeds one pitch
        if (s >= 0 && (this.draws[s] as number) > 0) continue;
        if (this.judge.bars(t, b, s, use)) continue;
        best = this.offer(t, b, s, size, random, heat, best);
      }
      if (!this.slurry) continue;
      // what it would draw at least, were all of it alive
      const seeds = size > 0 ? p.settings.starterMinSeedShare : 1;
      const leastMl = (needB * seeds) / (p.yeasts[y]?.density ?? 1) - 1e-6;
      for (let i = 0; i < t.orderCount; i++) {
        const from = t.order[i] as number;
        if (t.yeast[from] !== y || from === b || (t.usableFrom[from] as number) > use) continue;
        const left = (t.cropMl[from] as number) - (this.claims[nJars + from] as number);
        if (left < leastMl) continue;
        if (this.judge.bars(t, b, nJars + from, use)) continue;
        best = this.offer(t, b, nJars + from, size, random, heat, best);
      }
    }
    return best;
  }

  /** Whether a vessel is free for b's starter, as far as the others that overlap it go. */
  private vesselFree(t: Timeline, b: number): boolean {
    const from = t.starterStart[b] as number;
    const to = t.day[b] as number;
    let left = this.problem.house.starterGear.vessels;
    for (let i = 0; i < t.orderCount; i++) {
      const o = t.order[i] as number;
      if (o === b || (t.starterLitres[o] as number) <= 0 || t.done[o]) continue;
      if ((t.starterStart[o] as number) <= to && from <= (t.day[o] as number)) left--;
    }
    return left > 0;
  }

  private offer(
    t: Timeline,
    b: number,
    source: number,
    size: number,
    random: Random,
    heat: number,
    best: number,
  ): number {
    // a lucky one comes out cheaper, an unlucky one dearer
    const luck = heat > 0 ? heat * Math.log(-Math.log(random.next() + 1e-12) + 1e-12) : 0;
    const price = this.price(t, b, source, best - luck) + luck;
    if (price >= best) return best;
    this.source = source;
    this.starter = size;
    return price;
  }
}
