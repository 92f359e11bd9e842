// The bound for given prices: every brew chooses for itself, and what they share is paid for by its price.
//
// A Lagrangian relaxation. Tanks, kettle, jars and packs have a price each; and a crop is bought by whoever takes it and sold
// by whoever gives it, the giver keeping to what its crop holds. For any prices not below zero the sum is at most the cost of
// any sound plan, because a sound plan pays each price no more often than it is charged here.
import type { Net } from './net.ts';

/** Where each kind of price begins in the one array of prices. */
export type Places = {
  room: number;
  starts: number;
  links: number;
  jars: number;
  hand: number;
  left: number;
  cuts: number;
  count: number;
};

/** A set of brews of which at least one is fed from outside the set. */
export type Cut = { inside: Uint8Array };

export class Relaxation {
  readonly at: Places;
  readonly cuts: Cut[] = [];
  /** Nodes that are closed: a branch looks at the plans without them. */
  readonly closed: Uint8Array;
  /** By brew: 0 it stands, 1 it may be left out, 2 it is left out. */
  readonly out: Uint8Array;
  private readonly stateClosed: Uint8Array;
  /** What each taker chose last: node, arc or -1, berth or -1; node -1: left out. */
  readonly node: Int32Array;
  readonly arc: Int32Array;
  readonly berth: Int32Array;
  /** Worth of each state as a giver at the last prices. */
  readonly worth: Float64Array;
  private readonly linkPrice: Float64Array;
  private readonly linkState: Int32Array;
  private readonly prefix: Float64Array;
  private readonly outside: Float64Array;
  private readonly order: Int32Array;

  constructor(
    readonly net: Net,
    /** Priority that may be left out in all. */
    readonly mayLeave: number,
    readonly mostCuts: number,
  ) {
    const room = 0;
    const starts = room + net.groups * net.days.length;
    const links = starts + net.days.length;
    const jars = links + net.linkTaker.length;
    const hand = jars + net.jars;
    const left = hand + net.hand.length;
    const cuts = left + 1;
    this.at = { room, starts, links, jars, hand, left, cuts, count: cuts + mostCuts };
    this.closed = new Uint8Array(net.nodeDay.length);
    this.out = Uint8Array.from(net.priority, (priority) => (priority <= mayLeave ? 1 : 0));
    this.stateClosed = new Uint8Array(net.stateTaker.length);
    this.node = new Int32Array(net.takers).fill(-1);
    this.arc = new Int32Array(net.takers).fill(-1);
    this.berth = new Int32Array(net.takers).fill(-1);
    this.worth = new Float64Array(net.stateTaker.length);
    this.linkPrice = new Float64Array(net.linkTaker.length);
    this.linkState = new Int32Array(net.linkTaker.length);
    for (let s = 0; s < net.stateTaker.length; s++) {
      for (let l = net.linkStart[s] as number; l < (net.linkStart[s + 1] as number); l++) {
        this.linkState[l] = s;
      }
    }
    this.prefix = new Float64Array(net.groups * (net.days.length + 1));
    this.outside = new Float64Array(net.brews);
    let widest = 0;
    for (let s = 0; s < net.stateTaker.length; s++) {
      widest = Math.max(widest, (net.linkStart[s + 1] as number) - (net.linkStart[s] as number));
    }
    this.order = new Int32Array(widest);
  }

  /** Looks only at plans without these nodes, and with these brews in or out. */
  restrict(closed: Uint8Array, out: Uint8Array): void {
    const { net } = this;
    this.closed.set(closed);
    this.out.set(out);
    for (let s = 0; s < this.stateClosed.length; s++) {
      this.stateClosed[s] = net.stateTaker[s] === -1 ? 0 : 1;
    }
    for (let c = 0; c < net.brews; c++) {
      if (out[c] === 2) continue;
      for (let n = net.nodeStart[c] as number; n < (net.nodeStart[c + 1] as number); n++) {
        if (closed[n]) continue;
        for (let k = net.berthStart[n] as number; k < (net.berthStart[n + 1] as number); k++) {
          this.stateClosed[net.berthState[k] as number] = 0;
        }
      }
    }
  }

