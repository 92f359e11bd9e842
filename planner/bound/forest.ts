// The bound for given prices: the cheapest trees of feedings, each brew paying its price as often as it stands in one.
//
// A Lagrangian relaxation. In a plan every brew is fed by one source that is there before it, so that plans are forests whose
// trees begin with packs, with a jar of the shelf or with a brewed beer. Here a tree may hold a brew more than once, and so
// may the trees together; but each brew begins one tree at most, each jar too, and for every time that it stands somewhere
// it pays its price once more. Tanks, kettle, paid-for packs, orders and the one jar to keep have a price each. For any prices
// (those of brews may be below zero, the others may not) the sum is at most the cost of any sound plan: its own forest is
// among the forests looked at, and it pays for nothing more often than it is charged here.
import { Crops } from './crops.ts';
import { deliver } from './deliver.ts';
import type { Net } from './net.ts';
import { type Cut, type Places, placesOf } from './prices.ts';

export class Forest {
  readonly at: Places;
  readonly cuts: Cut[] = [];
  /** Nodes that are closed: a branch looks at the plans without them. */
  readonly closed: Uint8Array;
  /** By brew: 0 it stands, 1 it may be left out, 2 it is left out. */
  readonly out: Uint8Array;
  /** At the last prices, by brew: how often it stands in trees, its days, their squares; and 1 where it was left out. */
  readonly seen: Float64Array;
  readonly seenDay: Float64Array;
  readonly seenSquare: Float64Array;
  readonly gone: Float64Array;
  /** At the last prices: how often one feeds another; row giver (last row: none of the brews), column taker. */
  readonly flow: Float64Array;
  /** Cheapest tree that begins in a node at a level, its prices taken off; one level more, alike to the last. */
  readonly least: Float64Array;
  /** What a state earns by what it gives, by level. */
  readonly worth: Float64Array;
  private readonly berth: Int32Array;
  private readonly many: Float64Array;
  private readonly prefix: Float64Array;
  private readonly outside: Float64Array;
  private readonly added: Float64Array;
  private readonly crops: Crops;

  constructor(
    readonly net: Net,
    /** Priority that may be left out in all. */
    readonly mayLeave: number,
    readonly mostCuts: number,
  ) {
    const nodes = net.nodeDay.length;
    const { brews, levels } = net;
    this.at = placesOf(net, mostCuts);
    this.closed = new Uint8Array(nodes);
    this.out = Uint8Array.from(net.priority, (priority) => (priority <= mayLeave ? 1 : 0));
    this.seen = new Float64Array(brews);
    this.seenDay = new Float64Array(brews);
    this.seenSquare = new Float64Array(brews);
    this.gone = new Float64Array(brews);
    this.flow = new Float64Array((brews + 1) * brews);
    this.least = new Float64Array(nodes * (levels + 1));
    this.worth = new Float64Array(net.states * levels);
    this.berth = new Int32Array(nodes * levels);
    this.many = new Float64Array(nodes * levels);
    this.prefix = new Float64Array(net.tankGroups * (net.days.length + 1));
    this.outside = new Float64Array(brews);
    this.added = new Float64Array((brews + 1) * brews);
    this.crops = new Crops(net, this.least, this.added);
  }

  /** Looks only at plans without these nodes, and with these brews in or out. */
  restrict(closed: Uint8Array, out: Uint8Array): void {
    this.closed.set(closed);
    this.out.set(out);
  }

  /** The bound at these prices; `slope` becomes by how much it rises with each price. */
  value(prices: Float64Array, slope: Float64Array): number {
    const { net } = this;
    slope.fill(0);
    let sum = net.fixed + this.charges(prices, slope);
    this.backward(prices);
    for (const all of [this.many, this.seen, this.seenDay, this.seenSquare, this.flow]) all.fill(0);
    sum += deliver(net, this.at, prices, slope);
    for (let c = 0; c < net.brews; c++) {
      const least = this.packs(c, prices, slope);
      // a brew that must stand and cannot
      if (least === Infinity) return Infinity;
      sum += least;
    }
    for (let j = 0; j < net.jars; j++) sum += this.jar(j, prices, slope);
    for (let s = net.stateStart[net.nodeDay.length] as number; s < net.states; s++) {
      const level = net.stateLevel[s] as number;
      const earned = this.worth[s * net.levels + level] as number;
      if (earned <= 0) continue;
      sum -= earned;
      this.give(s, level, 1, prices, slope);
    }
    this.forward(prices, slope);
    return sum;
  }

