// What stained counts say of a strain in this house: how alive its crop is, and how fast it then dies.
//
// Nobody knows the shape of the curve. The learning therefore weighs several: first-order, and two with a
// shoulder (W. Weibull's law, as food microbiology uses it for survivors: M. Peleg, from memory). The
// plan goes on with a first-order loss, the one nearest to the mixture, and states its interval so wide
// that it holds 80 % of what the mixture expects: docs/decisions/031-first-order-loss-with-a-misfit.md.
import type { Range } from '../model/common.ts';
import type { Settings } from '../model/settings.ts';
import { Z80 } from './chance.ts';
import {
  at,
  factorRange,
  logAt,
  mix,
  POINTS,
  quantile,
  type Weighed,
  WHOLE,
  weigh,
} from './learn-grid.ts';
import { cropViability, viabilityRange } from './viability.ts';

/** A stained count of a jar, with what the default model says of that jar. */
export type ViabilityCount = {
  /** Living cells seen, and all cells seen. */
  alive: number;
  total: number;
  /** Rate × days in the cold by the default settings, ageing factors included. */
  loss: number;
  /** The same on the beer, before it was harvested; taken as it stands, for a count cannot tell it from a poor crop. */
  beerLoss?: number;
};

export type LearnedLoss = {
  /** How many times as fast as the default the next jar dies: 80 % interval. */
  times: Range;
  /** 80 % interval of the strain's own level, without the scatter from jar to jar. */
  level: Range;
  /** The interval for the next jar as one factor either way, as the settings state it. */
  spread: number;
  /** How far a jar lies off the first-order curve besides (80 %), as a share alive. */
  misfit: number;
  /** Share alive at the end of fermentation: 80 % interval for the next crop. */
  crop: Range;
  /** How many times more or fewer of its cells may be dead then, as the settings state it. */
  cropSpread: number;
  counts: number;
};

/** Loss at which all shapes agree: where the three together, before any count, lie nearest to the default. */
const PIVOT = 0.43;
/** How much steeper than first-order the shapes are, for each unit of `storageMisfit`. */
const STEEPER = [0, 5, 12];
/** Level of the share dead at the crop, in standard deviations of its prior. */
const CROPS = [-2.4, -1.6, -0.8, 0, 0.8, 1.6, 2.4];
/** What of the spread of crops lies between strains and houses, and what between crops of one strain. */
const CROP_LEVEL = 0.75;
const CROP_SCATTER = Math.sqrt(1 - CROP_LEVEL ** 2);
/** A normal deviate as three points with their weights (Gauss and Hermite). */
const DEVIATE = [
  [-Math.sqrt(3), 1 / 6],
  [0, 2 / 3],
  [Math.sqrt(3), 1 / 6],
] as const;
/** Losses over which the stated interval is to be right: from three days to five weeks in the cold. */
const LOSSES = [0.05, 0.12, 0.2, 0.3, 0.42, 0.55];
/** Steps of the share alive in which the mixture is added up. */
const BINS = 400;

/** One way the world may be: a shape of the curve and a level of the crop. */
type Way = { shape: number; crop: number; starts: readonly (readonly [number, number])[] };

/** Share surviving a loss on a curve of this shape; 1 is first-order. */
const survival = (loss: number, shape: number): number =>
  Math.exp(-(shape === 1 ? loss : PIVOT * (loss / PIVOT) ** shape));

function waysOf(s: Settings): Way[] {
  const dead = 1 - s.cropViability;
  const deadSd = Math.log(s.cropDeadSpread) / Z80;
  return STEEPER.flatMap((steeper) =>
    CROPS.map((crop) => ({
      shape: 1 + steeper * s.storageMisfit,
      crop,
      starts: DEVIATE.map(([z, weight]) => {
        const log = deadSd * (CROP_LEVEL * crop + CROP_SCATTER * z);
        return [1 - Math.min(0.5, dead * Math.exp(log)), weight] as const;
      }),
    })),
  );
}

/** How alive this strain's crops are in this house and how fast they die, from stained counts. */
export function learnLoss(counts: readonly ViabilityCount[], s: Settings): LearnedLoss {
  const sd = Math.max(Math.log(s.storageSpread) / Z80, 1e-3);
  const ways = waysOf(s);
  const weighed = ways.map((way) =>
    weigh(
      counts.map((count) => ({ jar: likelihood(count, way, sd), odd: anyShare(count) })),
      s.oddCountShare,
      -0.5 * way.crop ** 2,
    ),
  );
  const { level, next, weights } = mix(weighed);
  const own = factorRange(next, sd);
  if (counts.length === 0)
    return {
      times: { low: 1 / s.storageSpread, likely: 1, high: s.storageSpread },
      level: factorRange(level, sd),
      spread: s.storageSpread,
      misfit: s.storageMisfit,
      crop: cropViability(s),
      cropSpread: s.cropDeadSpread,
      counts: 0,
    };
  const crop = learnedCrop(ways, weighed, weights, s);
  const expected = LOSSES.map((loss) => mixture(loss, ways, weighed, weights, sd));
  const likely = nearestTimes(expected, crop.range.likely);
  const spread = Math.sqrt(own.high / own.low);
  const sure = calibrated(expected, crop.range, likely, spread, s);
  return {
    times: { low: likely / sure.spread, likely, high: likely * sure.spread },
    level: factorRange(level, sd),
    ...sure,
    crop: crop.range,
    cropSpread: crop.spread,
    counts: counts.length,
  };
}

