// Draws a season's luck from a seeded generator: slips, slow beers, lost jars, weak and small harvests.
import type { Luck, Range } from '../model/index.ts';
import { Random } from '../search/random.ts';

/** The standard normal deviate below which 90 of 100 fall: the ends of an 80 % interval lie this far out. */
const TEN_PERCENT = 1.2815515655446004;

/** One stretch of luck. Every question takes its numbers in turn, so the order of asking decides. */
export class Dice {
  private readonly random: Random;

  constructor(
    seed: number,
    private readonly luck: Luck,
  ) {
    this.random = new Random(seed);
  }

  /** Brew days by which a brew slips by itself. */
  slips(): number {
    const { slipShare, slipsAgainShare } = this.luck;
    // two numbers are taken whatever they say: the luck of the next brew does not hang on this one's
    const first = this.random.next() < slipShare;
    const again = this.random.next() < slipsAgainShare;
    return first ? (again ? 2 : 1) : 0;
  }

  /** Days that a beer needs longer in its tank. */
  slowDays(): number {
    const slow = this.random.next() < this.luck.slowShare;
    const days = 1 + this.random.below(this.luck.slowDaysMost);
    return slow ? days : 0;
  }

  jarLost(): boolean {
    return this.random.next() < this.luck.lostJarShare;
  }

  orderLate(): boolean {
    return this.random.next() < this.luck.lateOrderShare;
  }

  get lateOrderDays(): number {
    return this.luck.lateOrderDays;
  }

  /** A standard normal deviate (Box and Muller 1958). */
  deviate(): number {
    const u = 1 - this.random.next();
    const v = this.random.next();
    return Math.sqrt(-2 * Math.log(u)) * Math.cos(2 * Math.PI * v);
  }
}

/** The value that lies `deviate` out in an 80 % interval of a share: two half normals that meet at the likely value. */
export function shareAt(range: Range, deviate: number): number {
  const side = deviate < 0 ? range.likely - range.low : range.high - range.likely;
  return Math.min(1, Math.max(0, range.likely + (side * deviate) / TEN_PERCENT));
}

/** The value that lies `deviate` out in an 80 % interval of an amount, on a scale of ratios. */
export function amountAt(range: Range, deviate: number): number {
  const { low, likely, high } = range;
  if (likely <= 0 || low <= 0) return Math.max(0, likely);
  const side = deviate < 0 ? Math.log(likely / low) : Math.log(high / likely);
  return likely * Math.exp((side * deviate) / TEN_PERCENT);
}
