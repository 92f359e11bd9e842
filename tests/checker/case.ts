// What every check looks at: the house, the plan, what has happened, and the lookups between them.
import {
  type Brew,
  type Facts,
  type House,
  type Jar,
  type Pin,
  type Plan,
  type PlannedBrew,
  type PlannedHarvest,
  resolveSettings,
  type Settings,
  type Tank,
  type Yeast,
} from '../../planner/index.ts';
import { type Calendar, calendarOf, num } from './days.ts';

export type RuleNumber =
  | '1'
  | '2'
  | '3'
  | '4'
  | '5'
  | '6'
  | '7'
  | '8'
  | '9'
  | '10'
  | '11'
  | '12'
  | '13'
  | 'dates'
  | 'amounts'
  | 'sums';

export type Violation = {
  /** Number of the hard rule, or 'dates', 'amounts', 'sums'; then which clause of it. */
  rule: `${RuleNumber} ${string}`;
  /** The brew, jar, tank, yeast or day that it is about. */
  subject: string;
  /** How far off, in `unit`. */
  amount: number;
  unit: string;
  says: string;
};

export type Report = (
  rule: Violation['rule'],
  subject: string,
  amount: number,
  unit: string,
  says: string,
) => void;

/** A brew of the plan together with its recipe, tank and strain, where the house knows them. */
export type Placed = {
  plan: PlannedBrew;
  brew: Brew;
  tank: Tank | undefined;
  yeast: Yeast | undefined;
  /** Brew day, emptying, end of the turnaround, ready: as the model gives them from the brew day. */
  D: number;
  E: number | null;
  free: number | null;
  R: number | null;
  /** The day on which the yeast is taken out of the cold or opened. */
  draw: number;
  /** The starter of that day is begun: a fact, on whatever day. */
  begun: boolean;
};

export type Case = {
  house: House;
  plan: Plan;
  facts: Facts;
  pins: readonly Pin[];
  S: Settings;
  calendar: Calendar;
  today: number;
  relaxed: ReadonlySet<string>;
  placed: readonly Placed[];
  placedOf: ReadonlyMap<string, Placed>;
  harvestOf: ReadonlyMap<string, PlannedHarvest>;
  jarOf: ReadonlyMap<string, Jar>;
  yeastOf: ReadonlyMap<string, Yeast>;
  report: Report;
};

const by = <T>(items: readonly T[], key: (item: T) => string): Map<string, T> =>
  new Map(items.map((item) => [key(item), item]));

/** Everything a check needs, made once. Dates are worked out anew and not read from the plan. */
export function caseOf(
  house: House,
  plan: Plan,
  facts: Facts,
  pins: readonly Pin[],
  report: Report,
): Case {
  const calendar = calendarOf(house);
  const brews = by(house.brews, (brew) => brew.brew);
  const tanks = by(house.tanks, (tank) => tank.tank);
  const yeasts = by(house.yeasts, (yeast) => yeast.yeast);
  const emptied = new Map(facts.brewed.map((fact) => [fact.brew, fact.emptiedOn]));
  const today = num(plan.today);
  const begunOn = new Map(facts.begun.map((fact) => [fact.brew, num(fact.day)]));
  const placed = plan.brews.flatMap((planned): Placed[] => {
    const brew = brews.get(planned.brew);
    if (brew === undefined) {
      report(
        'sums unknown-brew',
        planned.brew,
        1,
        'brews',
        `${planned.brew} is no brew of the house.`,
      );
      return [];
    }
    const tank = tanks.get(planned.tank);
    const yeast = yeasts.get(planned.yeast);
    const D = num(planned.day);
    const known = emptied.get(planned.brew) ?? null;
    // Beer that is still in its tank today cannot have been emptied before today.
    const earliest = planned.done ? Math.max(D + brew.tankDays, today) : D + brew.tankDays;
    const E = known === null ? calendar.workDayFrom(earliest) : num(known);
    const times = yeast !== undefined && yeast.nature !== 'clean' ? 2 : 1;
    const draw = planned.starter === null ? D : num(planned.starter.startOn);
    const begun = begunOn.get(planned.brew) === draw && draw <= today;
    const free = E === null || tank === undefined ? null : E + tank.turnaroundDays * times;
    const R = E === null ? null : E + brew.conditionDays;
    return [{ plan: planned, brew, tank, yeast, D, E, free, R, draw, begun }];
  });
  return {
    house,
    plan,
    facts,
    pins,
    S: resolveSettings(house.kind, house.rules),
    calendar,
    today,
    relaxed: new Set(house.relaxed),
    placed,
    placedOf: by(placed, (p) => p.plan.brew),
    harvestOf: by(plan.harvests, (harvest) => harvest.brew),
    jarOf: by(house.jars, (jar) => jar.jar),
    yeastOf: yeasts,
    report,
  };
}

/** Degrees Plato of a specific gravity: the cubic fit of the ASBC sugar tables (from memory). */
export const platoOf = (sg: number): number =>
  -616.868 + 1111.14 * sg - 630.272 * sg ** 2 + 135.997 * sg ** 3;

/** Whether two amounts agree within a share of the larger one. */
export const near = (a: number, b: number, share = 0.01): boolean =>
  Math.abs(a - b) <= share * Math.max(Math.abs(a), Math.abs(b)) + 1e-6;
