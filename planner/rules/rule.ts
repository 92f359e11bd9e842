// What a rule is. Each owns its words, its check, its weight; everything else loops over the list in index.ts.
import { type CostPart, money as moneyWords } from '../model/index.ts';
import { isoDay } from '../timeline/calendar.ts';
import { fromStarter } from '../timeline/kept.ts';
import { type BrewData, FRESH, type JarData, type Problem } from '../timeline/problem.ts';
import type { Timeline } from '../timeline/timeline.ts';

/** One thing a rule found: how badly (a whole number in the rule's unit, or a hazard), on what, and with what. */
export type Found = (amount: number, subject: number, other: number) => void;
export type Fact = { amount: number; subject: number; other: number };

export type Weight = {
  home: number;
  nano: number;
  unit: string;
  /** What turning it up or down does, for a brewer. */
  says: string;
  source: string;
};

type Words = {
  /** Permanent: in plans, documents and addresses for ever. */
  id: string;
  title: string;
  unit: string;
  /** What it forbids or costs, in one sentence for a brewer. */
  says: string;
  /** The name of what a finding is about. */
  subject(t: Timeline, fact: Fact): string;
  /** The finding as a sentence. */
  explain(t: Timeline, fact: Fact): string;
  /** What a brewer can do about it. */
  remedy(t: Timeline, fact: Fact): string;
};

/** Forbids. The amount says how badly: days, litres, mL, jars … */
export type HardRule = Words & {
  level: 'hard';
  /** If a house may relax it: the hazard that it then is. */
  relaxedTo?: Weight;
  check(t: Timeline, found: Found): void;
  /** What it finds on one brew, where it looks at brews one by one: at its slot, its source and its own harvest. */
  at?(t: Timeline, b: number, found: Found): void;
  /**
   * A shortcut for the search: true only if pitching brew b from this source on this day, all else as it
   * stands, would certainly make `check` find something. A test holds the two against each other.
   */
  bars?(t: Timeline, b: number, source: number, useDay: number): boolean;
};

/** Counts wanted brews that are not brewed; the amount is the priority. */
export type LeftOutRule = Words & { level: 'left-out'; check(t: Timeline, found: Found): void };

/** Costs: the amount is whole minor units of the house's currency, the weight already applied. */
export type CostRule = Words & {
  level: 'cost';
  part: CostPart;
  /**
   * What of a brew decides it: its day, tank and strain; what it is pitched with, whatever the day; its day and
   * source; what is taken from it; or the plan as a whole. The proven bound adds up its least by this.
   */
  follows: 'slot' | 'pitch' | 'source' | 'harvest' | 'plan';
  weight: Weight | null;
  /** The one cost that is made of the hazards of a pitch. */
  joinsHazards?: true;
  /** Charges for differing from the plan in force: past once the plan is adopted. */
  againstInForce?: true;
  /** Looks at brewed brews too, not only at those that are still a choice. */
  factsToo?: true;
  check(t: Timeline, weight: number, found: Found): void;
  at?(t: Timeline, b: number, weight: number, found: Found): void;
};

/** Adds to the chance that a pitch goes wrong: the amount is a hazard, the weight already applied. */
export type HazardRule = Words & {
  level: 'hazard';
  weight: Weight;
  check(t: Timeline, weight: number, found: Found): void;
  at(t: Timeline, b: number, weight: number, found: Found): void;
};

export type Rule = HardRule | LeftOutRule | CostRule | HazardRule;

/** The beer that the slurry of brew b came from: a brew of the season, a jar's beer, or null where it has been in none. */
export function sourceBeer(t: Timeline, b: number): BrewData | JarData | null {
  return beerOf(t, t.source[b] as number);
}

export function beerOf(t: Timeline, source: number): BrewData | JarData | null {
  if (source === FRESH) return null;
  const { jars, brews } = t.problem;
  if (source < jars.length) return jars[source] ?? null;
  // what was kept of a starter has been in no beer
  return fromStarter(t, source) ? null : (brews[source - jars.length] ?? null);
}