  /** What the prices bring and take off before any tree is looked at, and the slope of that. */
  private charges(prices: Float64Array, slope: Float64Array): number {
    const { net, at, outside, added } = this;
    const days = net.days.length;
    let sum = 0;
    const owns = (place: number, there: number) => {
      sum -= (prices[place] as number) * there;
      slope[place] = -there;
    };
    for (let i = 0; i < net.tankGroups * days; i++) owns(at.room + i, net.roomOf[i] as number);
    for (let i = 0; i < days; i++) owns(at.starts + i, net.startsOf[i] as number);
    for (let y = 0; y < net.hand.length; y++) owns(at.hand + y, net.hand[y] as number);
    for (let y = 0; y < net.yeasts; y++) owns(at.keeps + y, 1);
    owns(at.left, this.mayLeave);
    for (let c = 0; c < net.brews; c++) {
      const place = at.brews + c;
      const stays = prices[place] as number;
      const leaves = (prices[at.left] as number) * (net.priority[c] as number);
      const goes = this.out[c] === 2 || (this.out[c] === 1 && leaves < stays);
      this.gone[c] = goes ? 1 : 0;
      sum += goes ? leaves : stays;
      if (goes) slope[at.left] = (slope[at.left] as number) + (net.priority[c] as number);
      else slope[place] = 1;
    }
    for (let g = 0; g < net.tankGroups; g++) {
      const row = g * (days + 1);
      let total = 0;
      for (let i = 0; i < days; i++) {
        this.prefix[row + i] = total;
        total += prices[at.room + g * days + i] as number;
      }
      this.prefix[row + days] = total;
    }
    outside.fill(0);
    added.fill(0);
    for (let k = 0; k < this.cuts.length; k++) {
      const price = prices[at.cuts + k] as number;
      slope[at.cuts + k] = 1;
      if (price <= 0) continue;
      sum += price;
      const { inside } = this.cuts[k] as Cut;
      for (let c = 0; c < net.brews; c++) {
        if (!inside[c]) continue;
        outside[c] = (outside[c] as number) - price;
        for (let a = 0; a <= net.brews; a++) {
          if (a < net.brews && inside[a]) continue;
          const place = a * net.brews + c;
          added[place] = (added[place] as number) - price;
        }
      }
    }
    return sum;
  }

  /** From the last day to the first: what the tree below each node costs at least. */
  private backward(prices: Float64Array): void {
    const { net, at, least, worth, prefix } = this;
    const { levels } = net;
    const days = net.days.length;
    const kept = (s: number) => prices[at.keeps + (net.stateYeast[s] as number)] as number;
    for (let i = net.byDay.length - 1; i >= 0; i--) {
      const n = net.byDay[i] as number;
      const c = net.nodeBrew[n] as number;
      const row = n * (levels + 1);
      if (this.closed[n] || this.out[c] === 2) {
        for (let level = 0; level <= levels; level++) least[row + level] = Infinity;
        continue;
      }
      const last = net.stateStart[n + 1] as number;
      for (let s = net.stateStart[n] as number; s < last; s++) this.crops.earn(s, kept(s), worth);
      const stands =
        (prices[at.starts + (net.nodeAt[n] as number)] as number) -
        (prices[at.brews + c] as number);
      for (let level = 0; level < levels; level++) least[row + level] = Infinity;
      for (let k = net.berthStart[n] as number; k < (net.berthStart[n + 1] as number); k++) {
        const first = (net.berthGroup[k] as number) * (days + 1);
        const cost =
          (net.berthCost[k] as number) +
          (prefix[first + (net.berthUntil[k] as number)] as number) -
          (prefix[first + (net.berthFrom[k] as number)] as number) +
          stands;
        const state = (net.berthState[k] as number) * levels;
        for (let level = 0; level < levels; level++) {
          const x = cost - (worth[state + level] as number);
          if (x < (least[row + level] as number)) {
            least[row + level] = x;
            this.berth[n * levels + level] = k;
          }
        }
      }
      least[row + levels] = least[row + levels - 1] as number;
    }
    for (let s = net.stateStart[net.nodeDay.length] as number; s < net.states; s++) {
      this.crops.earn(s, kept(s), worth);
    }
  }

  /** The cheapest tree that brew c begins with packs, where that costs less than nothing; Infinity: it cannot stand. */
  private packs(c: number, prices: Float64Array, slope: Float64Array): number {
    const { net, at, least } = this;
    const { levels } = net;
    let best = 0;
    let node = -1;
    let way = -1;
    let stands = this.out[c] !== 0;
    for (let n = net.nodeStart[c] as number; n < (net.nodeStart[c + 1] as number); n++) {
      const tree = least[n * (levels + 1)] as number;
      if (tree === Infinity) continue;
      stands = true;
      for (let w = net.wayStart[n] as number; w < (net.wayStart[n + 1] as number); w++) {
        let cost = (net.wayCost[w] as number) + tree + (this.outside[c] as number);
        const hand = net.wayHand[w] as number;
        if (hand >= 0) cost += (prices[at.hand + hand] as number) * (net.wayPacks[w] as number);
        const order = net.wayOrder[w] as number;
        if (order >= 0) cost += prices[at.orders + order] as number;
        if (cost < best) {
          best = cost;
          node = n;
          way = w;
        }
      }
    }
    if (!stands) return Infinity;
    if (way < 0) return 0;
    const up = (place: number, by: number) => {
      slope[place] = (slope[place] as number) + by;
    };
    const hand = net.wayHand[way] as number;
    if (hand >= 0) up(at.hand + hand, net.wayPacks[way] as number);
    const order = net.wayOrder[way] as number;
    if (order >= 0) up(at.orders + order, 1);
    this.fed(net.brews, node, 0, 1);
    return best;
  }

