// What was told of slurry and sources, by name: counts of jars and harvests, states of beers, sources ruled out.
import type { CultureState, Facts, Pin, SourceRef } from '../model/index.ts';
import { dayNumber } from './calendar.ts';

/** A count of slurry: what is not counted is null. */
export type SlurryCount = { day: number; viability: number | null; densityBPerMl: number | null };

export type ToldSlurry = {
  jar(name: string): SlurryCount | null;
  harvest(brew: string): SlurryCount | null;
  /** Of the beer, and so of what comes out of it. */
  beerState(brew: string): CultureState;
  /** Whether the beer has been tasted and passed. */
  passed(brew: string): boolean;
  /** Sources as the planner numbers them. */
  forbidden(brew: string): readonly number[];
};

/** Looks through facts and pins once. `sourceOf` numbers a source. */
export function toldSlurry(
  facts: Facts,
  pins: readonly Pin[],
  sourceOf: (source: SourceRef) => number | null,
): ToldSlurry {
  const jars = new Map<string, SlurryCount>();
  const harvests = new Map<string, SlurryCount>();
  for (const { of, day, viability, densityBPerMl } of facts.measured) {
    const count = { day: dayNumber(day), viability, densityBPerMl };
    if (of.kind === 'jar') jars.set(of.jar, count);
    else harvests.set(of.brew, count);
  }
  const states = new Map(facts.brewed.map((fact) => [fact.brew, fact.state]));
  const passed = new Set(facts.passed.map(({ brew }) => brew));
  const barred = new Map(
    pins.map((pin) => [pin.brew, pin.forbidden.map(sourceOf).filter((source) => source !== null)]),
  );
  return {
    jar: (name) => jars.get(name) ?? null,
    harvest: (brew) => harvests.get(brew) ?? null,
    beerState: (brew) => states.get(brew) ?? 'sound',
    passed: (brew) => passed.has(brew),
    forbidden: (brew) => barred.get(brew) ?? [],
  };
}
