// How many living cells a brew must be pitched with.
//
// Rates in million cells per mL per °P by fermentation temperature: G. Fix (0.75–1 ale, 1.5 lager),
// Madison Beer Review 2012 (1.25 between), and the sources named beside each setting.
import type { Settings } from '../model/settings.ts';

export type Wort = {
  /** Fermentation temperature, °C. */
  fermentC: number;
  /** Original extract, °P. */
  ogP: number;
  souring: 'kettle' | 'mixed' | null;
  /** Slurry out of a fermentation rather than fresh packs. */
  harvested: boolean;
  /** The brewer's own rate for this brew: taken as it stands, with no discount and no increase. */
  ownRate?: number | null;
};

/** Pitching rate, million viable cells per mL per °P. Increases for strong and soured wort multiply. */
export function pitchRate(w: Wort, s: Settings): number {
  if (typeof w.ownRate === 'number') return w.ownRate;
  let rate: number;
  if (w.fermentC <= s.lagerToC) rate = s.rateLager;
  else {
    rate = w.fermentC <= s.hybridToC ? s.rateHybrid : s.rateAle;
    if (!w.harvested) rate *= s.freshShare;
  }
  if (w.ogP > s.strongFromP) rate *= 1 + s.strongIncrease;
  if (w.souring === 'kettle') rate *= 1 + s.sourIncrease;
  return rate;
}

/** Viable cells needed, billion: rate × litres × °P (a million per mL is a billion per litre). */
export function needB(w: Wort & { volumeL: number }, s: Settings): number {
  return pitchRate(w, s) * w.volumeL * w.ogP;
}
