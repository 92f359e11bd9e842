// A part kept of a starter, as the record tells it: taken of a brew on its brew day.
import type { BrewedFact } from '../model/index.ts';
import type { Ledger } from './ledger.ts';

/** Whether what was taken of a brew was a part of its starter: no beer is harvested on the day it is brewed. */
export function keptOfStarter(ledger: Pick<Ledger, 'brewed' | 'harvested'>, brew: string): boolean {
  const brewed = ledger.brewed.get(brew);
  const taken = ledger.harvested.get(brew);
  return brewed !== undefined && taken !== undefined && taken.fact.day <= brewed.fact.day;
}

/** Whether a part of its starter can have been kept: a growth starter out of fresh packs. */
export const mayKeepPart = (brewed: BrewedFact): boolean =>
  brewed.source.kind === 'fresh' && brewed.starterLitres > 0;
