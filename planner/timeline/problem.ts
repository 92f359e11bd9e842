// A house compiled for the search: names become indices, days whole numbers, all that never changes worked out once.
import type { Facts, House, Pin, Plan, Range, Settings, Yeast } from '../model/index.ts';
import { resolveSettings } from '../model/index.ts';
import {
  abvPercent,
  beerLossPerDay,
  densityBPerMl,
  generationAgeing,
  needB,
  packExpiryDays,
  packLossPerDay,
  platoFromSg,
  recoverableShare,
  storageLossPerDay,
  strongAgeing,
} from '../science/index.ts';
import { dayNumber, type HouseDays, houseDays } from './calendar.ts';
import { countedShare } from './counted.ts';
import { cupboard, type PackBatch } from './cupboard.ts';
import { emptiedDays } from './emptied.ts';
import { type LearntStrain, learntStrains } from './learnt.ts';
import { type SlurryCount, toldSlurry } from './told.ts';

/** No day, no limit. */
export const FAR = 1_000_000;
/** Source of a pitch out of fresh packs; jars count from 0, the harvest of brew b is `jars.length + b`. */
export const FRESH = -1;
/** Sizes in which a starter may be made: quarters of the largest vessel. */
export const STARTER_SIZES = 4;

export type YeastData = {
  row: Yeast;
  /** What the house's counts say about it. */
  learnt: LearntStrain;
  lossPerDay: number;
  /** Loss per day in the cold store of yeast that has been in no beer, before its generation. */
  storeLossPerDay: number;
  expiryDays: number;
  priceMinor: number;
  /** Packs in the cupboard or paid for and on their way, the oldest first. */
  hand: PackBatch[];
  handCount: number;
  density: number;
  densityFresh48: number;
  recoverCrashed: number;
  recoverUncrashed: number;
  maxGeneration: number;
  /** How many times the tank's turnaround a beer with it needs. */
  turnaroundTimes: 1 | 2;
  isLager: boolean;
  dry: boolean;
};

export type BrewData = {
  name: string;
  /** Indices of accepted yeasts, best liked first. */
  yeasts: number[];
  volumeL: number;
  ogSg: number;
  ogP: number;
  ebc: number;
  ibu: number;
  abv: number;
  fermentC: number;
  tankDays: number;
  harvestDay: number | null;
  conditionDays: number;
  dryHopDay: number | null;
  souring: 'kettle' | 'mixed' | null;
  additions: readonly string[];
  /** First and last brew day that its own window, the season and the lateness limit allow. */
  earliest: number;
  latest: number;
  readyBy: number;
  fixedDay: number;
  pinDay: number;
  pinTank: number;
  /** A source as in the timeline, or -2 for none. */
  pinSource: number;
  /** Sources that it is not to be pitched from. */
  forbidden: readonly number[];
  priority: number;
  valueMinor: number;
  fades: boolean;
  turns: number;
  needHarvestedB: number;
  needFreshB: number;
  /** Losses per day of its yeast, by yeast and before its generation: on the beer, in the crash, in the cold. */
  beerLossPerDay: Float64Array;
  crashLossPerDay: Float64Array;
  storeLossPerDay: Float64Array;
  /** What happened to it, if it has been brewed. */
  done: DoneBrew | null;
  /** The starter that has been begun for it, if one has. */
  begun: { day: number; litres: number; packs: number; packsFromHand: number } | null;
  /** What was harvested from it, if that has happened. */
  harvested: { day: number; ml: number; count: SlurryCount | null } | null;
  /** A part of its starter is in a jar, or was to be kept today: nothing is harvested from its beer. */
  keptStarter: boolean;
  /** Of the beer, and of what has been or will be harvested from it. */
  state: 'sound' | 'watch' | 'suspect';
  /** Tasted and passed. */
  passed: boolean;
  /** Brew days that it may take, ascending; one if it is fixed or pinned. */
  days: Int32Array;
  /** Tanks whose fill and temperature suit it. */
  tanks: number[];
};

export type DoneBrew = {
  day: number;
  tank: number;
  yeast: number;
  source: number;
  drawMl: number;
  packs: number;
  starterLitres: number;
  generation: number;
  pitchedB: number;
  emptiedDay: number | null;
};

export type JarData = {
  name: string;
  yeast: number;
  generation: number;
  ml: number;
  harvestedDay: number;
  ogSg: number;
  ogP: number;
  ebc: number;
  ibu: number;
  abv: number;
  souring: 'kettle' | 'mixed' | null;
  additions: readonly string[];
  dryHopped: boolean;
  state: 'sound' | 'watch' | 'suspect';
  startViability: number;
  /** What was counted, with the error of the count; null where nothing was and the strain's crop is assumed. */
  measured: Range | null;
  startDay: number;
  storeLossPerDay: number;
  density: number;
  gone: boolean;
};

