// Each brew of the plan as it is published: days, source, starter, viability, hazards.
import type { Hazard, PlannedBrew, PlannedSource, Range } from '../model/index.ts';
import { beerOf, drawnInto } from '../rules/rule.ts';
import {
  carriedBeerL,
  carriedChange,
  densityBPerMl,
  extractG,
  packViability,
  starterAlive,
  starterGrowDays,
} from '../science/index.ts';
import type { Judge } from '../search/score.ts';
import { slurryAlive, slurryAliveBeforeCounts } from '../timeline/alive.ts';
import { isoDay } from '../timeline/calendar.ts';
import { cropOffset } from '../timeline/dates.ts';
import { fromStarter, KEPT, starterEndsB } from '../timeline/kept.ts';
import { cropDensity } from '../timeline/pitch.ts';
import { FRESH, type Problem, type YeastData } from '../timeline/problem.ts';
import type { Timeline } from '../timeline/timeline.ts';

/** Six decimals: far finer than any spoon, and the same text on every machine. */
export const tidy = (x: number): number => Math.round(x * 1e6) / 1e6;

export function rangeOf(low: number, likely: number, high: number): Range {
  return { low: tidy(low), likely: tidy(likely), high: tidy(high) };
}

/** Viability of slurry from a source on a day, low / likely / high. */
export const slurryViability = (p: Problem, t: Timeline, source: number, day: number): Range =>
  tidyRange(slurryAlive(p, t, source, day));

function publishedSource(p: Problem, t: Timeline, b: number): PlannedSource {
  const source = t.source[b] as number;
  const use = t.useDay[b] as number;
  if (source === FRESH) {
    const delivery = t.delivery[b] as number;
    const arrives = delivery >= 0 ? (t.deliveryDay[delivery] as number) : -1;
    const order = arrives < 0 ? -1 : orderDay(p, arrives);
    return {
      kind: 'fresh',
      packs: t.packs[b] as number,
      packsFromHand: t.packsFromHand[b] as number,
      packsMadeOn: isoDay(use - (t.ageDays[b] as number)),
      packAgeDays: t.ageDays[b] as number,
      orderOn: order < 0 ? null : isoDay(order),
      arrivesOn: arrives < 0 ? null : isoDay(arrives),
    };
  }
  const drawMl = tidy(t.drawMl[b] as number);
  const ageDays = t.ageDays[b] as number;
  if (source < p.jars.length) {
    const jar = p.jars[source];
    return {
      kind: 'jar',
      jar: jar?.name ?? '?',
      harvestedOn: isoDay(jar?.harvestedDay ?? 0),
      drawMl,
      ageDays,
    };
  }
  const from = source - p.jars.length;
  return {
    kind: 'harvest',
    brew: p.brews[from]?.name ?? '?',
    harvestedOn: isoDay(t.harvestDay[from] as number),
    drawMl,
    ageDays,
    jars: t.drawJars[b] as number,
    ...(fromStarter(t, source) ? { ofStarter: true as const } : {}),
  };
}

/** The day on which a delivery that arrives on `arrives` is ordered: its lead ahead, on a day that is not closed, not before today. */
export function orderDay(p: Problem, arrives: number): number {
  const wanted = arrives - p.house.orderLeadDays;
  return Math.max(p.today, p.days.lastOpen[wanted - p.days.first] as number);
}

function hazards(judge: Judge, t: Timeline, b: number): { list: Hazard[]; riskMinor: number } {
  const list: Hazard[] = [];
  const note = (id: string, hazard: number, says: string) =>
    list.push({ rule: id, hazard: tidy(hazard), costMinor: 0, says });
  for (const { rule, weight } of judge.hazards) {
    rule.check(t, weight, (amount, subject, other) => {
      if (subject === b) note(rule.id, amount, rule.explain(t, { amount, subject, other }));
    });
  }
  for (const { rule, weight } of judge.relaxed) {
    rule.check(t, (amount, subject, other) => {
      if (subject === b) note(rule.id, weight, rule.explain(t, { amount, subject, other }));
    });
  }
  return { list, riskMinor: 0 };
}

/** Splits a sum by weights into whole units that add up to it: largest remainders first. */
export function splitWhole(total: number, weights: readonly number[]): number[] {
  const sum = weights.reduce((a, w) => a + w, 0);
  if (sum <= 0) return weights.map(() => 0);
  const exact = weights.map((w) => (total * w) / sum);
  const out = exact.map(Math.floor);
  let left = total - out.reduce((a, x) => a + x, 0);
  const order = exact
    .map((x, i) => ({ i, rest: x - Math.floor(x) }))
    .sort((a, z) => z.rest - a.rest || a.i - z.i);
  for (const { i } of order) {
    if (left <= 0) break;
    out[i] = (out[i] as number) + 1;
    left--;
  }
  return out;
}

/**
 * The day of the crash: before the harvest where yeast is taken from a crashed beer, else before it is emptied;
 * null where the tank cannot, or where that would be before the beer has fermented out.
 */
function crashDay(t: Timeline, b: number): string | null {
  const p = t.problem;
  const tank = p.tanks[t.tank[b] as number];
  const brew = p.brews[b];
  if (!tank?.canCrash || !brew || p.settings.crashDays === 0) return null;
  const taken = (t.draws[p.jars.length + b] as number) > 0 || brew.harvested !== null;
  const before = taken && t.crashed[b] ? (t.harvestDay[b] as number) : (t.emptied[b] as number);
  const crash = before - p.settings.crashDays;
  const fermented =
    (t.day[b] as number) + Math.min(cropOffset(p, b, t.yeast[b] as number), brew.tankDays);
  return crash >= fermented ? isoDay(crash) : null;
}