  /** The brew taker that gives through a link, or -1 for a brewed beer. */
  giverOf(link: number): number {
    return this.net.stateTaker[this.linkState[link] as number] as number;
  }

  /** Prices to begin with: what a state costs once, shared among as many as it can feed, so that no giver earns by it. */
  opening(): Float64Array {
    const { net, at } = this;
    const prices = new Float64Array(at.count);
    for (let s = 0; s < net.stateTaker.length; s++) {
      const from = net.linkStart[s] as number;
      const until = net.linkStart[s + 1] as number;
      let least = 1;
      for (let l = from; l < until; l++) least = Math.min(least, net.linkShare[l] as number);
      const feeds = Math.max(1, Math.min(until - from, 1 / Math.max(1e-9, least)));
      for (let l = from; l < until; l++) {
        prices[at.links + l] = ((net.stateOnce[s] as number) / feeds) * (1 - 1e-9);
      }
    }
    return prices;
  }

  /** The bound at these prices; `slope` becomes by how much each price is paid too often (+) or too seldom (−). */
  value(prices: Float64Array, slope: Float64Array): number {
    const { net, at } = this;
    slope.fill(0);
    let sum = net.fixed + this.charges(prices, slope);
    this.priceLinks(prices);
    sum -= this.priceStates(prices);
    for (let c = 0; c < net.takers; c++) {
      const least = this.choose(c, prices);
      if (least === Infinity) return Infinity;
      sum += least;
      this.record(c, prices, slope);
    }
    for (let s = 0; s < net.stateTaker.length; s++) {
      if (net.stateTaker[s] === -1 && (this.worth[s] as number) > 0) this.give(s, prices, slope);
    }
    for (let k = 0; k < this.cuts.length; k++) {
      slope[at.cuts + k] = (slope[at.cuts + k] as number) + 1;
    }
    return sum;
  }

  /** What the prices take off for what there is of everything, and the slope before anybody chooses. */
  private charges(prices: Float64Array, slope: Float64Array): number {
    const { net, at } = this;
    const days = net.days.length;
    let sum = 0;
    const owns = (place: number, there: number) => {
      sum -= (prices[place] as number) * there;
      slope[place] = -there;
    };
    for (let i = 0; i < net.groups * days; i++) owns(at.room + i, net.roomOf[i] as number);
    for (let i = 0; i < days; i++) owns(at.starts + i, net.startsOf[i] as number);
    for (let j = 0; j < net.jars; j++) owns(at.jars + j, 1);
    for (let y = 0; y < net.hand.length; y++) owns(at.hand + y, net.hand[y] as number);
    owns(at.left, this.mayLeave);
    for (let k = 0; k < this.cuts.length; k++) sum += prices[at.cuts + k] as number;
    for (let g = 0; g < net.groups; g++) {
      const row = g * (days + 1);
      let total = 0;
      for (let i = 0; i < days; i++) {
        this.prefix[row + i] = total;
        total += prices[at.room + g * days + i] as number;
      }
      this.prefix[row + days] = total;
    }
    return sum;
  }

