// The most that one crop can earn: which brews it feeds, so that all they draw is no more than it holds.
import type { Net } from './net.ts';

/** So many choices are looked through for one crop at most. */
const MOST_LOOKS = 200;
/** What draws may be above what a crop holds for rounding, a share. */
const TOLERANCE = 1e-6;

/**
 * Takers are whole; the last one is taken in part where the best of the wholes is not quickly found. A taker has two ways,
 * without a starter and with one, which draws less: it may go from the second to the first for what that earns and draws more.
 */
export class Crops {
  /** Groups that are fed by the last crop asked about, the arc of each and in what part. */
  readonly arc: Int32Array;
  readonly part: Float64Array;
  fed = 0;
  /** The part of a kept jar: 1 or 0. */
  kept = 0;
  private readonly plain: Float64Array;
  private readonly starter: Float64Array;
  private readonly order: Int32Array;
  private readonly choice: Uint8Array;
  private readonly chosen: Uint8Array;
  private readonly plainArc: Int32Array;
  private readonly starterArc: Int32Array;
  private readonly step: Int32Array;
  private readonly gain: Float64Array;
  private readonly share: Float64Array;

  constructor(
    private readonly net: Net,
    /** Worth of a node as a taker, by node and level, one more level than the net has: see `Forest`. */
    private readonly least: Float64Array,
    /** What is added to an arc: row giver (last row: a brewed beer), column taker. */
    private readonly added: Float64Array,
  ) {
    let widest = 1;
    for (let s = 0; s < net.states; s++) {
      widest = Math.max(widest, (net.groupStart[s + 1] as number) - (net.groupStart[s] as number));
    }
    const { levels } = net;
    this.plain = new Float64Array(widest * levels);
    this.starter = new Float64Array(widest * levels);
    this.order = new Int32Array(widest);
    this.choice = new Uint8Array(widest);
    this.chosen = new Uint8Array(widest);
    this.plainArc = new Int32Array(widest);
    this.starterArc = new Int32Array(widest);
    this.arc = new Int32Array(widest * 2);
    this.part = new Float64Array(widest * 2);
    this.step = new Int32Array(widest * 2);
    this.gain = new Float64Array(widest * 2);
    this.share = new Float64Array(widest * 2);
  }

  /** Writes what state s earns at each level to `worth`; `keepPrice`: of a jar to keep. */
  earn(s: number, keepPrice: number, worth: Float64Array): void {
    const { net, plain, starter } = this;
    const { levels } = net;
    const from = net.groupStart[s] as number;
    const until = net.groupStart[s + 1] as number;
    const once = net.stateOnce[s] as number;
    const row =
      ((net.stateBrew[s] as number) < 0 ? net.brews : (net.stateBrew[s] as number)) * net.brews;
    for (let g = from; g < until; g++) {
      const more = this.added[row + (net.groupTaker[g] as number)] as number;
      const at = (g - from) * levels;
      const middle = net.groupStarter[g] as number;
      this.best(net.groupArc[g] as number, middle, plain, at, more);
      this.best(middle, net.groupArc[g + 1] as number, starter, at, more);
    }
    for (let level = 0; level < levels; level++) {
      let sum = 0;
      let shares = 0;
      for (let g = from; g < until; g++) {
        const at = (g - from) * levels + level;
        const a = plain[at] as number;
        const b = starter[at] as number;
        if (a >= 0 && b >= 0) continue;
        if (a <= b) {
          sum -= a;
          shares += net.groupShare[g] as number;
        } else {
          sum -= b;
          shares += net.groupShareStarter[g] as number;
        }
      }
      if (shares > 1) sum = this.fill(s, level);
      const kept = -(net.stateKeep[s * levels + level] as number) - keepPrice;
      if (kept > 0) sum += kept;
      worth[s * levels + level] = Math.max(0, sum - once);
    }
  }

  /** Works out again whom state s feeds at a level: `arc`, `part`, `fed` and `kept`. */
  feed(s: number, level: number, keepPrice: number): void {
    const { net, plain, starter, plainArc, starterArc } = this;
    const { levels } = net;
    const from = net.groupStart[s] as number;
    const until = net.groupStart[s + 1] as number;
    const row =
      ((net.stateBrew[s] as number) < 0 ? net.brews : (net.stateBrew[s] as number)) * net.brews;
    for (let g = from; g < until; g++) {
      const more = this.added[row + (net.groupTaker[g] as number)] as number;
      const at = (g - from) * levels + level;
      const middle = net.groupStarter[g] as number;
      plainArc[g - from] = this.bestArc(net.groupArc[g] as number, middle, level);
      starterArc[g - from] = this.bestArc(middle, net.groupArc[g + 1] as number, level);
      plain[at] = this.cost(plainArc[g - from] as number, level) + more;
      starter[at] = this.cost(starterArc[g - from] as number, level) + more;
    }
    this.fill(s, level);
    const kept = -(net.stateKeep[s * levels + level] as number) - keepPrice;
    this.kept = kept > 0 ? 1 : 0;
  }

  private best(first: number, end: number, out: Float64Array, at: number, more: number): void {
    const { net, least } = this;
    const { levels } = net;
    for (let level = 0; level < levels; level++) out[at + level] = Infinity;
    for (let a = first; a < end; a++) {
      const cost = a * levels;
      const node = (net.arcNode[a] as number) * (levels + 1) + 1;
      for (let level = 0; level < levels; level++) {
        const x = (net.arcCost[cost + level] as number) + (least[node + level] as number) + more;
        if (x < (out[at + level] as number)) out[at + level] = x;
      }
    }
  }

