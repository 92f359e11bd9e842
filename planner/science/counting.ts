// From what is seen under a microscope, or on a scale, to cells per mL and the share alive, with errors.
//
// Improved Neubauer chamber, 0.1 mm deep: meaderylab.com article 29. Error between fields: an MBAA
// community reply on cell counts, May 2022. Share alive by stain: Wilson's interval; methylene blue
// itself is unreliable below 95 % (Mochaba, O'Connor-Cox & Axcell, J. ASBC 56(1), 1998).
import type { Range } from '../model/common.ts';
import type { Settings } from '../model/settings.ts';
import { t80, wilson, Z80 } from './chance.ts';

/** Volume over one square of an improved Neubauer chamber, mL. */
export const NEUBAUER_ML = {
  /** One of the nine large squares, 1 mm wide. */
  large: 1e-4,
  /** One of the 16 squares of a corner square, 0.25 mm wide. */
  corner: 6.25e-6,
  /** One of the 25 squares of the central square, 0.2 mm wide. */
  central: 4e-6,
  /** One of the 16 smallest squares in a central one, 0.05 mm wide. */
  small: 2.5e-7,
} as const;
export type NeubauerSquare = keyof typeof NEUBAUER_ML;

export type CellCount = {
  /** Cells in a mL of the slurry as it was before dilution, million: 80 % interval of the mean. */
  millionPerMl: Range;
  cells: number;
  squares: number;
  meanPerSquare: number;
  /** Standard deviation between squares; null with a single square. */
  betweenSd: number | null;
  /** The same as a share of the mean: above 0.3 count again (MBAA reply). */
  betweenCv: number | null;
  /** What chance alone would make of it: 1/√(mean). */
  poissonCv: number;
  /** Standard error of the mean as a share of it: the larger of between-square and Poisson. */
  errorShare: number;
  quality: 'superb' | 'very good' | 'good' | 'poor' | 'count again' | 'one square only';
};

/** The reply's bands for the spread between squares. */
const BANDS = [
  [0.1, 'superb'],
  [0.2, 'very good'],
  [0.25, 'good'],
  [0.3, 'poor'],
] as const;

/**
 * Cells per mL from counts square by square. `dilution` is the total factor, a 1:1 stain included. The
 * interval takes Student's t on the spread between squares where that exceeds Poisson's.
 */
export function countCells(
  perSquare: readonly number[],
  squareMl: number,
  dilution: number,
): CellCount {
  const squares = perSquare.length;
  const cells = perSquare.reduce((sum, n) => sum + n, 0);
  const mean = squares > 0 ? cells / squares : 0;
  const betweenSd =
    squares > 1
      ? Math.sqrt(perSquare.reduce((sum, n) => sum + (n - mean) ** 2, 0) / (squares - 1))
      : null;
  const betweenCv = betweenSd === null || mean === 0 ? null : betweenSd / mean;
  const poissonError = cells > 0 ? 1 / Math.sqrt(cells) : 1;
  const betweenError = betweenCv === null ? 0 : betweenCv / Math.sqrt(squares);
  const errorShare = Math.max(poissonError, betweenError);
  const half = errorShare * (betweenError > poissonError ? t80(squares - 1) : Z80);
  const likely = (mean / squareMl) * dilution * 1e-6 || 0;
  return {
    millionPerMl: { low: Math.max(0, likely * (1 - half)), likely, high: likely * (1 + half) },
    cells,
    squares,
    meanPerSquare: mean,
    betweenSd,
    betweenCv,
    poissonCv: mean > 0 ? 1 / Math.sqrt(mean) : 1,
    errorShare,
    quality:
      betweenCv === null
        ? 'one square only'
        : (BANDS.find(([below]) => betweenCv < below)?.[1] ?? 'count again'),
  };
}

/** Share alive from `stained` (dead) cells among `total`: 80 % Wilson interval around the share seen. */
export function countViability(stained: number, total: number): Range {
  const alive = total - stained;
  const { low, high } = wilson(alive, total);
  return { low, likely: total > 0 ? alive / total : 0.5, high };
}

/**
 * Share alive where only the share was written down and not how many cells were seen: taken as that
 * many cells as the house usually counts.
 */
export function measuredViability(share: number, s: Settings): Range {
  const { low, high } = wilson(share * s.countedCells, s.countedCells);
  return { low: Math.min(low, share), likely: share, high: Math.max(high, share) };
}

/**
 * What a count of `total` cells may read (80 % interval) where the share alive is predicted as `v`: the
 * counting error joins the prediction's. A count inside it agrees with the prediction.
 */
export function expectedCount(v: Range, total: number): Range {
  if (!(total > 0)) return { low: 0, likely: v.likely, high: 1 };
  const half = Z80 * Math.sqrt((v.likely * (1 - v.likely)) / total);
  return {
    low: Math.max(0, v.likely - Math.hypot(v.likely - v.low, half)),
    likely: v.likely,
    high: Math.min(1, v.likely + Math.hypot(v.high - v.likely, half)),
  };
}

/** Density of yeast cells, g/mL (from memory: 1.08–1.13). */
const CELL_G_PER_ML = 1.11;

/** Density of settled slurry, g/mL: its beer share at the beer's gravity, the rest cells. */
export function slurryGPerMl(beerSg: number, s: Settings): number {
  return s.slurryBeerShare * beerSg + (1 - s.slurryBeerShare) * CELL_G_PER_ML;
}

/** Millilitres of settled slurry by weight, g: steadier than a line read through foam and glass. */
export function slurryMlFromG(grams: number, beerSg: number, s: Settings): number {
  return grams / slurryGPerMl(beerSg, s);
}
