// Builds a tiny house, lays its brews on days by name, unfolds that and says what one rule finds in it.
//
// The season runs from Monday 1 March to Wednesday 30 June 2027, every day a brew day and a work day, so
// that a day is what a test says it is. Millrace (bitter) and every other brew are those of plan.ts.
import type { z } from 'zod';
import { Facts, type House, Pin, type Plan } from '../../planner/model/index.ts';
import { RULES, type Rule } from '../../planner/rules/index.ts';
import { Judge } from '../../planner/search/score.ts';
import { dayNumber } from '../../planner/timeline/calendar.ts';
import { compile, FRESH, type Problem } from '../../planner/timeline/problem.ts';
import { placeDone, Timeline } from '../../planner/timeline/timeline.ts';
import { unfold } from '../../planner/timeline/unfold.ts';
import { aBrew, aHouse, aTank, aYeast } from './plan.ts';

export { aBrew, aJar, aPlan, aPlannedBrew, aTank, aYeast, daysAfter } from './plan.ts';

/** The first day of the season: a Monday. */
export const MONDAY = '2027-03-01';

/** The gravity of 12 °P in the sucrose tables: 20 L of it want 240 billion harvested cells, 180 fresh ones. */
export const TWELVE_P = 1.04837;

/** Rules of a house whose yeast never dies, so that amounts can be worked out on paper. */
export const UNDYING = {
  cropViability: 1,
  storageLossAt1C: 0,
  storageLossAt5C: 0,
  storageLossAt25C: 0,
  liquidLossPerDay: 0,
};

/** A house with two kegs, a conical tank, an ale and a lager yeast, no jars and one brew, Millrace. */
export function aSeason(part: Partial<z.input<typeof House>> = {}): House {
  return aHouse({
    from: MONDAY,
    to: '2027-06-30',
    brewDays: ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'],
    workDays: null,
    brewsPerDay: 3,
    tanks: [
      aTank(),
      aTank({ tank: 'Keg B' }),
      aTank({ tank: 'Cone', maxFillL: 30, bottomOutlet: true }),
    ],
    yeasts: [
      aYeast({ packsOnHand: 0, packsMadeOn: null }),
      aYeast({
        yeast: 'Harbour Lager',
        kind: 'lager',
        packsOnHand: 0,
        packsMadeOn: null,
        minC: 8,
        maxC: 14,
        flocculation: 'medium',
      }),
    ],
    jars: [],
    brews: [aBrew()],
    ...part,
  });
}

export type Source = 'packs' | { jar: string } | { harvest: string };

export type Laid = {
  on: string;
  /** Keg A unless given. */
  tank?: string;
  /** The brew's best-liked one unless given. */
  yeast?: string;
  from?: Source;
  /** Size of the starter in quarters of the largest vessel. */
  starter?: 0 | 1 | 2 | 3 | 4;
  /** The work day of the crop, counted from the earliest; -1: when the tank is emptied. */
  crop?: number;
};

export type Around = {
  /** A month before the season unless given: every order can arrive. */
  today?: string;
  facts?: z.input<typeof Facts>;
  pins?: z.input<typeof Pin>[];
  inForce?: Plan | null;
  /** By yeast: what a jar is kept from for the next season. */
  keep?: Record<string, Source>;
};

export type Said = { amount: number; subject: string; says: string; remedy: string };

export type Season = {
  problem: Problem;
  t: Timeline;
  judge: Judge;
  brew(name: string): number;
  source(from: Source): number;
  /** What one rule finds: amounts as it judges them in this house, weights applied. */
  found(id: string): Said[];
  /** What one rule finds, added up. */
  sum(id: string): number;
  /** All hazards of a pitch, added up. */
  hazard(brew: string): number;
};

export function ruleOf(id: string): Rule {
  const rule = RULES.find((r) => r.id === id);
  if (!rule) throw new RangeError(`there is no rule ${id}`);
  return rule;
}

/** Compiles the house, lays the named brews as told (the others are left out) and unfolds it. */
export function lay(house: House, laid: Record<string, Laid>, around: Around = {}): Season {
  const facts = Facts.parse(around.facts ?? {});
  const pins = (around.pins ?? []).map((pin) => Pin.parse(pin));
  const problem = compile(house, around.today ?? '2027-02-01', facts, pins, around.inForce ?? null);
  const t = new Timeline(problem);
  const indexOf = (list: readonly { name: string }[], name: string): number => {
    const at = list.findIndex((x) => x.name === name);
    if (at < 0) throw new RangeError(`the season has no ${name}`);
    return at;
  };
  const yeasts = problem.yeasts.map((y) => ({ name: y.row.yeast }));
  const brew = (name: string) => indexOf(problem.brews, name);
  const source = (from: Source): number => {
    if (from === 'packs') return FRESH;
    if ('jar' in from) return indexOf(problem.jars, from.jar);
    return problem.jars.length + brew(from.harvest);
  };
  for (const [name, on] of Object.entries(laid)) {
    const b = brew(name);
    t.placed[b] = 1;
    t.day[b] = dayNumber(on.on);
    t.tank[b] = indexOf(problem.tanks, on.tank ?? 'Keg A');
    t.yeast[b] =
      on.yeast === undefined ? (problem.brews[b]?.yeasts[0] ?? 0) : indexOf(yeasts, on.yeast);
    t.source[b] = source(on.from ?? 'packs');
    t.starter[b] = on.starter ?? 0;
    t.crop[b] = on.crop ?? -1;
  }
  for (const [yeast, from] of Object.entries(around.keep ?? {})) {
    t.keep[indexOf(yeasts, yeast)] = source(from);
  }
  placeDone(t);
  unfold(t);
  const judge = new Judge(problem);
  judge.joinHazards(t);
  const found = (id: string): Said[] => whatIsFound(judge, t, ruleOf(id));
  return {
    problem,
    t,
    judge,
    brew,
    source,
    found,
    sum: (id) => found(id).reduce((total, f) => total + f.amount, 0),
    hazard: (name) => t.hazard[brew(name)] ?? 0,
  };
}

function whatIsFound(judge: Judge, t: Timeline, rule: Rule): Said[] {
  const out: Said[] = [];
  const note = (amount: number, subject: number, other: number) => {
    const fact = { amount, subject, other };
    out.push({
      amount,
      subject: rule.subject(t, fact),
      says: rule.explain(t, fact),
      remedy: rule.remedy(t, fact),
    });
  };
  if (rule.level === 'hard' || rule.level === 'left-out') rule.check(t, note);
  else {
    const mine = [...judge.hazards, ...judge.costs].find((w) => w.rule.id === rule.id);
    rule.check(t, mine?.weight ?? Number.NaN, note);
  }
  return out;
}
