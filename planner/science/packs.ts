// How much of a bought pack is still alive on the day it is used.
//
// Liquid: manufacturer's figures over six months (second-hand) and the older ones of White Labs
// (75–85 % after 30 days), which set the low end. Dry: about 4 % a year cold, 20 % warm (from memory).
import type { Range } from '../model/common.ts';
import type { Settings } from '../model/settings.ts';

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
  const loss = packLossPerDay(form, s) * Math.max(0, ageDays);
  return {
    low: Math.exp(-loss * s.packSpread),
    likely: Math.exp(-loss),
    high: Math.exp(-loss / s.packSpread),
  };
}