  private cost(arc: number, level: number): number {
    if (arc < 0) return Infinity;
    const { net } = this;
    const node = (net.arcNode[arc] as number) * (net.levels + 1) + 1;
    return (net.arcCost[arc * net.levels + level] as number) + (this.least[node + level] as number);
  }

  private bestArc(first: number, end: number, level: number): number {
    let best = -1;
    let least = Infinity;
    for (let a = first; a < end; a++) {
      const x = this.cost(a, level);
      if (x < least) {
        least = x;
        best = a;
      }
    }
    return best;
  }

  /** Fills the crop of state s with the steps that earn most for their share; returns what they earn. */
  private fill(s: number, level: number): number {
    const { net, plain, starter, step, gain, share } = this;
    const { levels } = net;
    const from = net.groupStart[s] as number;
    const until = net.groupStart[s + 1] as number;
    let n = 0;
    const put = (key: number, earns: number, draws: number) => {
      gain[key] = earns;
      share[key] = Math.max(draws, 1e-12);
      step[n++] = key;
    };
    for (let g = from; g < until; g++) {
      const i = g - from;
      const a = -(plain[i * levels + level] as number);
      const b = -(starter[i * levels + level] as number);
      if (a <= 0 && b <= 0) continue;
      const drawA = Math.max(net.groupShare[g] as number, 1e-12);
      const drawB = Math.max(net.groupShareStarter[g] as number, 1e-12);
      // the better for its share first; the other one only as a step up from it
      const plainFirst = b <= 0 || (a > 0 && a * drawB >= b * drawA);
      if (plainFirst) {
        put(i * 2 + 1, a, drawA);
        if (b > a) put(i * 2, b - a, drawB - drawA);
      } else {
        put(i * 2, b, drawB);
        if (a > b) put(i * 2 + 1, a - b, drawA - drawB);
      }
    }
    this.sort(n);
    let left = 1;
    let sum = 0;
    this.fed = 0;
    for (let k = 0; k < n && left > 0; k++) {
      const key = step[k] as number;
      const takes = share[key] as number;
      const part = takes > left ? left / takes : 1;
      sum += part * (gain[key] as number);
      left -= takes;
      const i = key >> 1;
      const isPlain = (key & 1) === 1;
      const arc = (isPlain ? this.plainArc[i] : this.starterArc[i]) as number;
      const other = (isPlain ? this.starterArc[i] : this.plainArc[i]) as number;
      // what goes up leaves the way that it had before
      for (let m = 0; m < this.fed; m++) {
        if (this.arc[m] === other) this.part[m] = (this.part[m] as number) - part;
      }
      this.arc[this.fed] = arc;
      this.part[this.fed++] = part;
    }
    // taken in part only the last can be: where none is, that is the best there is
    return left < 0 ? this.wholes(from, until, level, sum) : sum;
  }

  /**
   * The most that whole takers earn together, in place of the last one taken in part; where that takes too long to find,
   * what was found with it.
   */
  private wholes(from: number, until: number, level: number, inPart: number): number {
    const { net, plain, starter, order, choice, chosen } = this;
    const { levels } = net;
    const gainOf = (i: number) =>
      -Math.min(plain[i * levels + level] as number, starter[i * levels + level] as number);
    let n = 0;
    for (let i = 0; i < until - from; i++) {
      const gain = gainOf(i);
      if (gain <= 0) continue;
      let j = n++;
      for (; j > 0 && gainOf(order[j - 1] as number) < gain; j--) order[j] = order[j - 1] as number;
      order[j] = i;
    }
    let looks = 0;
    let best = -1;
    const go = (k: number, left: number, sum: number): void => {
      if (sum > best) {
        best = sum;
        chosen.set(choice);
      }
      if (k === n || ++looks > MOST_LOOKS) return;
      let rest = 0;
      for (let m = k; m < n; m++) rest += gainOf(order[m] as number);
      if (sum + rest <= best) return;
      const i = order[k] as number;
      const a = -(plain[i * levels + level] as number);
      const b = -(starter[i * levels + level] as number);
      const drawA = net.groupShare[from + i] as number;
      const drawB = net.groupShareStarter[from + i] as number;
      if (a > 0 && drawA <= left) {
        choice[i] = 1;
        go(k + 1, left - drawA, sum + a);
      }
      if (b > 0 && drawB <= left) {
        choice[i] = 2;
        go(k + 1, left - drawB, sum + b);
      }
      choice[i] = 0;
      go(k + 1, left, sum);
    };
    choice.fill(0);
    go(0, 1 + TOLERANCE, 0);
    if (looks > MOST_LOOKS || best >= inPart) return inPart;
    this.fed = 0;
    for (let i = 0; i < until - from; i++) {
      if (chosen[i] === 0) continue;
      this.arc[this.fed] = (chosen[i] === 1 ? this.plainArc[i] : this.starterArc[i]) as number;
      this.part[this.fed++] = 1;
    }
    return best;
  }

  private sort(n: number): void {
    const { step, gain, share } = this;
    for (let i = 1; i < n; i++) {
      const key = step[i] as number;
      const ratio = (gain[key] as number) / (share[key] as number);
      let j = i - 1;
      while (j >= 0) {
        const other = step[j] as number;
        if ((gain[other] as number) / (share[other] as number) >= ratio) break;
        step[j + 1] = other;
        j--;
      }
      step[j + 1] = key;
    }
  }
}
