// Harvests, orders and the shelf as they are published.
import type { PlannedHarvest, PlannedOrder, ShelfJar } from '../model/index.ts';
import { isoDay } from '../timeline/calendar.ts';
import { cropSpread } from '../timeline/crop-spread.ts';
import { givenGeneration, KEPT } from '../timeline/kept.ts';
import { FRESH, type Problem } from '../timeline/problem.ts';
import { firstToTaste, reserveMl } from '../timeline/reserve.ts';
import { shelfJarLeaves } from '../timeline/room.ts';
import type { Timeline } from '../timeline/timeline.ts';
import { orderDay, rangeOf, slurryViability, tidy } from './brews.ts';

/** Every harvest that somebody draws from, or that has been taken, in order of day. */
export function publishHarvests(t: Timeline): PlannedHarvest[] {
  const p = t.problem;
  const nJars = p.jars.length;
  const out: PlannedHarvest[] = [];
  for (let i = 0; i < t.orderCount; i++) {
    const b = t.order[i] as number;
    const brew = p.brews[b];
    const yeast = p.yeasts[t.yeast[b] as number];
    if (!brew || !yeast) continue;
    if ((t.draws[nJars + b] as number) === 0 && !brew.harvested) continue;
    const day = t.harvestDay[b] as number;
    const likely = t.cropMl[b] as number;
    // what has been read is off only by the reading
    const spread = brew.harvested ? 1.05 : cropSpread(p, t.yeast[b] as number);
    out.push({
      brew: brew.name,
      yeast: yeast.row.yeast,
      day: isoDay(day),
      done: brew.harvested !== null,
      generation: givenGeneration(t, b),
      cropViability: slurryViability(p, t, nJars + b, day),
      viabilityToday: brew.harvested ? slurryViability(p, t, nJars + b, p.today) : null,
      cellsB: tidy(t.cropCellsB[b] as number),
      settledMl: rangeOf(likely / spread, likely, likely * spread),
      crashed: t.crashed[b] === 1,
      ...(t.crop[b] === KEPT ? { ofStarter: true as const } : {}),
      usableFrom: isoDay(t.usableFrom[b] as number),
      discardBy: isoDay(day + p.settings.maxStorageDays),
      jars: jarsOf(t, b),
    });
  }
  return out.sort((a, z) => (a.day < z.day ? -1 : a.day > z.day ? 1 : a.brew < z.brew ? -1 : 1));
}

function jarsOf(t: Timeline, from: number): PlannedHarvest['jars'] {
  const p = t.problem;
  const source = p.jars.length + from;
  const jarMl = p.house.store.jarMl;
  const jars: PlannedHarvest['jars'] = [];
  const cut = (ml: number, forBrew: string | null, leaves: number) => {
    const count = Math.max(1, Math.ceil(ml / jarMl - 1e-9));
    for (let k = 0; k < count; k++) {
      jars.push({ ml: tidy(ml / count), for: forBrew, leavesOn: isoDay(leaves) });
    }
  };
  for (let i = 0; i < t.orderCount; i++) {
    const b = t.order[i] as number;
    if (t.source[b] !== source) continue;
    cut(t.drawMl[b] as number, p.brews[b]?.name ?? '?', t.useDay[b] as number);
  }
  for (let y = 0; y < t.keep.length; y++) {
    if (t.keep[y] === source && (t.keepMl[y] as number) > 0)
      cut(t.keepMl[y] as number, null, p.to + 1);
  }
  const until = t.reserveUntil[from] as number;
  if (until > 0) {
    jars.push({
      ml: tidy(reserveMl(t, from)),
      for: null,
      leavesOn: isoDay(until),
      untilPassed: p.brews[firstToTaste(t, from)]?.name ?? '?',
    });
  }
  return jars;
}

/** Deliveries with what each brings and for whom. */
export function publishOrders(t: Timeline): PlannedOrder[] {
  const p = t.problem;
  const out: PlannedOrder[] = [];
  for (let d = 0; d < t.deliveryCount; d++) {
    const arrives = t.deliveryDay[d] as number;
    const lines = new Map<number, { packs: number; for: string[] }>();
    for (let i = 0; i < t.orderCount; i++) {
      const b = t.order[i] as number;
      if (t.source[b] !== FRESH || t.delivery[b] !== d) continue;
      const y = t.yeast[b] as number;
      const line = lines.get(y) ?? { packs: 0, for: [] };
      line.packs += (t.packs[b] as number) - (t.packsFromHand[b] as number);
      line.for.push(p.brews[b]?.name ?? '?');
      lines.set(y, line);
    }
    out.push({
      orderOn: isoDay(orderDay(p, arrives)),
      arrivesOn: isoDay(arrives),
      deliveryMinor: Math.round(p.house.deliveryCost * p.minorPerMajor),
      lines: [...lines.entries()]
        .sort((a, z) => a[0] - z[0])
        .map(([y, line]) => ({
          yeast: p.yeasts[y]?.row.yeast ?? '?',
          packs: line.packs,
          costMinor: line.packs * (p.yeasts[y]?.priceMinor ?? 0),
          for: line.for,
        })),
    });
  }
  return out;
}

/** The jars that stand in the cold today, and what becomes of each. */
export function publishShelf(t: Timeline): ShelfJar[] {
  const p: Problem = t.problem;
  const out: ShelfJar[] = [];
  p.jars.forEach((jar, j) => {
    if (jar.gone) return;
    let usedFor: string | null = null;
    let leaves = shelfJarLeaves(p, j);
    let used = false;
    for (let i = 0; i < t.orderCount; i++) {
      const b = t.order[i] as number;
      if (t.source[b] !== j) continue;
      used = true;
      if (t.done[b]) leaves = p.today - 1;
      else {
        usedFor = p.brews[b]?.name ?? null;
        leaves = t.useDay[b] as number;
      }
    }
    if (used && leaves < p.today) return;
    if (t.keep.includes(j)) leaves = p.to + 1;
    const v = slurryViability(p, t, j, p.today);
    out.push({
      jar: jar.name,
      yeast: p.yeasts[jar.yeast]?.row.yeast ?? '?',
      state: jar.state,
      discardBy: isoDay(jar.harvestedDay + p.settings.maxStorageDays),
      usedFor,
      kept: t.keep.includes(j),
      leavesOn: isoDay(leaves),
      viabilityToday: v,
      cellsB: tidy(jar.ml * jar.density),
    });
  });
  return out;
}
