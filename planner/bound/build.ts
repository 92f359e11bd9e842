// Compiles a season to the arrays of the bound: spots become nodes and states, who can feed whom becomes links and arcs.
import { FRESH, type Problem } from '../timeline/problem.ts';
import type { Asker, CropWay } from './ask.ts';
import { Builder } from './builder.ts';
import { mostMl } from './crop-room.ts';
import { Deliveries } from './deliveries.ts';
import { type Arc, Feeding } from './feeding.ts';
import type { Net } from './net.ts';
import { type Spot, spotsOf } from './takers.ts';
import type { Groups } from './tanks.ts';

/** What can give a crop: a brew in one of its spots, or a brewed beer as it stands. */
export type Giver = {
  brew: number;
  /** Its number among the takers, or -1 for a brewed beer. */
  taker: number;
  spots: { day: number; yeast: number; crops: CropWay[][] }[];
  /** mL by strain at most. */
  roomMl: Map<number, number>;
  once: number;
  perJar: number;
};

export type Limits = {
  /** Generations told apart; 1: none. */
  levels: number;
  /** More arcs than this are not made: null is returned. */
  arcs: number;
};

/** The network of a season, or null where it would be too large. */
export function buildNet(asker: Asker, groups: Groups, limits: Limits): Net | null {
  const { problem: p } = asker;
  const { levels } = limits;
  const free = p.brews.map((_, b) => b).filter((b) => !p.brews[b]?.done);
  const spots = free.map((b) => spotsOf(asker, groups, b));
  const build = new Builder();
  const feeding = new Feeding(asker, giversOf(asker, free, spots), levels, build);
  const deliveries = new Deliveries(p, spots, build);
  for (const [c, b] of free.entries()) {
    build.taker();
    for (const [i, spot] of (spots[c] ?? []).entries()) {
      const jars = jarWays(asker, b, spot);
      const most = freshMost(spot, deliveries.minor);
      const arcs: Arc[] = [];
      feeding.arcs(b, spot, most, (arc) => arcs.push(arc));
      for (let level = 0; level < levels; level++) {
        build.node(spot.day, spot.at);
        for (const berth of spot.berths) {
          build.berth(berth, feeding.state(c, i, berth.kind, level));
        }
        if (level === 0 || p.brews[b]?.begun) {
          for (const { use, ways } of spot.starts) {
            for (const way of ways) {
              const hand = way.fromHand > 0 ? spot.yeast : -1;
              const fresh = { cost: way.cost, jar: -1, hand, packs: way.fromHand };
              if (way.ordered && deliveries.minor > 0) deliveries.order(use, fresh);
              else build.way(fresh);
            }
          }
        }
        for (const jar of jars) {
          if (levels > 1 && Math.min(levels - 1, jar.generation) !== level) continue;
          build.way({ cost: jar.cost, jar: jar.jar, hand: -1, packs: 0 });
        }
        for (const arc of arcs) {
          if (levels > 1 && Math.min(levels - 1, arc.level + 1) !== level) continue;
          build.arc(arc.state, arc.starter, arc.cost, arc.share);
        }
        if (build.arcCount > limits.arcs) return null;
      }
    }
  }
  for (let y = 0; y < p.yeasts.length; y++) {
    build.taker();
    build.node(0, -1);
    build.way({ cost: 0, jar: -1, hand: -1, packs: 0 });
    for (let j = 0; j < p.jars.length; j++) {
      const worth = asker.keep(y, j);
      if (worth < 0) build.way({ cost: worth, jar: j, hand: -1, packs: 0 });
    }
    feeding.keeps(y, (arc) => build.arc(arc.state, false, arc.cost, arc.share));
  }
  return build.finish({
    brews: free.length,
    brewOf: Int32Array.from(free),
    priority: Int32Array.from(free, (b) => p.brews[b]?.priority ?? 1),
    groups: groups.groups,
    roomOf: groups.roomOf,
    days: groups.days,
    startsOf: groups.startsOf,
    jars: p.jars.length,
    hand: Int32Array.from(p.yeasts, (yeast) => yeast.handCount),
    fixed: asker.factsCost,
  });
}

/** What packs of its own, brought by a delivery of its own, cost: nothing dearer is worth looking at. */
function freshMost(spot: Spot, delivery: number): number {
  let most = Infinity;
  for (const { ways } of spot.starts) {
    for (const way of ways) {
      if (way.fromHand === 0) most = Math.min(most, way.cost + (way.ordered ? delivery : 0));
    }
  }
  return most;
}

function jarWays(asker: Asker, b: number, spot: Spot) {
  const { problem: p, t } = asker;
  const out: { jar: number; generation: number; cost: number }[] = [];
  const brew = p.brews[b];
  if (!brew || brew.begun) return out;
  for (const { size } of spot.starts) {
    asker.stand(b, spot.day, spot.tank, spot.yeast, size);
    for (const [j, jar] of p.jars.entries()) {
      if (jar.yeast !== spot.yeast || (t.draws[j] as number) > 0) continue;
      if (brew.pinSource >= FRESH && brew.pinSource !== j) continue;
      const asked = asker.pitchFrom(b, j);
      if (asked.broken || asked.drawMl > jar.ml + 1e-3) continue;
      const cost = asked.cost + asker.risk(b, asked.hazard) + asker.cost(b, 'source');
      out.push({ jar: j, generation: jar.generation, cost });
    }
  }
  asker.leave(b);
  return out;
}

function giversOf(asker: Asker, free: readonly number[], spots: readonly Spot[][]): Giver[] {
  const { problem: p, t } = asker;
  const out: Giver[] = [];
  const add = (brew: number, taker: number, at: Giver['spots']) => {
    const roomMl = new Map<number, number>();
    for (const { yeast } of at) {
      // a crop that only rounding makes too small is large enough
      if (!roomMl.has(yeast)) roomMl.set(yeast, mostMl(p, t, brew, yeast) + 1e-3);
    }
    out.push({ brew, taker, spots: at, roomMl, ...asker.harvest(brew) });
  };
  for (const [c, brew] of free.entries()) add(brew, c, spots[c] ?? []);
  p.brews.forEach((brew: Problem['brews'][number], b) => {
    if (!brew.done) return;
    const yeast = t.yeast[b] as number;
    add(b, -1, [{ day: brew.done.day, yeast, crops: [asker.crops(b)] }]);
  });
  return out;
}