/** The brew whose harvest brew b is pitched with, or -1 for packs and jars of the shelf. */
export function slurryFrom(t: Timeline, b: number): number {
  return Math.max(-1, (t.source[b] as number) - t.problem.jars.length);
}

/** Whether the beer of a source had been dry-hopped before its harvest, and how many days before. */
export function hoppedDaysBefore(t: Timeline, source: number): number {
  const { jars, brews } = t.problem;
  if (source === FRESH) return 0;
  if (source < jars.length) return jars[source]?.dryHopped ? 1 : 0;
  const from = source - jars.length;
  const hop = brews[from]?.dryHopDay;
  if (hop === null || hop === undefined || !t.placed[from]) return 0;
  return Math.max(0, (t.harvestDay[from] as number) - (t.day[from] as number) - hop);
}

/** mL of the old slurry that reach the wort; a starter that is decanted leaves the old beer behind. */
export const drawnInto = (t: Timeline, b: number): number =>
  (t.starterChill[b] as number) >= 0 ? 0 : (t.drawMl[b] as number);

export const brewName = (t: Timeline, b: number): string => t.problem.brews[b]?.name ?? '?';
export const brewSubject = (t: Timeline, fact: Fact): string => brewName(t, fact.subject);
export const yeastName = (t: Timeline, b: number): string =>
  t.problem.yeasts[t.yeast[b] as number]?.row.yeast ?? '?';
export const tankName = (t: Timeline, b: number): string =>
  t.problem.tanks[t.tank[b] as number]?.name ?? '?';
export const brewDay = (t: Timeline, b: number): string => isoDay(t.day[b] as number);

/** The name of a source: the jar's code, 'slurry from X', or what was kept of X's starter. */
export function sourceName(t: Timeline, source: number): string {
  const { jars, brews } = t.problem;
  if (source === FRESH) return 'fresh packs';
  if (source < jars.length) return `jar ${jars[source]?.name ?? '?'}`;
  const name = brews[source - jars.length]?.name ?? '?';
  return fromStarter(t, source) ? `yeast kept from the starter of ${name}` : `slurry from ${name}`;
}

export const sourceNameOf = (t: Timeline, b: number): string =>
  sourceName(t, t.source[b] as number);

/** Calls `each` for every brew of the plan that is still a choice, in order of day. */
function eachChoice(t: Timeline, each: (b: number) => void): void {
  for (let i = 0; i < t.orderCount; i++) {
    const b = t.order[i] as number;
    if (!t.done[b]) each(b);
  }
}

type At = (t: Timeline, b: number, found: Found) => void;
type WeightedAt = (t: Timeline, b: number, weight: number, found: Found) => void;

/** A hard rule that looks at the brews one by one: `check` asks `at` of every brew that is still a choice. */
export function hardByBrew(
  rule: Omit<HardRule, 'check' | 'at' | 'level'> & { level: 'hard'; at: At },
): HardRule {
  return { ...rule, check: (t, found) => eachChoice(t, (b) => rule.at(t, b, found)) };
}

/** A cost rule that looks at the brews one by one. */
export function costByBrew(rule: Omit<CostRule, 'check' | 'at'> & { at: WeightedAt }): CostRule {
  const each = rule.factsToo ? eachPlaced : eachChoice;
  return { ...rule, check: (t, weight, found) => each(t, (b) => rule.at(t, b, weight, found)) };
}

function eachPlaced(t: Timeline, each: (b: number) => void): void {
  for (let i = 0; i < t.orderCount; i++) each(t.order[i] as number);
}

/** A hazard: always looked at brew by brew. */
export function hazardByBrew(rule: Omit<HazardRule, 'check'>): HazardRule {
  return {
    ...rule,
    check: (t, weight, found) => eachChoice(t, (b) => rule.at(t, b, weight, found)),
  };
}

export const money = (p: Problem, major: number): number => Math.round(major * p.minorPerMajor);

/** An amount of minor units in words of the house's currency. */
export const inMoney = (p: Problem, minor: number): string =>
  moneyWords(minor, { currency: p.house.currency, minorPerMajor: p.minorPerMajor });

export const plural = (n: number, one: string, many = `${one}s`): string =>
  `${n} ${n === 1 ? one : many}`;