export type TankData = {
  name: string;
  minFillL: number;
  maxFillL: number;
  minC: number;
  maxC: number;
  turnaroundDays: number;
  bottomOutlet: boolean;
  canCrash: boolean;
  out: { from: number; to: number }[];
};

export type Problem = {
  house: House;
  settings: Settings;
  today: number;
  from: number;
  to: number;
  days: HouseDays;
  minorPerMajor: number;
  brews: BrewData[];
  tanks: TankData[];
  yeasts: YeastData[];
  jars: JarData[];
  /** Ids of the rules that cost instead of forbidding in this house. */
  relaxed: ReadonlySet<string>;
  /** The plan in force by brew, for the rules that price moving. */
  inForce: ({ day: number; tank: number; source: number } | null)[];
  /** Viable cells that one jar kept for the next season is to hold, by yeast: the middle need of its brews. */
  keepNeedB: number[];
};

/** How many minor units make one of the currency: 100 for most, 1 for yen and won, 1000 for dinars. */
export function minorUnits(currency: string): number {
  const digits = new Intl.NumberFormat('en', { style: 'currency', currency }).resolvedOptions()
    .maximumFractionDigits;
  return 10 ** (digits ?? 2);
}

/** Styles that lose by standing, told by words in their name. Common practice, no source. */
const FADING = /\b(ipa|pale ale|weissbier|weizen|hefe|wit|witbier|blonde|session|hazy)\b/i;
const NOT_FADING = /\b(weizenbock|dark|imperial|smoked)\b/i;

