// Compiles a season to the arrays of the bound: spots become nodes and states, sources become roots and arcs.
import { FRESH } from '../timeline/problem.ts';
import { Arcs, type Place } from './arcs.ts';
import type { Asker, CropWay } from './ask.ts';
import { mostMl } from './crop-room.ts';
import { Deliveries, freshMost } from './deliveries.ts';
import { Column, type Net } from './net.ts';
import { type Spot, spotsOf } from './takers.ts';
import type { Groups } from './tanks.ts';

/** What can give a crop: a brew in one of its spots, or a brewed beer as it stands. */
export type Giver = {
  brew: number;
  /** Its number among the brews to be brewed, or -1 for a brewed beer. */
  taker: number;
  /** Level of a brewed beer, or -1. */
  level: number;
  /** mL by strain at most. */
  roomMl: Map<number, number>;
  once: number;
  perJar: number;
};

export type Limits = {
  /** Generations told apart; 1: none. */
  levels: number;
  /** Slurry is told apart by stretches of days; left out: in seasons of more than a few brews. */
  coarse?: boolean;
  /** More arcs than this are not made: null is returned. */
  arcs: number;
};

/** Up to so many brews slurry is told apart as finely as it can be. */
const FEW = 12;
const GRAIN = { days: 7, starterDays: 14, loss: 0.08 };

/** The network of a season, or null where it would be too large. */
export function buildNet(asker: Asker, groups: Groups, limits: Limits): Net | null {
  const { problem: p, t } = asker;
  const { levels } = limits;
  const free = p.brews.map((_, b) => b).filter((b) => !p.brews[b]?.done);
  const spots = free.map((b) => spotsOf(asker, groups, b));
  const deliveries = new Deliveries(p);
  const nodes = new Nodes(levels);
  const places = free.map((_, c) => {
    const byYeast = p.yeasts.map((): Place[] => []);
    for (const spot of spots[c] ?? []) {
      const node = nodes.add(c, spot, deliveries);
      byYeast[spot.yeast]?.push({ node, spot, most: freshMost(spot, deliveries.minor) });
    }
    nodes.nextBrew();
    return byYeast;
  });
  const brewed = p.brews.map((_, b) => b).filter((b) => p.brews[b]?.done);
  const givers = [...free, ...brewed].map((b, i) => giverOf(asker, b, i, spots[i] ?? [], levels));
  const arcs = new Arcs(asker, free, givers, places, levels, {
    ...GRAIN,
    exact: !(limits.coarse ?? free.length > FEW),
  });
  const stateBrew = new Column();
  const stateLevel = new Column();
  const stateYeast = new Column();
  const stateOnce = new Column();
  const add = (g: number, day: number, yeast: number, crops: readonly CropWay[]) => {
    const giver = givers[g] as Giver;
    stateBrew.push(giver.taker);
    stateLevel.push(giver.level);
    stateYeast.push(yeast);
    stateOnce.push(giver.once);
    arcs.state(g, day, yeast, crops);
  };
  for (const [c, own] of spots.entries()) {
    for (const spot of own) for (const crops of spot.crops) add(c, spot.day, spot.yeast, crops);
    if (arcs.arcs > limits.arcs) return null;
  }
  for (const [i, b] of brewed.entries()) {
    add(free.length + i, p.brews[b]?.done?.day ?? 0, t.yeast[b] as number, asker.crops(b));
  }
  const jarKeep = p.jars.map((jar, j) =>
    jar.yeast < 0 ? 0 : Math.min(0, asker.keep(jar.yeast, j)),
  );
  return {
    ...nodes.finish(),
    ...arcs.finish(),
    ...jarsOf(asker, free, places, levels),
    brews: free.length,
    brewOf: Int32Array.from(free),
    priority: Int32Array.from(free, (b) => p.brews[b]?.priority ?? 1),
    levels,
    yeasts: p.yeasts.length,
    jarYeast: Int32Array.from(p.jars, (jar) => jar.yeast),
    jarKeep: Float64Array.from(jarKeep),
    states: stateBrew.length,
    stateBrew: stateBrew.ints(),
    stateLevel: stateLevel.ints(),
    stateYeast: stateYeast.ints(),
    stateOnce: stateOnce.floats(),
    tankGroups: groups.groups,
    roomOf: groups.roomOf,
    days: groups.days,
    startsOf: groups.startsOf,
    hand: Int32Array.from(p.yeasts, (yeast) => yeast.handCount),
    deliveries: deliveries.finish(),
    fixed: asker.factsCost,
  };
}

class Nodes {
  private readonly nodeStart = new Column();
  private readonly nodeBrew = new Column();
  private readonly nodeDay = new Column();
  private readonly nodeYeast = new Column();
  private readonly nodeAt = new Column();
  private readonly berthStart = new Column();
  private readonly berthGroup = new Column();
  private readonly berthFrom = new Column();
  private readonly berthUntil = new Column();
  private readonly berthCost = new Column();
  private readonly berthState = new Column();
  private readonly wayStart = new Column();
  private readonly wayCost = new Column();
  private readonly wayHand = new Column();
  private readonly wayPacks = new Column();
  private readonly wayOrder = new Column();
  private readonly stateStart = new Column();
  private states = 0;