  /** What each link costs its taker, and being fed from outside costs each brew. */
  private priceLinks(prices: Float64Array): void {
    const { net, at, linkPrice, outside } = this;
    outside.fill(0);
    for (let k = 0; k < this.cuts.length; k++) {
      const price = prices[at.cuts + k] as number;
      const inside = (this.cuts[k] as Cut).inside;
      if (price > 0) {
        for (let c = 0; c < net.brews; c++) {
          if (inside[c]) outside[c] = (outside[c] as number) + price;
        }
      }
    }
    for (let l = 0; l < linkPrice.length; l++) {
      const c = net.linkTaker[l] as number;
      if (this.stateClosed[this.linkState[l] as number]) {
        linkPrice[l] = Infinity;
        continue;
      }
      linkPrice[l] =
        (prices[at.links + l] as number) - (c < net.brews ? (outside[c] as number) : 0);
    }
    for (let k = 0; k < this.cuts.length; k++) {
      const price = prices[at.cuts + k] as number;
      if (price <= 0) continue;
      const inside = (this.cuts[k] as Cut).inside;
      for (let l = 0; l < linkPrice.length; l++) {
        const c = net.linkTaker[l] as number;
        if (c >= net.brews || !inside[c]) continue;
        const giver = this.giverOf(l);
        if (giver >= 0 && inside[giver]) linkPrice[l] = (linkPrice[l] as number) + price;
      }
    }
  }

  /** What each state earns as a giver; returns what brewed beers earn. */
  private priceStates(prices: Float64Array): number {
    const { net } = this;
    let done = 0;
    for (let s = 0; s < net.stateTaker.length; s++) {
      const earned = this.earn(s, prices) - (net.stateOnce[s] as number);
      this.worth[s] = Math.max(earned, 0);
      if (net.stateTaker[s] === -1 && earned > 0) done += earned;
    }
    return done;
  }

  /** The most that a crop can earn: whole takers first, the last one in part. Leaves their order in `order`. */
  private earn(s: number, prices: Float64Array): number {
    const { net, at, order } = this;
    const from = net.linkStart[s] as number;
    const until = net.linkStart[s + 1] as number;
    let n = 0;
    let share = 0;
    let all = 0;
    for (let l = from; l < until; l++) {
      const price = prices[at.links + l] as number;
      if (price <= 0) continue;
      order[n++] = l;
      share += net.linkShare[l] as number;
      all += price;
    }
    if (share <= 1) return all;
    sortByRatio(order, n, prices, at.links, net.linkShare);
    let left = 1;
    let sum = 0;
    for (let i = 0; i < n; i++) {
      const l = order[i] as number;
      const takes = net.linkShare[l] as number;
      const price = prices[at.links + l] as number;
      if (takes >= left) return sum + (price * left) / takes;
      sum += price;
      left -= takes;
    }
    return sum;
  }

  /** Lowers the slope of the links through which state s sells. */
  private give(s: number, prices: Float64Array, slope: Float64Array): void {
    const { net, at, order } = this;
    const from = net.linkStart[s] as number;
    const until = net.linkStart[s + 1] as number;
    let n = 0;
    for (let l = from; l < until; l++) if ((prices[at.links + l] as number) > 0) order[n++] = l;
    sortByRatio(order, n, prices, at.links, net.linkShare);
    let left = 1;
    for (let i = 0; i < n && left > 0; i++) {
      const l = order[i] as number;
      const takes = net.linkShare[l] as number;
      const part = takes > left ? left / takes : 1;
      slope[at.links + l] = (slope[at.links + l] as number) - part;
      left -= takes;
    }
  }