/** Likelihood of a count at every point of the grid, relative to the best any share could do. */
function likelihood(count: ViabilityCount, way: Way, sd: number): Float64Array {
  const best = logBinomial(count, count.alive / count.total);
  const harvested = Math.exp(-(count.beerLoss ?? 0));
  return Float64Array.from({ length: POINTS }, (_, point) => {
    const left = survival(count.loss * Math.exp(logAt(point, sd)), way.shape);
    let sum = 0;
    for (const [start, weight] of way.starts)
      sum += weight * Math.exp(logBinomial(count, start * harvested * left) - best);
    return sum;
  });
}

/** The same for an odd jar or a slip of the pen, which may read any share alike (Laplace's approximation). */
function anyShare({ alive, total }: ViabilityCount): number {
  const p = alive / total;
  return WHOLE * Math.max(Math.sqrt((2 * Math.PI * p * (1 - p)) / total), 1 / (total + 1));
}

/** Logarithm of the binomial likelihood of a count at this share alive, less what no share changes. */
function logBinomial(count: ViabilityCount, share: number): number {
  const p = Math.min(1 - 1e-9, Math.max(1e-9, share));
  return count.alive * Math.log(p) + (count.total - count.alive) * Math.log1p(-p);
}

/** The share alive of the next crop: its logarithm of cells dead by mean and variance over the ways. */
function learnedCrop(
  ways: readonly Way[],
  weighed: readonly Weighed[],
  weights: readonly number[],
  s: Settings,
): { range: Range; spread: number } {
  let all = 0;
  let mean = 0;
  let square = 0;
  for (const [i, way] of ways.entries()) {
    const level = weighed[i]?.level ?? new Float64Array();
    const weight = (weights[i] ?? 0) * level.reduce((a, b) => a + b, 0);
    all += weight;
    mean += weight * way.crop;
    square += weight * way.crop ** 2;
  }
  mean /= all;
  const variance = Math.max(0, square / all - mean ** 2);
  const deadSd = Math.log(s.cropDeadSpread) / Z80;
  const likely = 1 - Math.min(0.5, (1 - s.cropViability) * Math.exp(deadSd * CROP_LEVEL * mean));
  const spread = Math.exp(
    Z80 * deadSd * Math.hypot(CROP_LEVEL * Math.sqrt(variance), CROP_SCATTER),
  );
  const own = { ...s, cropViability: likely, cropDeadSpread: spread };
  return { range: cropViability(own), spread };
}

/** What the next sound jar is expected to show after this loss: weights over the share alive. */
function mixture(
  loss: number,
  ways: readonly Way[],
  weighed: readonly Weighed[],
  weights: readonly number[],
  sd: number,
): Float64Array {
  const shares = new Float64Array(BINS + 1);
  for (const [i, way] of ways.entries()) {
    const weight = weights[i] ?? 0;
    const next = weighed[i]?.next;
    if (weight < 1e-9 || !next) continue;
    for (let point = 0; point < POINTS; point++) {
      const left = survival(loss * Math.exp(logAt(point, sd)), way.shape);
      for (const [start, part] of way.starts) {
        const bin = Math.round(start * left * BINS);
        shares[bin] = at(shares, bin) + weight * part * at(next, point);
      }
    }
  }
  const all = shares.reduce((a, b) => a + b, 0);
  return shares.map((share) => share / all);
}

/** The first-order loss nearest to the middle of the mixture, as a multiple of the default. */
function nearestTimes(expected: readonly Float64Array[], start: number): number {
  const middles = expected.map((shares) => quantile(shares, 0.5) / BINS);
  let best = 1;
  let least = Infinity;
  for (let log = -3; log <= 3; log += 0.01) {
    const times = Math.exp(log);
    let off = 0;
    for (const [i, middle] of middles.entries())
      off += (middle - start * Math.exp(-times * (LOSSES[i] ?? 0))) ** 2;
    if (off < least) {
      least = off;
      best = times;
    }
  }
  return best;
}

/** The misfit, or else the narrower spread, with which the stated interval holds 80 % of the mixture. */
function calibrated(
  expected: readonly Float64Array[],
  start: Range,
  times: number,
  spread: number,
  s: Settings,
): { spread: number; misfit: number } {
  const held = (storageSpread: number, storageMisfit: number) => {
    const own = { ...s, storageSpread, storageMisfit };
    let sum = 0;
    for (const [i, shares] of expected.entries()) {
      const storeLoss = times * (LOSSES[i] ?? 0);
      sum += between(shares, viabilityRange({ start, beerLoss: 0, storeLoss }, own));
    }
    return sum / expected.length;
  };
  const least = (from: number, to: number, enough: (x: number) => boolean) => {
    let low = from;
    let high = to;
    for (let i = 0; i < 24; i++) {
      const middle = (low + high) / 2;
      if (enough(middle)) high = middle;
      else low = middle;
    }
    return high;
  };
  if (held(spread, 0) > 0.8)
    return { spread: least(1, spread, (narrower) => held(narrower, 0) > 0.8), misfit: 0 };
  return { spread, misfit: least(0, 0.5, (misfit) => held(spread, misfit) > 0.8) };
}

/** Share of the mixture that lies in an interval; each step's weight spans half a step either way. */
function between(shares: Float64Array, range: Range): number {
  const low = range.low * BINS;
  const high = range.high * BINS;
  let sum = 0;
  for (let bin = 0; bin < shares.length; bin++) {
    const inside = Math.min(bin + 0.5, high) - Math.max(bin - 0.5, low);
    if (inside > 0) sum += at(shares, bin) * Math.min(1, inside);
  }
  return sum;
}
