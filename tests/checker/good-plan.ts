// Sound plans of the two shared seasons, and copies of them that a test may spoil.

import { readFolder } from '../../api/folder/index.ts';
import {
  defaultToday,
  Facts,
  type House,
  type Pin,
  type Plan,
  type PlannedBrew,
  type PlannedHarvest,
  plan,
} from '../../planner/index.ts';
import { iso, num } from './days.ts';
import { checkPlan } from './index.ts';

export type Season = 'lantern-shed' | 'quay-seven';
const STEPS = 1500;
const made = new Map<Season, Promise<{ house: House; plan: Plan }>>();

async function make(season: Season) {
  const { house } = await readFolder(new URL(`../seasons/${season}`, import.meta.url).pathname);
  if (house === null) throw new Error(`${season} cannot be read`);
  return { house, plan: plan({ house, today: defaultToday(house), steps: STEPS, seed: 7 }) };
}

/** A shared season with its plan, planned once; the caller gets a copy of its own. */
export async function goodPlan(season: Season): Promise<{ house: House; plan: Plan }> {
  const there = made.get(season) ?? make(season);
  made.set(season, there);
  return structuredClone(await there);
}

/** The first of some things that is so; a season without one cannot carry the test. */
export function the<T>(items: readonly T[], is: (item: T) => boolean): T {
  const found = items.find(is);
  if (found === undefined) throw new Error('the season has nothing of the kind');
  return found;
}

export const later = (day: string, days: number): string => iso(num(day) + days);

/** A copy of a good plan under the hands of a test, with what is needed to find things in it. */
export type Hands = {
  house: House;
  plan: Plan;
  facts: Facts;
  pins: Pin[];
  placed: (is: (brew: PlannedBrew) => boolean) => PlannedBrew;
  recipe: (name: string) => House['brews'][number];
  strain: (name: string) => House['yeasts'][number];
  tank: (name: string) => House['tanks'][number];
  harvest: (name: string) => PlannedHarvest;
  /** A pitch out of a harvest, with that harvest, its beer and the beer's recipe. */
  repitch: (is?: (brew: PlannedBrew) => boolean) => {
    brew: PlannedBrew;
    source: Extract<PlannedBrew['source'], { kind: 'harvest' }>;
    harvest: PlannedHarvest;
    parent: PlannedBrew;
    recipe: House['brews'][number];
  };
};

/** A rule with its clause, what is spoilt in words, and the spoiling of it. */
export type Row = [rule: string, what: string, by: (hands: Hands) => void, season?: Season];

/** The rules that the checker finds broken in a copy of a good plan after one thing is spoilt. */
export async function spoil(season: Season, by: (hands: Hands) => void): Promise<Set<string>> {
  const good = await goodPlan(season);
  const { house, plan: copy } = good;
  const hands: Hands = {
    house,
    plan: copy,
    facts: Facts.parse({}),
    pins: [],
    placed: (is) => the(copy.brews, is),
    recipe: (name) => the(house.brews, (brew) => brew.brew === name),
    strain: (name) => the(house.yeasts, (yeast) => yeast.yeast === name),
    tank: (name) => the(house.tanks, (tank) => tank.tank === name),
    harvest: (name) => the(copy.harvests, (harvest) => harvest.brew === name),
    repitch: (is = () => true) => {
      const brew = the(copy.brews, (b) => b.source.kind === 'harvest' && is(b));
      const { source } = brew;
      if (source.kind !== 'harvest') throw new Error('not a harvest');
      return {
        brew,
        source,
        harvest: the(copy.harvests, (h) => h.brew === source.brew),
        parent: the(copy.brews, (b) => b.brew === source.brew),
        recipe: the(house.brews, (b) => b.brew === source.brew),
      };
    },
  };
  by(hands);
  const found = checkPlan(house, copy, hands.facts, hands.pins);
  return new Set(found.map((violation) => violation.rule));
}