  /** The least that taker c costs; keeps what it chose. */
  private choose(c: number, prices: Float64Array): number {
    const { net, at, prefix, linkPrice, worth } = this;
    const days = net.days.length;
    const isBrew = c < net.brews;
    const outside = isBrew ? (this.outside[c] as number) : 0;
    let least = Infinity;
    this.node[c] = -1;
    this.arc[c] = -1;
    this.berth[c] = -1;
    if (isBrew && (this.out[c] as number) > 0) {
      least = (prices[at.left] as number) * (net.priority[c] as number);
      if (this.out[c] === 2) return least;
    }
    for (let n = net.nodeStart[c] as number; n < (net.nodeStart[c + 1] as number); n++) {
      if (this.closed[n]) continue;
      let place = 0;
      let berth = -1;
      if (isBrew) {
        place = Infinity;
        for (let k = net.berthStart[n] as number; k < (net.berthStart[n + 1] as number); k++) {
          const row = (net.berthGroup[k] as number) * (days + 1);
          const cost =
            (net.berthCost[k] as number) +
            (prefix[row + (net.berthUntil[k] as number)] as number) -
            (prefix[row + (net.berthFrom[k] as number)] as number) -
            (worth[net.berthState[k] as number] as number);
          if (cost < place) {
            place = cost;
            berth = k;
          }
        }
        place += prices[at.starts + (net.nodeAt[n] as number)] as number;
      }
      let fed = Infinity;
      let arc = -1;
      for (let w = net.wayStart[n] as number; w < (net.wayStart[n + 1] as number); w++) {
        let cost = (net.wayCost[w] as number) - outside;
        const jar = net.wayJar[w] as number;
        if (jar >= 0) cost += prices[at.jars + jar] as number;
        const hand = net.wayHand[w] as number;
        if (hand >= 0) cost += (prices[at.hand + hand] as number) * (net.wayPacks[w] as number);
        if (cost < fed) {
          fed = cost;
          arc = -2 - w;
        }
      }
      for (let a = net.arcStart[n] as number; a < (net.arcStart[n + 1] as number); a++) {
        let cost = (net.arcCost[a] as number) + (linkPrice[net.arcLink[a] as number] as number);
        const hand = net.arcHand[a] as number;
        if (hand >= 0) cost += (prices[at.hand + hand] as number) * (net.arcPacks[a] as number);
        if (cost < fed) {
          fed = cost;
          arc = a;
        }
      }
      if (place + fed < least) {
        least = place + fed;
        this.node[c] = n;
        this.arc[c] = arc;
        this.berth[c] = berth;
      }
    }
    return least;
  }

  /** Raises the slope of everything that taker c chose. */
  private record(c: number, prices: Float64Array, slope: Float64Array): void {
    const { net, at } = this;
    const up = (place: number, by: number) => {
      slope[place] = (slope[place] as number) + by;
    };
    const node = this.node[c] as number;
    if (node < 0) {
      up(at.left, net.priority[c] as number);
      return;
    }
    const arc = this.arc[c] as number;
    let giver = -1;
    if (arc >= 0) {
      const link = net.arcLink[arc] as number;
      up(at.links + link, 1);
      giver = this.giverOf(link);
      const hand = net.arcHand[arc] as number;
      if (hand >= 0) up(at.hand + hand, net.arcPacks[arc] as number);
    } else {
      const w = -2 - arc;
      const jar = net.wayJar[w] as number;
      if (jar >= 0) up(at.jars + jar, 1);
      const hand = net.wayHand[w] as number;
      if (hand >= 0) up(at.hand + hand, net.wayPacks[w] as number);
    }
    if (c >= net.brews) return;
    for (let k = 0; k < this.cuts.length; k++) {
      const inside = (this.cuts[k] as Cut).inside;
      if (inside[c] && !(giver >= 0 && inside[giver])) up(at.cuts + k, -1);
    }
    up(at.starts + (net.nodeAt[node] as number), 1);
    const k = this.berth[c] as number;
    const row = at.room + (net.berthGroup[k] as number) * net.days.length;
    const until = net.berthUntil[k] as number;
    for (let i = net.berthFrom[k] as number; i < until; i++) up(row + i, 1);
    const state = net.berthState[k] as number;
    if ((this.worth[state] as number) > 0) this.give(state, prices, slope);
  }
}

/** Largest price for its share first. */
function sortByRatio(
  order: Int32Array,
  n: number,
  prices: Float64Array,
  first: number,
  share: Float64Array,
): void {
  for (let i = 1; i < n; i++) {
    const l = order[i] as number;
    const ratio = (prices[first + l] as number) / Math.max(1e-12, share[l] as number);
    let j = i - 1;
    while (j >= 0) {
      const other = order[j] as number;
      if ((prices[first + other] as number) / Math.max(1e-12, share[other] as number) >= ratio)
        break;
      order[j + 1] = other;
      j--;
    }
    order[j + 1] = l;
  }
}
