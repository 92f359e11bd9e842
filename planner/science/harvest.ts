// What a fermentation grows and how much of it reaches the jar.
//
// Growth of 3–5 times and 40–80 million cells per mL at the end: Briggs et al. 2004; Boulton & Quain
// 2001 (from memory). Recovery of 50–70 % for flocculent yeast: common practice, no source.
import type { Range } from '../model/common.ts';
import type { Settings } from '../model/settings.ts';
import { densityBPerMl, type Flocculation } from './slurry.ts';

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

/** Earliest crop, days after the pitch: by kind of yeast, later for strong beer or a low flocculator. */
export function earliestCropDay(
  b: { lager: boolean; ogP: number; flocculation: Flocculation },
  s: Settings,
): number {
  const slow = b.ogP > s.strongBeerP || b.flocculation === 'low';
  return (b.lager ? s.cropDayLager : s.cropDayAle) + (slow ? s.cropDaysExtra : 0);
}

export type ExpectedHarvest = {
  /** Cells in the jars, dead ones included, billion. */
  cellsB: number;
  /** Settled mL as read after the days of settling; 80 % interval. */
  settledMl: Range;
  jars: number;
  /** The beer's ceiling and not the pitch decided. */
  atCeiling: boolean;
};

/** What a harvest is expected to bring: cells, mL as it will be read, jars. */
export function expectedHarvest(
  h: {
    pitchedViableB: number;
    volumeL: number;
    flocculation: Flocculation;
    crashed: boolean;
    settleDays: number;
    jarMl: number;
  },
  s: Settings,
): ExpectedHarvest {
  const grown = grownCellsB(h.pitchedViableB, h.volumeL, s);
  const cellsB = grown * recoverableShare(h.flocculation, h.crashed, s);
  const density = densityBPerMl(h.flocculation, h.settleDays, s);
  const likely = cellsB / density.likely;
  // What grows and what the density is are independent: the squares of their logarithms add up.
  const join = (d: number) =>
    Math.exp(Math.sqrt(Math.log(s.harvestSpread) ** 2 + Math.log(d / density.likely) ** 2));
  return {
    cellsB,
    settledMl: {
      low: likely / join(density.high),
      likely,
      high: likely * join(density.low),
    },
    jars: Math.ceil(likely / h.jarMl - 1e-9),
    atCeiling: s.growthFactor * h.pitchedViableB > grown,
  };
}
