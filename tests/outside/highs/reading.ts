// The season as the exact model reads it: days, strains, jars, prices. Written from the statement of the
// problem; of the planner it takes only the published settings, weights and yeast science.
import {
  type House,
  type Jar,
  RULES,
  resolveSettings,
  type Settings,
} from '../../../planner/index.ts';
import {
  abvPercent,
  beerLossPerDay,
  cropViability,
  densityBPerMl,
  needB,
  platoFromSg,
  storageLossPerDay,
  strongAgeing,
} from '../../../planner/science/index.ts';

export const dayOf = (iso: string): number =>
  Math.round(Date.parse(`${iso}T00:00:00Z`) / 86_400_000);
export const isoOf = (day: number): string => new Date(day * 86_400_000).toISOString().slice(0, 10);
/** Monday first; day 0, 1 January 1970, was a Thursday. */
const nameOf = (day: number) =>
  ['thu', 'fri', 'sat', 'sun', 'mon', 'tue', 'wed'][day % 7] as string;

/** A beer as far as its slurry carries it into the next. */
export type Beer = {
  og: number;
  ogP: number;
  ebc: number;
  ibu: number;
  /** Only of a brew of this season: its fermentation temperature. */
  fermentC: number | null;
  souring: 'kettle' | 'mixed' | null;
  additions: readonly string[];
  lossPerColdDay: number;
};

export type BrewRead = House['brews'][number] & {
  beer: Beer;
  /** Days on which it may be brewed, all its own limits met. */
  days: number[];
  needFreshB: number;
  needSlurryB: number;
  beerLossPerDay: number;
  crashLossPerDay: number;
  turns: number;
};

export type JarRead = Jar & { beer: Beer; harvested: number; density: number };

export type Season = {
  house: House;
  s: Settings;
  today: number;
  from: number;
  to: number;
  isBrewDay(day: number): boolean;
  /** First work day on or after. */
  workDayFrom(day: number): number;
  isHandDay(day: number): boolean;
  /** Last day on or before on which a starter may be handled. */
  handDayUntil(day: number): number;
  brewDayAfter(day: number): number;
  money(major: number): number;
  weight(rule: string): number;
  relaxed: ReadonlySet<string>;
  brews: BrewRead[];
  jars: JarRead[];
  cropShareAlive: number;
  /** Viable cells that a jar kept for the next season should hold, by strain. */
  keepB(yeast: string): number;
};

/** Reads a house on the day it is planned. */
export function readSeason(house: House, todayIso: string): Season {
  const s = resolveSettings(house.kind, house.rules);
  const today = dayOf(todayIso);
  const from = dayOf(house.from);
  const to = dayOf(house.to);
  const closed = new Set(house.closed.map(dayOf));
  const work = house.workDays ?? house.brewDays;
  const hand = house.starterDays ?? (house.kind === 'home' ? null : work);
  const on = (week: readonly string[] | null) => (day: number) =>
    !closed.has(day) && (week === null || week.includes(nameOf(day)));
  const isBrewDay = on(house.brewDays);
  const isWorkDay = on(work);
  const isHandDay = (day: number) => on(hand)(day) || isWorkDay(day);
  const seek = (is: (day: number) => boolean, step: 1 | -1) => (day: number) => {
    let d = day;
    while (!is(d)) d += step;
    return d;
  };
  const workDayFrom = seek(isWorkDay, 1);
  const cold = storageLossPerDay(house.store.tempC, s);

  const brews: BrewRead[] = house.brews.map((b) => {
    const ogP = platoFromSg(b.og);
    const ageing = strongAgeing(abvPercent(b.og, b.fg), s);
    const wort = { fermentC: b.fermentC, ogP, souring: b.souring, volumeL: b.volumeL };
    const days: number[] = [];
    const earliest = Math.max(from, today, b.notBefore === null ? from : dayOf(b.notBefore));
    for (let d = earliest; d <= to; d++) {
      if (!isBrewDay(d) || (b.brewOn !== null && dayOf(b.brewOn) !== d)) continue;
      const ready = workDayFrom(d + b.tankDays) + b.conditionDays;
      if (b.readyBy !== null && ready > dayOf(b.readyBy) + s.maxLateDays) continue;
      days.push(d);
    }
    return {
      ...b,
      beer: {
        og: b.og,
        ogP,
        ebc: b.ebc,
        ibu: b.ibu,
        fermentC: b.fermentC,
        souring: b.souring,
        additions: b.additions,
        lossPerColdDay: cold * ageing,
      },
      days,
      needFreshB: needB({ ...wort, harvested: false }, s),
      needSlurryB: needB({ ...wort, harvested: true }, s),
      beerLossPerDay: beerLossPerDay(b.fermentC, s) * ageing,
      crashLossPerDay: beerLossPerDay(s.crashC, s) * ageing,
      turns: house.brewLengthL === null ? 1 : Math.ceil(b.volumeL / house.brewLengthL),
    };
  });

  const jars: JarRead[] = house.jars.map((j) => {
    const og = j.sourceOg ?? 1.05;
    const yeast = house.yeasts.find((y) => y.yeast === j.yeast);
    // final gravity unknown: three quarters of the extract gone
    const ageing = strongAgeing(abvPercent(og, 1 + (og - 1) / 4), s);
    return {
      ...j,
      beer: {
        og,
        ogP: platoFromSg(og),
        ebc: j.sourceEbc ?? 0,
        ibu: j.sourceIbu ?? 0,
        fermentC: null,
        souring: j.sourceSouring,
        additions: j.sourceAdditions,
        lossPerColdDay: cold * ageing,
      },
      harvested: dayOf(j.harvestedOn),
      // what stands on the lid is settled slurry
      density: densityBPerMl(yeast?.flocculation ?? 'medium', 2, s).likely,
    };
  });

  return {
    house,
    s,
    today,
    from,
    to,
    isBrewDay,
    workDayFrom,
    isHandDay,
    handDayUntil: seek(isHandDay, -1),
    brewDayAfter: (day) => seek(isBrewDay, 1)(day + 1),
    money: (major) => Math.round(major * 100),
    weight: (id) => {
      const own = house.weights[id];
      if (own !== undefined) return own;
      const rule = RULES.find((r) => r.id === id);
      const published = rule && 'weight' in rule ? rule.weight : null;
      const relaxed = rule && 'relaxedTo' in rule ? rule.relaxedTo : null;
      const both = published ?? relaxed;
      if (!both) throw new RangeError(`${id} has no weight`);
      return both[house.kind];
    },
    relaxed: new Set(house.relaxed),
    brews,
    jars,
    cropShareAlive: cropViability(s).likely,
    keepB: (yeast) => {
      const needs = brews
        .filter((b) => b.yeasts.includes(yeast))
        .map((b) => b.needSlurryB)
        .sort((a, b) => a - b);
      return needs[Math.floor(needs.length / 2)] ?? 0;
    },
  };
}

export const yeastOf = (z: Season, y: number): House['yeasts'][number] => {
  const yeast = z.house.yeasts[y];
  if (!yeast) throw new RangeError(`no strain ${y}`);
  return yeast;
};
