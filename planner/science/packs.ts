// How much of a bought pack is still alive on the day it is used.
//
// Liquid: manufacturer's figures over six months (second-hand) and the older ones of White Labs
// (75–85 % after 30 days), which set the low end. Dry: about 4 % a year cold, 20 % warm (from memory).
import type { Range } from '../model/common.ts';
import type { Settings } from '../model/settings.ts';
import { storageLossPerDay } from './viability.ts';

export type PackForm = 'liquid' | 'dry';

/** First-order loss of a pack kept cold, per day. */
export function packLossPerDay(form: PackForm, s: Settings): number {
  return form === 'dry' ? s.dryLossPerDay : s.liquidLossPerDay;
}

/** Days from the day of making to the expiry of a pack. */
export function packExpiryDays(form: PackForm, s: Settings): number {
  return form === 'dry' ? s.dryExpiryDays : s.liquidExpiryDays;
}

/**
 * Share of a pack's stated cells that live at this age (80 % interval; `packSpread` times faster or
 * slower). An age before the day of making counts as that day.
 */
export function packViability(form: PackForm, ageDays: number, s: Settings): Range {
  return packRange(packLossPerDay(form, s) * Math.max(0, ageDays), s);
}

/** Share alive of a pack after a loss of rate × days, which may be summed over several temperatures. */
export function packRange(loss: number, s: Settings): Range {
  return {
    low: Math.exp(-loss * s.packSpread),
    likely: Math.exp(-loss),
    high: Math.exp(-loss / s.packSpread),
  };
}

/** The pack settings speak of a refrigerator, °C. */
const COLD_C = 4;
const WARM_C = 24;
const LEAST_RATE = 1e-9;

/**
 * Loss per day of a pack kept at another temperature. Dry: log-linear through the settings' losses at
 * 4 and 24 °C. Liquid: as much faster as slurry is (no source of its own).
 */
export function packLossPerDayAt(form: PackForm, tempC: number, s: Settings): number {
  const cold = packLossPerDay(form, s);
  if (form === 'liquid') return (cold * storageLossPerDay(tempC, s)) / storageLossPerDay(COLD_C, s);
  const from = Math.max(LEAST_RATE, cold);
  const to = Math.max(LEAST_RATE, s.dryLossPerDayAt24C);
  return from * (to / from) ** ((tempC - COLD_C) / (WARM_C - COLD_C));
}
