// Deliveries of packs: each costs once and brings what is wanted on its day and within the order window after it.
import type { Problem } from '../timeline/problem.ts';
import type { DeliveryNet } from './net.ts';
import type { Spot } from './takers.ts';

/**
 * Days are counted in stretches of half an order window. A delivery that arrives in one of them may bring what is wanted
 * up to a window after that stretch's end: more than it can, so that no plan pays for fewer.
 */
export class Deliveries {
  /** What one costs. */
  readonly minor: number;
  private readonly first: number;
  private readonly length: number;
  private readonly reach: number;
  private readonly known = new Map<number, number>();
  private readonly brewOf: number[] = [];
  private readonly stretchOf: number[] = [];

  constructor(p: Problem) {
    this.minor = Math.round(p.house.deliveryCost * p.minorPerMajor);
    const window = p.settings.orderWindowDays;
    this.first = p.from - 60;
    this.length = Math.max(1, Math.floor(window / 2));
    this.reach = Math.floor((this.length - 1 + window) / this.length);
  }

  /** The order of brew c (of all that are to be brewed) for packs wanted on a day, or -1 where deliveries cost nothing. */
  order(c: number, use: number): number {
    if (this.minor === 0) return -1;
    const stretch = Math.floor((use - this.first) / this.length);
    const key = c * STRETCHES + stretch;
    const known = this.known.get(key);
    if (known !== undefined) return known;
    const made = this.brewOf.length;
    this.known.set(key, made);
    this.brewOf.push(c);
    this.stretchOf.push(stretch);
    return made;
  }

  finish(): DeliveryNet {
    const start = [0];
    const order: number[] = [];
    const all = this.brewOf.map((_, o) => o);
    for (const first of new Set(this.stretchOf.toSorted((a, b) => a - b))) {
      const brought = all.filter((o) => {
        const stretch = this.stretchOf[o] as number;
        return stretch >= first && stretch <= first + this.reach;
      });
      brought.sort((a, b) => (this.brewOf[a] as number) - (this.brewOf[b] as number) || a - b);
      order.push(...brought);
      start.push(order.length);
    }
    return {
      minor: this.minor,
      orders: all.length,
      start: Int32Array.from(start),
      order: Int32Array.from(order),
      brewOf: Int32Array.from(this.brewOf),
    };
  }
}

const STRETCHES = 1_000_000;

/** What packs of its own, brought by a delivery of its own, cost in a spot: nothing dearer is worth looking at. */
export function freshMost(spot: Spot, delivery: number): number {
  let most = Infinity;
  for (const { ways } of spot.starts) {
    for (const way of ways) {
      if (way.fromHand === 0) most = Math.min(most, way.cost + (way.ordered ? delivery : 0));
    }
  }
  return most;
}