  constructor(readonly levels: number) {
    this.nodeStart.push(0);
  }

  add(c: number, spot: Spot, deliveries: Deliveries): number {
    const node = this.nodeDay.length;
    this.nodeBrew.push(c);
    this.nodeDay.push(spot.day);
    this.nodeYeast.push(spot.yeast);
    this.nodeAt.push(spot.at);
    this.berthStart.push(this.berthGroup.length);
    for (const berth of spot.berths) {
      this.berthGroup.push(berth.group);
      this.berthFrom.push(berth.from);
      this.berthUntil.push(berth.until);
      this.berthCost.push(berth.cost);
      this.berthState.push(this.states + berth.kind);
    }
    this.stateStart.push(this.states);
    this.states += spot.crops.length;
    this.wayStart.push(this.wayCost.length);
    for (const { use, ways } of spot.starts) {
      for (const way of ways) {
        this.wayCost.push(way.cost);
        this.wayHand.push(way.fromHand > 0 ? spot.yeast : -1);
        this.wayPacks.push(way.fromHand);
        this.wayOrder.push(way.ordered ? deliveries.order(c, use) : -1);
      }
    }
    return node;
  }

  nextBrew(): void {
    this.nodeStart.push(this.nodeDay.length);
  }

  finish() {
    this.berthStart.push(this.berthGroup.length);
    this.stateStart.push(this.states);
    this.wayStart.push(this.wayCost.length);
    const nodeDay = this.nodeDay.ints();
    const byDay = Int32Array.from(nodeDay, (_, n) => n);
    byDay.sort((a, b) => (nodeDay[a] as number) - (nodeDay[b] as number) || a - b);
    return {
      nodeStart: this.nodeStart.ints(),
      nodeBrew: this.nodeBrew.ints(),
      nodeDay,
      nodeYeast: this.nodeYeast.ints(),
      nodeAt: this.nodeAt.ints(),
      byDay,
      berthStart: this.berthStart.ints(),
      berthGroup: this.berthGroup.ints(),
      berthFrom: this.berthFrom.ints(),
      berthUntil: this.berthUntil.ints(),
      berthCost: this.berthCost.floats(),
      berthState: this.berthState.ints(),
      wayStart: this.wayStart.ints(),
      wayCost: this.wayCost.floats(),
      wayHand: this.wayHand.ints(),
      wayPacks: this.wayPacks.ints(),
      wayOrder: this.wayOrder.ints(),
      stateStart: this.stateStart.ints(),
    };
  }
}

/** The jars of the shelf: into which nodes each can be pitched. */
function jarsOf(
  asker: Asker,
  free: readonly number[],
  places: readonly (readonly Place[])[][],
  levels: number,
): Pick<Net, 'jars' | 'jarStart' | 'jarNode' | 'jarLevel' | 'jarCost'> {
  const { problem: p, t } = asker;
  const start = [0];
  const node: number[] = [];
  const level: number[] = [];
  const costs: number[] = [];
  for (const [j, jar] of p.jars.entries()) {
    for (const [c, b] of free.entries()) {
      const brew = p.brews[b];
      if (!brew || brew.begun || (t.draws[j] as number) > 0) continue;
      if (brew.pinSource >= FRESH && brew.pinSource !== j) continue;
      for (const place of places[c]?.[jar.yeast] ?? []) {
        const { spot } = place;
        for (const { size } of spot.starts) {
          asker.stand(b, spot.day, spot.tank, spot.yeast, size);
          const asked = asker.pitchFrom(b, j);
          if (asked.broken || asked.drawMl > jar.ml + 1e-3) continue;
          node.push(place.node);
          level.push(Math.min(levels - 1, jar.generation));
          costs.push(asked.cost + asker.risk(b, asked.hazard) + asker.cost(b, 'source'));
        }
        asker.leave(b);
      }
    }
    start.push(node.length);
  }
  return {
    jars: p.jars.length,
    jarStart: Int32Array.from(start),
    jarNode: Int32Array.from(node),
    jarLevel: Int32Array.from(level),
    jarCost: Float64Array.from(costs),
  };
}

function giverOf(
  asker: Asker,
  brew: number,
  number: number,
  spots: readonly Spot[],
  levels: number,
): Giver {
  const { problem: p, t } = asker;
  const done = p.brews[brew]?.done;
  const roomMl = new Map<number, number>();
  for (const yeast of done ? [t.yeast[brew] as number] : spots.map((spot) => spot.yeast)) {
    // a crop that only rounding makes too small is large enough
    if (!roomMl.has(yeast)) roomMl.set(yeast, mostMl(p, t, brew, yeast) + 1e-3);
  }
  const level = done ? Math.min(levels - 1, t.generation[brew] as number) : -1;
  return { brew, taker: done ? -1 : number, level, roomMl, ...asker.harvest(brew) };
}
