// How many cells a mL of settled slurry holds, trub already counted out.
//
// Sources differ by a factor of two: 1.0–1.2 billion per mL (Escarpment KB 90; a supplier's guide at
// 40–60 % solids) against 2.0 from 10 % dry matter (Murphy & Son) at 20 billion cells a gram (Troester).
// Hence the wide interval, and the wish for a count.
import type { Range } from '../model/common.ts';
import type { Settings } from '../model/settings.ts';

export type Flocculation = 'low' | 'medium' | 'high';

/** Packed cells of 150–220 µm³ at 60 % packing cannot be denser than this, billion per mL. */
export const DENSEST_B_PER_ML = 4;
/** Days of settling at which volume and density are stated. */
export const SETTLED_DAYS = 2;

/** Likely density after 48 h of settling, billion cells per mL. */
export function settledDensity(flocculation: Flocculation, s: Settings): number {
  if (flocculation === 'high') return s.densityHigh;
  return flocculation === 'low' ? s.densityLow : s.densityMedium;
}

/**
 * Share of the 48 h density after `settleDays`: `density0hShare` at once, `density24hShare` after one
 * day, 1 from two days on, straight lines between. Its inverse is how much larger the volume reads.
 */
export function settledShare(settleDays: number, s: Settings): number {
  if (settleDays >= SETTLED_DAYS) return 1;
  if (settleDays >= 1) return s.density24hShare + (1 - s.density24hShare) * (settleDays - 1);
  const days = Math.max(0, settleDays);
  return s.density0hShare + (s.density24hShare - s.density0hShare) * days;
}

/**
 * Billion cells per mL of slurry read after `settleDays` (80 % interval): `densitySpread` times either
 * way at 48 h, wider by `densitySpreadPerDay` for each day short of that. Never above what packs.
 */
export function densityBPerMl(flocculation: Flocculation, settleDays: number, s: Settings): Range {
  const share = settledShare(settleDays, s);
  const likely = settledDensity(flocculation, s) * share;
  const short = Math.min(SETTLED_DAYS, Math.max(0, SETTLED_DAYS - settleDays));
  const spread = s.densitySpread * s.densitySpreadPerDay ** short;
  return {
    low: likely / spread,
    likely,
    high: Math.max(likely, Math.min(DENSEST_B_PER_ML, likely * spread)),
  };
}
