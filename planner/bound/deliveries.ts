// Deliveries of packs: each costs once and brings what is wanted on its day and within the order window after it.
import type { Problem } from '../timeline/problem.ts';
import type { Builder, Way } from './builder.ts';
import type { Spot } from './takers.ts';

export class Deliveries {
  /** What one costs. */
  readonly minor: number;
  /** Days on which one can arrive: those on which somebody could want packs. */
  private readonly days: number[];
  private readonly first: number;
  private readonly window: number;

  constructor(p: Problem, spots: readonly Spot[][], build: Builder) {
    this.minor = Math.round(p.house.deliveryCost * p.minorPerMajor);
    this.window = p.settings.orderWindowDays;
    const days = new Set<number>();
    for (const spot of spots.flat()) {
      for (const { use, ways } of spot.starts) if (ways.some((way) => way.ordered)) days.add(use);
    }
    this.days = this.minor > 0 ? [...days].sort((a, b) => a - b) : [];
    this.first = build.stateCount;
    for (let i = 0; i < this.days.length; i++) build.state(-1, this.minor);
    this.build = build;
  }

  private readonly build: Builder;

  /** Packs that are ordered for a day: by any delivery that could bring them. */
  order(use: number, way: Way): void {
    for (let i = this.days.length - 1; i >= 0; i--) {
      const day = this.days[i] as number;
      if (day > use) continue;
      if (day < use - this.window) break;
      this.build.arc(this.first + i, false, way.cost, 0, way.hand, way.packs);
    }
  }
}
