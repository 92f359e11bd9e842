// From a plan to what the season's picture is woven of: bars, threads, packs and ends, still in days and not in pixels.

import type { House, Plan, PlannedBrew } from '../../../planner/index.ts';
import { dayNumber } from '../../parts/days.ts';

export type Bar = {
  brew: string;
  tank: string;
  yeast: string;
  day: number;
  emptied: number;
  dryHop: number | null;
  crash: number | null;
  ready: number;
  readyBy: number | null;
  notBefore: number | null;
  /** A day that the brewer fixed, in the season or by a pin. */
  fixed: boolean;
  /** What the plan breaks with it, in the planner's words; empty in a sound plan. */
  broken: string[];
  planned: PlannedBrew;
};

/** Slurry lying in the cold: out of one beer (or from the shelf), for one brew or kept. */
export type Strand = {
  id: string;
  yeast: string;
  from: { kind: 'brew' | 'jar'; name: string };
  to: string | null;
  start: number;
  end: number;
  /** Likely share alive when it comes into the cold, and when it leaves. */
  startShare: number;
  endShare: number;
  ml: number;
  jars: number;
  /** Kept from the starter of that beer on its brew day: it comes out of the bar's beginning. */
  ofStarter: boolean;
};

/** Yeast bought for one brew: it enters from outside. */
export type Purchase = { brew: string; yeast: string; packs: number; starter: boolean };

/** Where a line of yeast stops. `note` numbers the sentence below the picture. */
export type ChainEnd = {
  brew: string;
  yeast: string;
  note: number;
  root: string;
  brews: string[];
  says: string;
};

export type Weave = {
  firstDay: number;
  lastDay: number;
  today: number;
  tanks: string[];
  bars: Bar[];
  strands: Strand[];
  purchases: Purchase[];
  ends: ChainEnd[];
};

/** Days left empty at either side of the picture. */
const MARGIN_DAYS = 3;

/** Everything that the picture shows, from the plan and the house it was made for. */
export function weave(plan: Plan, house: House): Weave {
  const bars = plan.brews.map((planned) => barOf(planned, house, plan));
  const strands = [...shelfStrands(plan, house), ...harvestStrands(plan)];
  const days = bars.flatMap((bar) => [bar.day, bar.emptied]);
  const today = dayNumber(plan.today);
  const firstDay = Math.min(dayNumber(house.from), today, ...days) - MARGIN_DAYS;
  const lastStrand = Math.max(...strands.filter((s) => s.to !== null).map((s) => s.end), today);
  const lastDay = Math.max(dayNumber(house.to), lastStrand, ...days) + MARGIN_DAYS;
  const known = new Set(house.tanks.map((tank) => tank.tank));
  const others = bars.map((bar) => bar.tank).filter((tank) => !known.has(tank));
  return {
    firstDay,
    lastDay,
    today,
    tanks: [...known, ...new Set(others)],
    bars,
    strands: strands.map((s) => clip(s, firstDay, lastDay)).filter((s) => s.end >= s.start),
    purchases: plan.brews.flatMap((brew) =>
      brew.source.kind === 'fresh'
        ? [
            {
              brew: brew.brew,
              yeast: brew.yeast,
              packs: brew.source.packs,
              starter: brew.starter !== null,
            },
          ]
        : [],
    ),
    ends: chainEnds(plan),
  };
}

function barOf(planned: PlannedBrew, house: House, plan: Plan): Bar {
  const brew = house.brews.find((one) => one.brew === planned.brew);
  const dayOrNull = (day: string | null | undefined) => (day ? dayNumber(day) : null);
  return {
    brew: planned.brew,
    tank: planned.tank,
    yeast: planned.yeast,
    day: dayNumber(planned.day),
    emptied: dayNumber(planned.emptiedOn),
    dryHop: dayOrNull(planned.dryHopOn),
    crash: dayOrNull(planned.crashOn),
    ready: dayNumber(planned.readyOn),
    readyBy: dayOrNull(brew?.readyBy),
    notBefore: dayOrNull(brew?.notBefore),
    fixed: (brew?.brewOn ?? null) !== null || planned.pins !== null,
    broken: plan.broken
      .filter((finding) => finding.subject === planned.brew)
      .map((finding) => finding.says),
    planned,
  };
}

