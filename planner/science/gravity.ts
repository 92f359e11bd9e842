// Specific gravity and degrees Plato, and what the two gravities of a beer say about its alcohol.
//
// Source: the cubic fitted to the sucrose table of Bates et al., NBS Circular 440, 1942 (root mean
// square 0.0009 °Bx over SG 1.00000–1.17874). Of the cubics in circulation it is the one whose table
// and range are stated; docs/science.md compares them.
// Alcohol: Balling's relation with the real extract 0.1808 OE + 0.8192 AE (from memory), and the ratio
// of weight to volume by the density of ethanol, 0.7907 against water at 20 °C (ASBC Beer-4, from memory).

const C3 = 182.46007;
const C2 = -775.68212;
const C1 = 1262.7794;
const C0 = -669.56218;

/** The cubic is fitted up to here; beyond it the value is an extrapolation. */
export const SG_FITTED_TO = 1.17874;

/** Grams of extract that become one gram of alcohol, carbon dioxide and new yeast (Balling). */
const EXTRACT_PER_ALCOHOL = 2.0665;
/** Weight lost as carbon dioxide and yeast for each gram of alcohol (Balling). */
const LOST_PER_ALCOHOL = 1.0665;
const REAL_FROM_OE = 0.1808;
const REAL_FROM_AE = 0.8192;
/** Density of ethanol at 20 °C against water at 20 °C. */
export const ETHANOL_SG = 0.7907;

/** °P of a gravity as the cubic gives it: below water it is negative, as a hydrometer reads. */
export function apparentExtract(sg: number): number {
  return ((C3 * sg + C2) * sg + C1) * sg + C0;
}

/**
 * Degrees Plato of a specific gravity (20/20 °C), 0 for water and anything lighter.
 * Valid 1.000–1.150, sound to 1.178. Source: NBS Circular 440 (1942), cubic fit.
 */
export function platoFromSg(sg: number): number {
  return Math.max(0, apparentExtract(sg));
}

/**
 * Specific gravity of a degree Plato: the exact inverse of `platoFromSg` (Newton's method on the same
 * cubic, to the last bits). Below 0 °P it is taken as 0.
 */
export function sgFromPlato(p: number): number {
  const want = Math.max(0, p);
  // A one-parameter physical form starts within 0.001 of the root (Buhl, OSF preprint, 2023).
  let sg = 260.4 / (260.4 - Math.min(want, 200));
  for (let step = 0; step < 8; step++) {
    const slope = (3 * C3 * sg + 2 * C2) * sg + C1;
    const move = (apparentExtract(sg) - want) / slope;
    sg -= move;
    if (Math.abs(move) < 1e-15) break;
  }
  return sg;
}

/** Real extract, °P: what a beer still holds once its alcohol is driven off and made up with water. */
export function realExtract(og: number, fg: number): number {
  return REAL_FROM_OE * apparentExtract(og) + REAL_FROM_AE * apparentExtract(fg);
}

/** Alcohol by weight, %, from original and final gravity (Balling). 0 where nothing has fermented. */
export function abwPercent(og: number, fg: number): number {
  const oe = apparentExtract(og);
  const fermented = oe - (REAL_FROM_OE * oe + REAL_FROM_AE * apparentExtract(fg));
  if (!(fermented > 0)) return 0;
  return fermented / (EXTRACT_PER_ALCOHOL - (LOST_PER_ALCOHOL / 100) * oe);
}

/** Alcohol by volume, %, from original and final gravity (Balling; ASBC volume relation). */
export function abvPercent(og: number, fg: number): number {
  return (abwPercent(og, fg) * fg) / ETHANOL_SG;
}

/** Apparent attenuation, share of the extract gone by the hydrometer; 0 for water. */
export function apparentAttenuation(og: number, fg: number): number {
  const oe = apparentExtract(og);
  return oe > 0 ? (oe - apparentExtract(fg)) / oe : 0;
}

/** Real attenuation, share of the extract truly fermented; 0 for water. */
export function realAttenuation(og: number, fg: number): number {
  const oe = apparentExtract(og);
  return oe > 0 ? (oe - realExtract(og, fg)) / oe : 0;
}
