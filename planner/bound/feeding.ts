// Who can feed whom: the arcs of every node, the jars of the shelf, and the jars that may be kept.
import type { Asker } from './ask.ts';
import type { Giver } from './build.ts';
import type { Builder } from './builder.ts';
import { Pair } from './pairs.ts';
import type { Spot } from './takers.ts';

/** By state: the dearest risk is left to the ascent; here only what is possible, and at what least cost. */
export class Feeding {
  /** First state of each spot of each giver: kinds side by side, levels inside. */
  private readonly firstState: number[][] = [];
  /** Longest span from a giver's day to the day its crop is drawn, by pair. */
  private readonly pairs = new Map<number, Pair>();
  private readonly oneLevel: Float64Array;

  constructor(
    private readonly asker: Asker,
    private readonly givers: readonly Giver[],
    private readonly levels: number,
    build: Builder,
  ) {
    this.oneLevel = new Float64Array(levels);
    for (const giver of givers) {
      const first: number[] = [];
      for (const spot of giver.spots) {
        first.push(build.stateCount);
        for (let kind = 0; kind < spot.crops.length; kind++) {
          for (let level = 0; level < levels; level++) build.state(giver.taker, giver.once);
        }
      }
      this.firstState.push(first);
    }
  }

  /** The state of giver g in its spot with that index. */
  state(g: number, spot: number, kind: number, level: number): number {
    return (this.firstState[g]?.[spot] as number) + kind * this.levels + level;
  }

  private pair(g: number, taker: number, yeast: number): Pair {
    const { asker, givers, levels } = this;
    const { problem: p } = asker;
    const key = (g * p.brews.length + taker) * p.yeasts.length + yeast;
    const known = this.pairs.get(key);
    if (known) return known;
    const giver = givers[g] as Giver;
    const made = new Pair(
      asker,
      giver.brew,
      p.jars.length + giver.brew,
      taker,
      yeast,
      giver.perJar,
      levels,
      this.levelOfFact(giver),
    );
    this.pairs.set(key, made);
    return made;
  }

  private levelOfFact(giver: Giver): number {
    if (giver.taker >= 0) return -1;
    return Math.min(this.levels - 1, this.asker.t.generation[giver.brew] as number);
  }

  /**
   * Lists the arcs into brew b in this spot for every level of the giver: arcs that no hard rule forbids and that cost
   * less than `most`, what packs of its own with their own delivery would.
   */
  arcs(b: number, spot: Spot, most: number, found: (arc: Arc) => void): void {
    const { asker, givers, levels } = this;
    const { problem: p } = asker;
    const { t } = asker;
    const pin = p.brews[b]?.pinSource ?? -2;
    const perSize = spot.starts;
    if (p.brews[b]?.begun) return;
    // crops are asked about with the taker standing in its spot, one size of starter after the other
    for (const start of perSize) {
      asker.stand(b, spot.day, spot.tank, spot.yeast, start.size);
      const use = start.use;
      if (use < p.today) continue;
      for (let g = 0; g < givers.length; g++) {
        const giver = givers[g] as Giver;
        if (giver.brew === b) continue;
        const source = p.jars.length + giver.brew;
        if (pin >= -1 && pin !== source) continue;
        const room = giver.roomMl.get(spot.yeast);
        if (!room) continue;
        t.source[b] = source;
        const changed = asker.cost(b, 'source');
        const pair = this.pair(g, b, spot.yeast);
        for (let i = 0; i < giver.spots.length; i++) {
          const from = giver.spots[i] as Giver['spots'][number];
          if (from.yeast !== spot.yeast || from.day >= spot.day) continue;
          for (let kind = 0; kind < from.crops.length; kind++) {
            const best = this.oneLevel.fill(Infinity);
            let draw = Infinity;
            for (const crop of from.crops[kind] ?? []) {
              const age = use - crop.day;
              if (age < 0 || crop.usableFrom > use) continue;
              const line = pair.line(start.size, from.day, crop);
              if (age > line.oldest) continue;
              const pitch = pair.pitch(line, from.day, crop, age);
              if (pitch.drawMl > room) continue;
              for (let level = 0; level < levels; level++) {
                const cost = (pitch.byLevel[level] as number) + changed;
                if (cost < (best[level] as number)) best[level] = cost;
              }
              if (pitch.drawMl < draw) draw = pitch.drawMl;
            }
            for (let level = 0; level < levels; level++) {
              const cost = best[level] as number;
              if (!(cost < most)) continue;
              const state = this.state(g, i, kind, level);
              found({ state, level, starter: start.size > 0, cost, share: draw / room });
            }
          }
        }
      }
    }
    asker.leave(b);
  }

  /** The arcs into the jar of strain y that may be kept, each with what it is worth and takes. */
  keeps(y: number, found: (arc: Arc) => void): void {
    const { asker, givers, levels } = this;
    const { problem: p, t } = asker;
    for (let g = 0; g < givers.length; g++) {
      const giver = givers[g] as Giver;
      const room = giver.roomMl.get(y);
      if (!room) continue;
      const only = this.levelOfFact(giver);
      for (let i = 0; i < giver.spots.length; i++) {
        const from = giver.spots[i] as Giver['spots'][number];
        if (from.yeast !== y) continue;
        for (let kind = 0; kind < from.crops.length; kind++) {
          for (let level = 0; level < levels; level++) {
            if (only >= 0 && level !== only) continue;
            let best = 0;
            for (const crop of from.crops[kind] ?? []) {
              asker.give(giver.brew, from.day, y, level, crop);
              t.cropMl[giver.brew] = room;
              best = Math.min(best, asker.keep(y, p.jars.length + giver.brew));
              asker.leave(giver.brew);
            }
            const cost = best + giver.perJar;
            if (best < 0 && cost < 0) {
              found({
                state: this.state(g, i, kind, level),
                level,
                starter: false,
                cost,
                share: 0,
              });
            }
          }
        }
      }
    }
  }
}

/** One way to be fed: from a state, at this cost, drawing this share of the crop at least. */
export type Arc = { state: number; level: number; starter: boolean; cost: number; share: number };