  /** The cheapest that a jar of the shelf can do, where that costs less than nothing: begin a tree, or be kept. */
  private jar(j: number, prices: Float64Array, slope: Float64Array): number {
    const { net, least } = this;
    const keeps = this.at.keeps + (net.jarYeast[j] as number);
    const kept = net.jarYeast[j] as number;
    let best = 0;
    let at = -1;
    for (let i = net.jarStart[j] as number; i < (net.jarStart[j + 1] as number); i++) {
      const n = net.jarNode[i] as number;
      const cost =
        (net.jarCost[i] as number) +
        (least[n * (net.levels + 1) + (net.jarLevel[i] as number)] as number) +
        (this.outside[net.nodeBrew[n] as number] as number);
      if (cost < best) {
        best = cost;
        at = i;
      }
    }
    if (kept >= 0) {
      const worth = (net.jarKeep[j] as number) + (prices[keeps] as number);
      if (worth < best) {
        slope[keeps] = (slope[keeps] as number) + 1;
        return worth;
      }
    }
    if (at >= 0) this.fed(net.brews, net.jarNode[at] as number, net.jarLevel[at] as number, 1);
    return best;
  }

  /** Counts a feeding of a node: by a brew, or (`giver` = the number of brews) by none of them. */
  private fed(giver: number, node: number, level: number, part: number): void {
    const { net, flow } = this;
    const at = node * net.levels + level;
    this.many[at] = (this.many[at] as number) + part;
    const pair = giver * net.brews + (net.nodeBrew[node] as number);
    flow[pair] = (flow[pair] as number) + part;
  }

  /** Counts all that a state gives, so often. */
  private give(s: number, level: number, times: number, prices: Float64Array, slope: Float64Array) {
    const { net, crops } = this;
    const keeps = this.at.keeps + (net.stateYeast[s] as number);
    crops.feed(s, level, prices[keeps] as number);
    if (crops.kept) slope[keeps] = (slope[keeps] as number) + times;
    const giver = net.stateBrew[s] as number;
    const next = Math.min(net.levels - 1, level + 1);
    for (let i = 0; i < crops.fed; i++) {
      const part = (crops.part[i] as number) * times;
      if (part <= 0) continue;
      const node = net.arcNode[crops.arc[i] as number] as number;
      this.fed(giver < 0 ? net.brews : giver, node, next, part);
    }
  }

  /** From the first day to the last: how often each node stands in the trees, and what it takes there. */
  private forward(prices: Float64Array, slope: Float64Array): void {
    const { net, at, many } = this;
    const { levels } = net;
    const up = (place: number, by: number) => {
      slope[place] = (slope[place] as number) + by;
    };
    for (let i = 0; i < net.byDay.length; i++) {
      const n = net.byDay[i] as number;
      const c = net.nodeBrew[n] as number;
      for (let level = 0; level < levels; level++) {
        const times = many[n * levels + level] as number;
        if (times <= 0) continue;
        const day = net.nodeDay[n] as number;
        this.seen[c] = (this.seen[c] as number) + times;
        this.seenDay[c] = (this.seenDay[c] as number) + times * day;
        this.seenSquare[c] = (this.seenSquare[c] as number) + times * day * day;
        up(at.brews + c, -times);
        up(at.starts + (net.nodeAt[n] as number), times);
        const k = this.berth[n * levels + level] as number;
        const row = at.room + (net.berthGroup[k] as number) * net.days.length;
        const until = net.berthUntil[k] as number;
        for (let d = net.berthFrom[k] as number; d < until; d++) up(row + d, times);
        const s = net.berthState[k] as number;
        if (s >= 0 && (this.worth[s * levels + level] as number) > 0) {
          this.give(s, level, times, prices, slope);
        }
      }
    }
    this.cutSlopes(slope);
  }

  private cutSlopes(slope: Float64Array): void {
    const { net, at, flow } = this;
    for (let k = 0; k < this.cuts.length; k++) {
      const { inside } = this.cuts[k] as Cut;
      let into = 0;
      for (let c = 0; c < net.brews; c++) {
        if (!inside[c]) continue;
        for (let a = 0; a <= net.brews; a++) {
          if (a < net.brews && inside[a]) continue;
          into += flow[a * net.brews + c] as number;
        }
      }
      slope[at.cuts + k] = 1 - into;
    }
  }
}