/** The brew as it is published, but for why, alternative, check and fallback, which others work out. */
export function publishBrew(
  judge: Judge,
  t: Timeline,
  b: number,
  kettle: readonly { day: number; turns: number }[],
  riskMinor: number,
): Omit<PlannedBrew, 'why' | 'alternative' | 'checkOn' | 'fallback' | 'pins'> {
  const p = t.problem;
  const brew = p.brews[b];
  const tank = p.tanks[t.tank[b] as number];
  const yeast = p.yeasts[t.yeast[b] as number];
  const row = p.house.brews[b];
  if (!brew || !tank || !yeast || !row) throw new RangeError(`brew ${b} is not in the problem`);
  const day = t.day[b] as number;
  const source = t.source[b] as number;
  const litres = t.starterLitres[b] as number;
  const { list } = hazards(judge, t, b);
  const shares = splitWhole(
    riskMinor,
    list.map((h) => h.hazard),
  );
  const beer = beerOf(t, source);
  const carriedL = carriedBeerL(drawnInto(t, b), p.settings.slurryBeerShare);
  const chill = t.starterChill[b] as number;
  const counts = source === FRESH ? 0 : yeast.learnt.counts;
  const emptied = t.emptied[b] as number;
  const viability =
    source === FRESH
      ? freshViability(p, t, b)
      : slurryViability(p, t, source, t.useDay[b] as number);
  return {
    brew: brew.name,
    style: row.style,
    day: isoDay(day),
    tank: tank.name,
    yeast: yeast.row.yeast,
    done: t.done[b] === 1,
    kettle: kettle.map((k) => ({ day: isoDay(k.day), turns: k.turns })),
    dryHopOn: brew.dryHopDay === null ? null : isoDay(day + brew.dryHopDay),
    crashOn: crashDay(t, b),
    emptiedOn: isoDay(emptied),
    tankFreeOn: isoDay(t.free[b] as number),
    readyOn: isoDay(t.ready[b] as number),
    daysLate: t.late[b] as number,
    needB: tidy(t.needB[b] as number),
    pitchedB: tidy(pitchedB(t, b)),
    source: publishedSource(p, t, b),
    starter:
      litres > 0 && !t.done[b]
        ? {
            litres: tidy(litres),
            extractG: tidy(extractG(litres, p.settings)),
            startOn: isoDay(t.starterStart[b] as number),
            growDays: starterGrowDays(litres, p.house.starterGear.maxLitres),
            chillOn: chill < 0 ? null : isoDay(chill),
            initialB: tidy(t.seedB[b] as number),
            finalB: tidy(finalB(t, b)),
          }
        : null,
    generation: t.generation[b] as number,
    viability,
    pitchedViability: litres > 0 ? starterShare(t, b, viability) : null,
    counts,
    beforeCounts:
      counts === 0 ? null : tidyRange(slurryAliveBeforeCounts(p, t, source, t.useDay[b] as number)),
    densityBPerMl: source === FRESH ? null : tidyRange(densityOf(p, t, source, yeast)),
    carried:
      beer && carriedL > 0
        ? {
            volumeL: tidy(carriedL),
            ebc: tidy(carriedChange(brew.ebc, brew.volumeL, beer.ebc, carriedL)),
            ibu: tidy(carriedChange(brew.ibu, brew.volumeL, beer.ibu, carriedL)),
          }
        : null,
    hazards: list.map((h, i) => ({ ...h, costMinor: shares[i] ?? 0 })),
    riskMinor,
  };
}

/** Billion cells per mL of slurry from a source; a count in a chamber is taken to be right within a tenth. */
function densityOf(p: Problem, t: Timeline, source: number, yeast: YeastData): Range {
  const isJar = source < p.jars.length;
  const predicted = densityBPerMl(
    yeast.row.flocculation,
    isJar ? 2 : p.house.store.settleDays,
    yeast.learnt.settings,
  );
  const likely = isJar
    ? (p.jars[source]?.density ?? predicted.likely)
    : cropDensity(p, t, source - p.jars.length);
  if (likely === predicted.likely) return predicted;
  return { low: likely * 0.9, likely, high: likely * 1.1 };
}

export const tidyRange = (r: Range): Range => rangeOf(r.low, r.likely, r.high);

/** Where nobody takes the part that could be kept of a starter, all of it is pitched. */
const pitchedB = (t: Timeline, b: number): number =>
  t.draws[t.problem.jars.length + b] ? (t.pitchedB[b] as number) : finalB(t, b);

/** What the starter of a brew ends with: all of it is pitched, but for one of which a part is kept. */
const finalB = (t: Timeline, b: number): number =>
  t.crop[b] === KEPT && !t.done[b] ? starterEndsB(t.problem, t, b) : (t.pitchedB[b] as number);

/** What the starter makes of that share; the mL drawn were chosen by the likely one. */
function starterShare(t: Timeline, b: number, drawn: Range): Range {
  const share = (alive: number) =>
    starterAlive(
      ((t.seedB[b] as number) * alive) / Math.max(drawn.likely, 1e-9),
      alive,
      finalB(t, b),
    );
  return rangeOf(share(drawn.low), share(drawn.likely), share(drawn.high));
}

function freshViability(p: Problem, t: Timeline, b: number): Range {
  const yeast = p.yeasts[t.yeast[b] as number];
  const likely = t.viability[b] as number;
  if (!yeast) return rangeOf(likely, likely, likely);
  const r = packViability(yeast.row.form, t.ageDays[b] as number, p.settings);
  // packs of two ages: the mean plans, the oldest bounds it below
  return rangeOf(Math.min(r.low, likely), likely, Math.max(r.high, likely));
}
