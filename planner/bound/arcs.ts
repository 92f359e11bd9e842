// Who can feed whom: the arcs out of every state, and the jars that may be kept of it.
import { STARTER_SIZES } from '../timeline/problem.ts';
import type { Asker, CropWay } from './ask.ts';
import type { Giver } from './build.ts';
import { Column, type Net } from './net.ts';
import { type CropKind, type Grain, kindsOf, NEVER, Pair, Pitches } from './pairs.ts';
import type { Spot } from './takers.ts';

type Out = Pick<
  Net,
  | 'groupStart'
  | 'groupTaker'
  | 'groupArc'
  | 'groupStarter'
  | 'groupShare'
  | 'groupShareStarter'
  | 'arcNode'
  | 'arcCost'
  | 'stateKeep'
>;

/** A spot of a taker and its node. `most`: what packs of its own with their own delivery would cost there. */
export type Place = { node: number; spot: Spot; most: number };

/** The first of the places that lies after a day. */
function firstAfter(all: readonly Place[], day: number): number {
  let low = 0;
  let high = all.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((all[middle] as Place).spot.day <= day) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** Longest that slurry is ever asked about, days. */
const FOREVER = 1000;

export class Arcs {
  arcs = 0;
  private readonly pairs = new Map<number, Pair>();
  private readonly groupStart = new Column();
  private readonly groupTaker = new Column();
  private readonly groupArc = new Column();
  private readonly groupStarter = new Column();
  private readonly groupShare = new Column();
  private readonly groupShareStarter = new Column();
  private readonly arcNode = new Column();
  private readonly arcCost = new Column();
  private readonly stateKeep = new Column();
  /** What a change of source costs at least, by node and giver. */
  private readonly changed = new Map<number, Float64Array>();
  private readonly best: Float64Array;
  private readonly pitches: Pitches;

  constructor(
    private readonly asker: Asker,
    private readonly free: readonly number[],
    private readonly givers: readonly Giver[],
    /** By brew to be brewed and strain: its places, earliest first. */
    private readonly places: readonly (readonly Place[])[][],
    private readonly levels: number,
    private readonly grain: Grain,
  ) {
    this.best = new Float64Array(levels);
    this.pitches = new Pitches(levels);
  }

  /** Adds all that can be had from one state: giver g, begun on a day with a strain, with these crops. */
  state(g: number, day: number, yeast: number, crops: readonly CropWay[]): void {
    const { givers, free, asker } = this;
    this.groupStart.push(this.groupTaker.length);
    const giver = givers[g] as Giver;
    const room = giver.roomMl.get(yeast) ?? 0;
    if (room > 0 && crops.length > 0) {
      const source = asker.problem.jars.length + giver.brew;
      const grain = giver.taker < 0 ? { ...this.grain, exact: true } : this.grain;
      const hopDay = asker.problem.brews[giver.brew]?.dryHopDay ?? null;
      const kinds = kindsOf(crops, day, hopDay, grain);
      for (const [c, b] of free.entries()) {
        const brew = asker.problem.brews[b];
        if (c === giver.taker || !brew || brew.begun) continue;
        if (brew.pinSource >= -1 && brew.pinSource !== source) continue;
        if (this.places[c]?.[yeast]?.length) this.group(g, c, b, day, yeast, kinds, room);
      }
    }
    this.keep(giver, day, yeast, crops, room);
  }

  private group(
    g: number,
    c: number,
    b: number,
    day: number,
    yeast: number,
    kinds: readonly CropKind[],
    room: number,
  ): void {
    const first = this.arcNode.length;
    const pair = this.pair(g, b, yeast);
    const all = this.places[c]?.[yeast] ?? [];
    const share = this.listed(g, b, day, kinds, room, pair, all, false);
    const starter = this.arcNode.length;
    const shareStarter = this.listed(g, b, day, kinds, room, pair, all, true);
    if (this.arcNode.length === first) return;
    this.groupTaker.push(c);
    this.groupArc.push(first);
    this.groupStarter.push(starter);
    this.groupShare.push(share);
    this.groupShareStarter.push(shareStarter);
  }

  /** Lists the arcs to one taker, with a starter or without; returns the least share of the crop that one of them draws. */
  private listed(
    g: number,
    b: number,
    day: number,
    kinds: readonly CropKind[],
    room: number,
    pair: Pair,
    all: readonly Place[],
    starters: boolean,
  ): number {
    const { asker, best, levels, pitches } = this;
    const { today } = asker.problem;
    let least = 1;
    const latest = day + FOREVER;
    const sizes = starters ? STARTER_SIZES : 1;
    for (let i = firstAfter(all, day); i < all.length; i++) {
      const place = all[i] as Place;
      const { spot } = place;
      if (spot.day > latest) break;
      let asked = 0;
      let fit = 0;
      best.fill(Infinity);
      let draw = Infinity;
      for (const { size, use } of spot.starts) {
        if (size > 0 !== starters || use < today) continue;
        for (const kind of kinds) {
          const { crop } = kind;
          if (crop.usableFrom > use) continue;
          const age = Math.max(0, use - crop.day);
          if (age > FOREVER) continue;
          const pitch = pair.pitch(size, day, kind, age, spot);
          if (age > 0) asked++;
          if (pitch === NEVER) continue;
          const drawn = pitches.drawMl(pitch);
          if (drawn > room) continue;
          fit++;
          for (let level = 0; level < levels; level++) {
            const cost = pitches.cost(pitch, level);
            if (cost < (best[level] as number)) best[level] = cost;
          }
          if (drawn < draw) draw = drawn;
        }
      }
      // older slurry is never better: where all of it is too old already, it is on all later days
      if (fit === 0 && asked === kinds.length * sizes) break;
      if (draw === Infinity) continue;
      const changed = this.change(g, b, place);
      let any = false;
      for (let level = 0; level < levels; level++) {
        const cost = (best[level] as number) + changed;
        best[level] = cost < place.most ? cost : Infinity;
        any ||= cost < place.most;
      }
      if (!any) continue;
      this.arcNode.push(place.node);
      for (let level = 0; level < levels; level++) this.arcCost.push(best[level] as number);
      this.arcs++;
      least = Math.min(least, draw / room);
    }
    return least;
  }

  /** What being fed by giver g costs a brew in its place for being another source, all else at its best. */
  private change(g: number, b: number, place: Place): number {
    if (!this.asker.chargesSources) return 0;
    const known = this.changed.get(place.node);
    if (known) return known[g] as number;
    const { asker } = this;
    const { t, problem: p } = asker;
    const { spot } = place;
    const made = Float64Array.from(this.givers, (giver) => {
      asker.stand(b, spot.day, spot.tank, spot.yeast, 0);
      if (!p.brews[giver.brew]?.done) {
        t.harvestDay[giver.brew] = spot.day;
        t.usableFrom[giver.brew] = spot.day - FOREVER;
        t.beerLoss[giver.brew] = 0;
        t.generation[giver.brew] = 0;
      }
      t.source[b] = p.jars.length + giver.brew;
      return asker.cost(b, 'source');
    });
    asker.leave(b);
    this.changed.set(place.node, made);
    return made[g] as number;
  }

  private pair(g: number, taker: number, yeast: number): Pair {
    const { asker, givers, pitches, grain } = this;
    const { problem: p } = asker;
    const key = (g * p.brews.length + taker) * p.yeasts.length + yeast;
    const known = this.pairs.get(key);
    if (known) return known;
    const giver = givers[g] as Giver;
    const source = p.jars.length + giver.brew;
    const { brew, perJar, level } = giver;
    const made = new Pair(asker, brew, source, taker, yeast, perJar, pitches, grain, level);
    this.pairs.set(key, made);
    return made;
  }

  /** What a jar that is kept of this state is worth and takes, by level. */
  private keep(
    giver: Giver,
    day: number,
    yeast: number,
    crops: readonly CropWay[],
    room: number,
  ): void {
    const { asker, levels } = this;
    const { problem: p, t } = asker;
    for (let level = 0; level < levels; level++) {
      let best = 0;
      if (room > 0 && (giver.level < 0 || giver.level === level)) {
        for (const crop of crops) {
          asker.give(giver.brew, day, yeast, level, crop);
          t.cropMl[giver.brew] = room;
          best = Math.min(best, asker.keep(yeast, p.jars.length + giver.brew));
          asker.leave(giver.brew);
        }
      }
      this.stateKeep.push(best < 0 ? Math.min(0, best + giver.perJar) : 0);
    }
  }

  finish(): Out {
    this.groupStart.push(this.groupTaker.length);
    this.groupArc.push(this.arcNode.length);
    return {
      groupStart: this.groupStart.ints(),
      groupTaker: this.groupTaker.ints(),
      groupArc: this.groupArc.ints(),
      groupStarter: this.groupStarter.ints(),
      groupShare: this.groupShare.floats(),
      groupShareStarter: this.groupShareStarter.floats(),
      arcNode: this.arcNode.ints(),
      arcCost: this.arcCost.floats(),
      stateKeep: this.stateKeep.floats(),
    };
  }
}
