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

/** What slurry read after `settleDays` will read once it has settled for 48 h, mL. */
export function settledMl(readMl: number, settleDays: number, s: Settings): number {
  return readMl * settledShare(settleDays, s);
}

/** The yeast in a jar whose sediment is to this share trub and hops, mL: densities count it out. */
export function yeastMl(sedimentMl: number, trubShare: number): number {
  return sedimentMl * (1 - trubShare);
}

/** A draw that brings `cellsB` living cells, mL: the likely one, and from the thinnest to the richest. */
export function drawMl(cellsB: number, density: Range, viability: Range): Range {
  const ml = (d: number, v: number) => (d * v > 0 ? cellsB / (d * v) : Infinity);
  const likely = ml(density.likely, viability.likely);
  // Two independent uncertainties: their logarithms join as the root of the sum of squares.
  const join = (d: number, v: number) =>
    Math.exp(Math.sqrt(Math.log(density.likely / d) ** 2 + Math.log(viability.likely / v) ** 2));
  if (!Number.isFinite(likely)) return { low: Infinity, likely: Infinity, high: Infinity };
  return {
    low: likely / join(density.high, viability.high),
    likely,
    high: density.low * viability.low > 0 ? likely * join(density.low, viability.low) : Infinity,
  };
}

/** Living cells in `ml` of slurry, billion, with both uncertainties joined in the same way. */
export function livingCellsB(ml: number, density: Range, viability: Range): Range {
  const likely = ml * density.likely * viability.likely;
  if (!(likely > 0)) return { low: 0, likely: 0, high: 0 };
  const join = (d: number, v: number) =>
    Math.exp(Math.sqrt(Math.log(density.likely / d) ** 2 + Math.log(viability.likely / v) ** 2));
  return {
    low: density.low * viability.low > 0 ? likely / join(density.low, viability.low) : 0,
    likely,
    high: likely * join(density.high, viability.high),
  };
}
