// What a fermentation grows and how much of it reaches the jar.
//
// Growth of 3–5 times and 40–80 million cells per mL at the end: Briggs et al. 2004; Boulton & Quain
// 2001 (from memory). Recovery of 50–70 % for flocculent yeast: common practice, no source.
import type { Settings } from '../model/settings.ts';
import type { Flocculation } from './slurry.ts';

/** Cells at the end of fermentation, billion: growth of what was pitched, up to the beer's ceiling. */
export function grownCellsB(pitchedViableB: number, volumeL: number, s: Settings): number {
  return Math.min(s.growthFactor * pitchedViableB, s.cellCeilingBPerL * volumeL);
}

/** Share of the grown cells that a harvest brings into the jars. */
export function recoverableShare(
  flocculation: Flocculation,
  crashed: boolean,
  s: Settings,
): number {
  if (flocculation === 'high') return s.recoverHigh;
  if (flocculation === 'medium') return s.recoverMedium;
  return crashed ? s.recoverLow : s.recoverLow * s.uncrashedLowShare;
}