export function compile(
  house: House,
  today: string,
  facts: Facts,
  pins: readonly Pin[],
  inForce: Plan | null,
): Problem {
  const settings = resolveSettings(house.kind, house.rules);
  const minor = minorUnits(house.currency);
  const todayDay = dayNumber(today);
  const from = dayNumber(house.from);
  const to = dayNumber(house.to);
  const longest = house.brews.reduce((most, b) => Math.max(most, b.tankDays + b.conditionDays), 0);
  const past = [
    ...facts.brewed.map((f) => dayNumber(f.day)),
    ...house.jars.map((j) => dayNumber(j.harvestedOn)),
  ];
  const firstDay = Math.min(from, todayDay, ...past) - 60;
  const lastDay = Math.max(to, todayDay) + longest + settings.maxStorageDays + 120;
  const days = houseDays(house, firstDay, lastDay);

  const tankIndex = new Map(house.tanks.map((t, i) => [t.tank, i]));
  const yeastIndex = new Map(house.yeasts.map((y, i) => [y.yeast, i]));
  const brewIndex = new Map(house.brews.map((b, i) => [b.brew, i]));
  const jarIndex = new Map(house.jars.map((j, i) => [j.jar, i]));
  const nJars = house.jars.length;

  const tanks: TankData[] = house.tanks.map((t) => ({
    name: t.tank,
    minFillL: t.minFillL,
    maxFillL: t.maxFillL,
    minC: t.minC,
    maxC: t.maxC,
    turnaroundDays: t.turnaroundDays,
    bottomOutlet: t.bottomOutlet,
    canCrash: t.minC <= settings.crashC,
    out: t.outOfUse.map((o) => ({ from: dayNumber(o.from), to: dayNumber(o.to) })),
  }));

  const learnt = learntStrains(house, settings);
  const lossAt = (perDay: (own: Settings) => number) =>
    learnt.map((strain) => perDay(strain.settings));
  const storeLoss = lossAt((own) => storageLossPerDay(house.store.tempC, own));
  const hand = cupboard(house, facts, todayDay);
  const emptied = emptiedDays(house, facts);
  const yeasts: YeastData[] = house.yeasts.map((y, i) => ({
    row: y,
    learnt: learnt[i] as LearntStrain,
    lossPerDay: packLossPerDay(y.form, settings),
    storeLossPerDay: storeLoss[i] as number,
    expiryDays: packExpiryDays(y.form, settings),
    priceMinor: Math.round(y.packPrice * minor),
    hand: hand[i] ?? [],
    handCount: (hand[i] ?? []).reduce((sum, batch) => sum + batch.count, 0),
    density: densityOf(y, house.store.settleDays, learnt[i]?.settings ?? settings),
    densityFresh48: densityOf(y, 2, learnt[i]?.settings ?? settings),
    recoverCrashed: recoverableShare(y.flocculation, true, settings),
    recoverUncrashed: recoverableShare(y.flocculation, false, settings),
    maxGeneration: y.maxGeneration ?? FAR,
    turnaroundTimes: y.nature === 'clean' ? 1 : 2,
    isLager: y.kind === 'lager',
    dry: y.form === 'dry',
  }));

  const crashLoss = lossAt((own) => beerLossPerDay(settings.crashC, own));
  const gone = new Set(facts.goneJars);
  const told = toldSlurry(facts, pins, (source) => {
    if (source.kind === 'fresh') return FRESH;
    const at = source.kind === 'jar' ? jarIndex.get(source.jar) : brewIndex.get(source.brew);
    return at === undefined ? null : source.kind === 'jar' ? at : nJars + at;
  });
  const jars: JarData[] = house.jars.map((j) => {
    const ogSg = j.sourceOg ?? 1.05;
    // an unknown final gravity is taken at three quarters apparent attenuation
    const abv = abvPercent(ogSg, 1 + (ogSg - 1) * 0.25);
    const yeast = yeastIndex.get(j.yeast) ?? -1;
    const { yeast: strain, harvestedOn, measuredViability: share } = j;
    const countedOn = j.measuredOn ?? harvestedOn;
    const measured =
      share === null
        ? null
        : countedShare(house, { yeast: strain, harvestedOn, countedOn, share }, settings);
    return {
      name: j.jar,
      yeast,
      generation: j.generation,
      ml: j.settledMl,
      harvestedDay: dayNumber(j.harvestedOn),
      ogSg,
      ogP: platoFromSg(ogSg),
      ebc: j.sourceEbc ?? 0,
      ibu: j.sourceIbu ?? 0,
      abv,
      souring: j.sourceSouring,
      additions: j.sourceAdditions,
      dryHopped: j.sourceDryHopped,
      state: j.state,
      startViability: (measured ?? learnt[yeast]?.crop)?.likely ?? settings.cropViability,
      measured,
      startDay: dayNumber(measured ? countedOn : harvestedOn),
      storeLossPerDay:
        (storeLoss[yeast] ?? 0) *
        strongAgeing(abv, settings) *
        generationAgeing(j.generation, settings),
      density: told.jar(j.jar)?.densityBPerMl ?? yeasts[yeast]?.densityFresh48 ?? 1,
      gone: gone.has(j.jar),
    };
  });

  const sourceOf = (s: { kind: string; jar?: string; brew?: string }): number => {
    if (s.kind === 'jar') return jarIndex.get(s.jar ?? '') ?? FRESH;
    if (s.kind === 'harvest') {
      const b = brewIndex.get(s.brew ?? '');
      return b === undefined ? FRESH : nJars + b;
    }
    return FRESH;
  };

  const brewed = new Map(facts.brewed.map((f) => [f.brew, f]));
  const harvested = new Map(facts.harvested.map((f) => [f.brew, f]));
  const slipped = new Map<string, number>();
  for (const f of facts.notBefore) {
    slipped.set(f.brew, Math.max(dayNumber(f.day), slipped.get(f.brew) ?? 0));
  }
  const begunFor = new Map(facts.begun.map((f) => [f.brew, f]));
  const pinned = new Map(pins.map((p) => [p.brew, p]));

  const brews: BrewData[] = house.brews.map((b) => {
    const ogP = platoFromSg(b.og);
    const abv = abvPercent(b.og, Math.min(b.fg, b.og));
    const ageing = strongAgeing(abv, settings);
    const fact = brewed.get(b.brew);
    const crop = harvested.get(b.brew);
    const begun = fact ? undefined : begunFor.get(b.brew);
    const pin = pinned.get(b.brew);
    const wort = {
      fermentC: b.fermentC,
      ogP,
      souring: b.souring,
      volumeL: b.volumeL,
      ownRate: b.needMPerMlP,
    };
    const readyBy = b.readyBy === null ? FAR : dayNumber(b.readyBy);
    const earliest = Math.max(
      from,
      todayDay,
      b.notBefore === null ? 0 : dayNumber(b.notBefore),
      slipped.get(b.brew) ?? 0,
    );
    let latest = to;
    if (readyBy !== FAR) {
      while (latest >= earliest) {
        const at = latest + b.tankDays - days.first;
        const emptied = days.nextWork[at] ?? FAR;
        if (emptied + b.conditionDays <= readyBy + settings.maxLateDays) break;
        latest--;
      }
    }
    const fixedDay = b.brewOn === null ? -1 : dayNumber(b.brewOn);
    const pinDay = pin?.day ? dayNumber(pin.day) : -1;
    const held =
      pinDay >= 0 ? pinDay : fixedDay >= 0 ? Math.max(fixedDay, slipped.get(b.brew) ?? 0) : -1;
    const open: number[] = [];
    if (held >= 0) open.push(held);
    else for (let d = earliest; d <= latest; d++) if (days.brew[d - days.first]) open.push(d);
    const pinTank = pin?.tank ? (tankIndex.get(pin.tank) ?? -1) : -1;
    const suits = tanks
      .map((t, i) => ({ t, i }))
      .filter(
        ({ t }) =>
          b.volumeL >= t.minFillL &&
          b.volumeL <= t.maxFillL &&
          b.fermentC >= t.minC &&
          b.fermentC <= t.maxC,
      )
      .map(({ i }) => i);
    return {
      name: b.brew,
      yeasts: (begun ? [begun.yeast] : b.yeasts)
        .map((y) => yeastIndex.get(y) ?? -1)
        .filter((y) => y >= 0),
      volumeL: b.volumeL,
      ogSg: b.og,
      ogP,
      ebc: b.ebc,
      ibu: b.ibu,
      abv,
      fermentC: b.fermentC,
      tankDays: b.tankDays,
      harvestDay: b.harvestDay,
      conditionDays: b.conditionDays,
      dryHopDay: b.dryHopDay,
      souring: b.souring,
      additions: b.additions,
      earliest,
      latest,
      readyBy,
      fixedDay,
      pinDay,
      pinTank,
      // yeast that is growing already is what goes in
      pinSource: begun ? sourceOf(begun.source) : pin?.source ? sourceOf(pin.source) : -2,
      begun: begun
        ? {
            day: dayNumber(begun.day),
            litres: begun.litres,
            packs: begun.source.kind === 'fresh' ? begun.source.packs : 0,
            packsFromHand: begun.source.kind === 'fresh' ? begun.source.packsFromHand : 0,
          }
        : null,
      priority: b.priority,
      valueMinor: Math.round(b.value * minor),
      fades: b.fades ?? (FADING.test(b.style) && !NOT_FADING.test(b.style)),
      turns: house.brewLengthL === null ? 1 : Math.ceil(b.volumeL / house.brewLengthL - 1e-9),
      needHarvestedB: needB({ ...wort, harvested: true }, settings),
      needFreshB: needB({ ...wort, harvested: false }, settings),
      beerLossPerDay: times(
        lossAt((own) => beerLossPerDay(b.fermentC, own)),
        ageing,
      ),
      crashLossPerDay: times(crashLoss, ageing),
      storeLossPerDay: times(storeLoss, ageing),
      done: fact
        ? {
            day: dayNumber(fact.day),
            tank: tankIndex.get(fact.tank) ?? 0,
            yeast: yeastIndex.get(fact.yeast) ?? 0,
            source: sourceOf(fact.source),
            drawMl: fact.source.kind === 'fresh' ? 0 : fact.source.drawMl,
            packs: fact.source.kind === 'fresh' ? fact.source.packs : 0,
            starterLitres: fact.starterLitres,
            generation: fact.generation,
            pitchedB: fact.pitchedB,
            emptiedDay: emptied.get(fact.brew) ?? null,
          }
        : null,
      harvested: crop
        ? { day: dayNumber(crop.day), ml: crop.settledMl, count: told.harvest(b.brew) }
        : null,
      keptStarter:
        fact !== undefined &&
        (crop
          ? crop.day <= fact.day
          : fact.day >= today &&
            (inForce?.harvests.some((h) => h.ofStarter && h.brew === b.brew) ?? false)),
      state: worse(crop?.state ?? 'sound', told.beerState(b.brew)),
      passed: told.passed(b.brew),
      forbidden: told.forbidden(b.brew),
      days: Int32Array.from(open),
      tanks:
        pinTank >= 0 ? [pinTank] : suits.length === 0 && held >= 0 ? tanks.map((_, i) => i) : suits,
    };
  });

  const old = new Map(inForce?.brews.map((b) => [b.brew, b]) ?? []);
  return {
    house,
    settings,
    today: todayDay,
    from,
    to,
    days,
    minorPerMajor: minor,
    brews,
    tanks,
    yeasts,
    jars,
    relaxed: new Set(house.relaxed),
    inForce: brews.map((b) => {
      const was = old.get(b.name);
      if (!was) return null;
      return {
        day: dayNumber(was.day),
        tank: tankIndex.get(was.tank) ?? -1,
        source: sourceOf(was.source),
      };
    }),
    keepNeedB: yeasts.map((_, y) => middleNeed(brews, y)),
  };
}

/** The worse of two states. */
function worse(a: BrewData['state'], b: BrewData['state']): BrewData['state'] {
  const order: readonly BrewData['state'][] = ['suspect', 'watch', 'sound'];
  return order.find((state) => state === a || state === b) ?? 'sound';
}

const densityOf = (y: Yeast, settleDays: number, s: Settings): number =>
  densityBPerMl(y.flocculation, settleDays, s).likely;

const times = (values: readonly number[], factor: number): Float64Array =>
  Float64Array.from(values, (value) => value * factor);

function middleNeed(brews: readonly BrewData[], yeast: number): number {
  const needs = brews
    .filter((b) => b.yeasts.includes(yeast))
    .map((b) => b.needHarvestedB)
    .sort((a, b) => a - b);
  return needs[Math.floor(needs.length / 2)] ?? 0;
}