function harvestStrands(plan: Plan): Strand[] {
  const drawn = new Map(plan.brews.map((brew) => [brew.brew, brew]));
  const daily = dailyLosses(plan);
  return plan.harvests.flatMap((harvest) => {
    const start = dayNumber(harvest.day);
    const startShare = harvest.cropViability.likely;
    // Jars of one harvest that are kept for the same brew are one thread; the reserve is one of its own.
    const bundles = new Map<string, Strand>();
    for (const jar of harvest.jars) {
      const id = `${harvest.brew}→${jar.for ?? (jar.untilPassed === undefined ? '' : ' ')}`;
      const before = bundles.get(id);
      const end = dayNumber(jar.leavesOn);
      const pitched = jar.for === null ? undefined : drawn.get(jar.for);
      const loss = daily.get(harvest.yeast) ?? daily.get('') ?? 0;
      bundles.set(id, {
        id,
        yeast: harvest.yeast,
        from: { kind: 'brew', name: harvest.brew },
        to: jar.for,
        start,
        end: Math.max(end, before?.end ?? end),
        startShare,
        endShare: pitched?.viability.likely ?? startShare * Math.exp(-loss * (end - start)),
        ml: jar.ml + (before?.ml ?? 0),
        jars: 1 + (before?.jars ?? 0),
        ofStarter: harvest.ofStarter === true,
      });
    }
    return [...bundles.values()];
  });
}

/** Mean first-order loss a day that this plan predicts, by strain and (under '') over all strains. */
function dailyLosses(plan: Plan): Map<string, number> {
  const sums = new Map<string, { loss: number; days: number }>();
  for (const brew of plan.brews) {
    const source = brew.source;
    if (source.kind !== 'harvest' || source.ageDays === 0) continue;
    const crop = plan.harvests.find((harvest) => harvest.brew === source.brew)?.cropViability;
    if (!crop || brew.viability.likely <= 0) continue;
    for (const key of [brew.yeast, '']) {
      const sum = sums.get(key) ?? { loss: 0, days: 0 };
      sum.loss += Math.log(crop.likely / brew.viability.likely);
      sum.days += source.ageDays;
      sums.set(key, sum);
    }
  }
  return new Map([...sums].map(([key, sum]) => [key, Math.max(0, sum.loss / sum.days)]));
}

function shelfStrands(plan: Plan, house: House): Strand[] {
  const today = dayNumber(plan.today);
  const daily = dailyLosses(plan);
  return plan.shelf.flatMap((shelf) => {
    const jar = house.jars.find((one) => one.jar === shelf.jar);
    if (shelf.state === 'suspect' || !jar) return [];
    const drawn = plan.brews.filter((b) => b.source.kind === 'jar' && b.source.jar === shelf.jar);
    const feeds = drawn.length > 0 ? drawn.map((b) => b.brew) : [shelf.usedFor];
    return feeds.map((to) => {
      const pitched = plan.brews.find((b) => b.brew === to);
      const source = pitched?.source;
      const end = dayNumber(pitched?.day ?? shelf.leavesOn);
      const loss = daily.get(shelf.yeast) ?? daily.get('') ?? 0;
      const left = shelf.viabilityToday.likely * Math.exp(-loss * Math.max(0, end - today));
      return {
        id: `jar ${shelf.jar}→${to ?? ''}`,
        yeast: shelf.yeast,
        from: { kind: 'jar' as const, name: shelf.jar },
        to,
        start: Math.min(dayNumber(jar.harvestedOn), end),
        end,
        startShare: Math.max(shelf.viabilityToday.likely, pitched?.viability.likely ?? 0),
        endShare: pitched?.viability.likely ?? left,
        ml: source?.kind === 'jar' ? source.drawMl : jar.settledMl,
        jars: 1,
        ofStarter: false,
      };
    });
  });
}

function clip(strand: Strand, firstDay: number, lastDay: number): Strand {
  return {
    ...strand,
    start: Math.max(strand.start, firstDay),
    end: Math.min(strand.end, lastDay),
  };
}

function chainEnds(plan: Plan): ChainEnd[] {
  const dayOf = new Map(plan.brews.map((brew) => [brew.brew, brew.day]));
  const last = (chain: Plan['chains'][number]) => chain.brews.at(-1) ?? '';
  return plan.chains
    .filter((chain) => chain.brews.length > 0)
    .toSorted((a, b) => (dayOf.get(last(a)) ?? '').localeCompare(dayOf.get(last(b)) ?? ''))
    .map((chain, at) => ({
      brew: last(chain),
      yeast: chain.yeast,
      note: at + 1,
      root: chain.root,
      brews: chain.brews,
      says: chain.endsBecause,
    }));
}
