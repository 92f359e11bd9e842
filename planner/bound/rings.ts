// Sets of brews that feed each other more than they are fed: in any sound plan one of each set is fed from outside it.
//
// At given prices each brew chooses for itself, so that two may feed each other. Averaged over some rounds these choices are a
// flow; where less than one whole feeding reaches a brew from outside, the smallest set around it that lets so little in
// is a cut that the flow breaks and every plan keeps.
import type { Forest } from './forest.ts';
import type { Cut } from './prices.ts';

/** How much of the average each round renews. */
const RENEWED = 0.06;
/** A brew to which this much comes from outside needs no cut. */
const ENOUGH = 0.96;
const SMALLEST = 1e-3;

export class Rings {
  /** Average of who feeds whom: row giver (last row: outside), column taker. */
  private readonly flow: Float64Array;
  private readonly left: Float64Array;
  private readonly n: number;
  private begun = false;

  constructor(private readonly forest: Forest) {
    this.n = forest.net.brews;
    this.flow = new Float64Array((this.n + 1) * this.n);
    this.left = new Float64Array((this.n + 1) * (this.n + 1));
  }

  /** Takes in what was chosen at the last prices. */
  note(): void {
    const { flow, n, forest: r } = this;
    const kept = this.begun ? 1 - RENEWED : 0;
    this.begun = true;
    for (let c = 0; c < n; c++) {
      // a brew that stands more than once counts as once
      const times = Math.max(1, r.seen[c] as number);
      for (let at = c; at < flow.length; at += n) {
        flow[at] = (flow[at] as number) * kept + ((1 - kept) * (r.flow[at] as number)) / times;
      }
    }
  }

  /** Adds the cuts that the average breaks; returns how many. */
  cut(): number {
    const { forest: r, n } = this;
    let added = 0;
    const covered = new Uint8Array(n);
    for (let c = 0; c < n; c++) {
      if (covered[c]) continue;
      const inside = this.around(c);
      if (!inside) continue;
      let priority = 0;
      for (let i = 0; i < n; i++) {
        if (!inside[i]) continue;
        covered[i] = 1;
        priority += r.net.priority[i] as number;
      }
      if (addCut(r, { inside }, priority)) added++;
    }
    return added;
  }

  /** The smallest set around brew c into which too little comes, or null. */
  private around(c: number): Uint8Array | null {
    const { n, left } = this;
    const size = n + 1;
    left.fill(0);
    for (let g = 0; g < size; g++) {
      for (let t = 0; t < n; t++) left[g * size + t] = this.flow[g * n + t] as number;
    }
    const from = new Int32Array(size);
    const queue = new Int32Array(size);
    let sum = 0;
    while (sum < ENOUGH) {
      // the shortest way from outside to c
      from.fill(-1);
      let end = 0;
      queue[end++] = n;
      from[n] = n;
      for (let head = 0; head < end && from[c] === -1; head++) {
        const at = queue[head] as number;
        for (let t = 0; t < n; t++) {
          if (from[t] !== -1 || (left[at * size + t] as number) < SMALLEST) continue;
          from[t] = at;
          queue[end++] = t;
        }
      }
      if (from[c] === -1) break;
      let least = Infinity;
      for (let t = c; t !== n; t = from[t] as number) {
        least = Math.min(least, left[(from[t] as number) * size + t] as number);
      }
      for (let t = c; t !== n; t = from[t] as number) {
        const g = from[t] as number;
        left[g * size + t] = (left[g * size + t] as number) - least;
        left[t * size + g] = (left[t * size + g] as number) + least;
      }
      sum += least;
    }
    if (sum >= ENOUGH) return null;
    // all from which c can still be reached
    const inside = new Uint8Array(n);
    inside[c] = 1;
    let end = 0;
    queue[end++] = c;
    for (let head = 0; head < end; head++) {
      const at = queue[head] as number;
      for (let g = 0; g < n; g++) {
        if (inside[g] || (left[g * size + at] as number) < SMALLEST) continue;
        inside[g] = 1;
        queue[end++] = g;
      }
    }
    return inside;
  }
}

function addCut(r: Forest, cut: Cut, priority: number): boolean {
  // where all of them may be left out, none needs to be fed
  if (r.cuts.length >= r.mostCuts || priority <= r.mayLeave) return false;
  if (r.cuts.some((known) => known.inside.every((is, i) => is === cut.inside[i]))) return false;
  r.cuts.push(cut);
  return true;
}
