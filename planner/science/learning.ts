// What a house's own counts say about its own yeast: how fast it dies and how thick it settles.
//
// Bayes on a grid. A jar ages some factor times as fast as the default says. The logarithm of that
// factor scatters normally from jar to jar around the strain's own level in this house; level and
// scatter are both learnt, and a jar may be odd altogether (`oddCountShare`). Before any count, level
// and scatter together are as wide as the setting says, so that no counts give the default unchanged.
// Only sums, exponentials and logarithms are needed: docs/decisions/030-chance-in-the-planner.md.
import type { Range } from '../model/common.ts';
import type { Settings } from '../model/settings.ts';
import { Z80 } from './chance.ts';
import { densityBPerMl, type Flocculation } from './slurry.ts';
import {
  beerLossPerDay,
  generationAgeing,
  misfitGrown,
  storageLossPerDay,
  strongAgeing,
} from './viability.ts';

/** A stained count of a jar, with what the default model says of that jar. */
export type ViabilityCount = {
  /** Living cells seen, and all cells seen. */
  alive: number;
  total: number;
  /** Rate × days summed by the default settings, on the beer and in the cold, ageing factors included. */
  loss: number;
};

/** A cell count of settled slurry, with what the default says of it. */
export type DensityCount = {
  billionPerMl: number;
  /** Standard error of the count as a share of it. */
  errorShare: number;
  /** Billion per mL by the default settings, for this flocculation and these days of settling. */
  expected: number;
};

/** How many times the default something is, in this house for this strain. */
export type Learned = {
  /** 80 % interval for the next jar; the default before any count is around 1. */
  times: Range;
  /** 80 % interval of the strain's own level, without the scatter from jar to jar. */
  level: Range;
  /** The interval for the next jar as one factor either way, as the settings state it. */
  spread: number;
  /** How far a jar lies off the curve besides (80 %), as a share alive; 0 for densities. */
  misfit: number;
  counts: number;
};

/** Grid of the logarithm, in standard deviations of the prior: −5 … 5. */
const STEP = 0.25;
const HALF = 20;
const POINTS = 2 * HALF + 1;
/** Scatter from jar to jar as a share of the prior's whole standard deviation, each as likely. */
const SCATTERS = [0.3, 0.45, 0.6, 0.8];
/** An odd jar may lie this many standard deviations of the prior away. */
const ODD = 3;

/** Normal densities over differences of grid points, for one standard deviation in grid units. */
function bell(sd: number): Float64Array {
  const values = new Float64Array(2 * POINTS - 1);
  for (let i = 0; i < values.length; i++) {
    const z = ((i - POINTS + 1) * STEP) / sd;
    values[i] = (Math.exp(-0.5 * z * z) / sd) * STEP;
  }
  return values;
}

const at = (values: Float64Array, i: number): number => values[i] ?? 0;

/**
 * The level and the next jar's factor from the likelihoods of the counts. `logLikelihood(i, u)` is count
 * i's at logarithm u of the factor; `priorSd` the standard deviation of the prior of that logarithm.
 */
function learn(
  counts: number,
  logLikelihood: (i: number, u: number, misfit: number) => number,
  priorSd: number,
  odd: number,
  misfits: readonly number[],
): Learned {
  const sd = Math.max(priorSd, 1e-3);
  const u = (point: number) => (point - HALF) * STEP * sd;
  const oddBell = bell(ODD);
  const level = new Float64Array(POINTS);
  const next = new Float64Array(POINTS);
  const likelihoods = misfits.map((misfit) =>
    Array.from({ length: counts }, (_, i) => {
      const jar = Float64Array.from({ length: POINTS }, (_, point) =>
        Math.exp(logLikelihood(i, u(point), misfit)),
      );
      const odd = jar.reduce((sum, at, point) => sum + at * (oddBell[point + HALF] ?? 0), 0);
      return { jar, odd };
    }),
  );
  const cases = SCATTERS.flatMap((scatter) =>
    misfits.map((misfit, which) => ({ scatter, misfit, seen: likelihoods[which] ?? [] })),
  );
  const posterior = cases.map(({ scatter, misfit, seen }) => {
    const jars = bell(scatter);
    const prior = bell(Math.sqrt(1 - scatter * scatter));
    const logs = new Float64Array(POINTS);
    for (let m = 0; m < POINTS; m++) {
      let log = Math.log(at(prior, m - HALF + POINTS - 1) + 1e-300);
      for (const likelihood of seen) {
        let sum = 0;
        for (let point = 0; point < POINTS; point++)
          sum += at(likelihood.jar, point) * at(jars, point - m + POINTS - 1);
        log += Math.log((1 - odd) * sum + odd * likelihood.odd + 1e-300);
      }
      logs[m] = log;
    }
    return { jars, logs, misfit };
  });
  const most = posterior.reduce((a, p) => Math.max(a, ...p.logs), -Infinity);
  let all = 0;
  let misfitSquared = 0;
  for (const { jars, logs, misfit } of posterior)
    for (let m = 0; m < POINTS; m++) {
      const weight = Math.exp(at(logs, m) - most);
      if (weight < 1e-12) continue;
      level[m] = at(level, m) + weight;
      all += weight;
      misfitSquared += weight * misfit ** 2;
      for (let point = 0; point < POINTS; point++)
        next[point] = at(next, point) + weight * at(jars, point - m + POINTS - 1);
    }
  const interval = (density: Float64Array): Range => ({
    low: Math.exp(u(quantile(density, 0.1))),
    likely: Math.exp(u(quantile(density, 0.5))),
    high: Math.exp(u(quantile(density, 0.9))),
  });
  const times = interval(next);
  return {
    times,
    level: interval(level),
    spread: Math.sqrt(times.high / times.low),
    misfit: Math.sqrt(misfitSquared / all),
    counts,
  };
}

/** Grid position below which this share of the weight lies; a point's weight spans half a step either way. */
function quantile(density: Float64Array, share: number): number {
  const all = density.reduce((a, b) => a + b, 0);
  let below = 0;
  for (let point = 0; point < POINTS; point++) {
    const here = at(density, point) / all;
    if (below + here >= share) return point - 0.5 + (share - below) / here;
    below += here;
  }
  return POINTS - 1;
}

/** A normal deviate as three points with their weights (Gauss and Hermite). */
const DEVIATE = [
  [-Math.sqrt(3), 1 / 6],
  [0, 2 / 3],
  [Math.sqrt(3), 1 / 6],
] as const;

/** How far jars may lie off the curve, as multiples of the setting, each as likely. */
const MISFITS = [0.15, 0.75, 1.5, 2.5];
/** How many times the default rate this strain dies at in this house, from stained counts. */
export function learnLoss(counts: readonly ViabilityCount[], s: Settings): Learned {
  const dead = 1 - s.cropViability;
  const deadSd = Math.log(s.cropDeadSpread) / Z80;
  const starts = DEVIATE.map(
    ([z, weight]) => [1 - Math.min(0.5, dead * Math.exp(z * deadSd)), weight] as const,
  );
  return learn(
    counts.length,
    (i, u, misfit) => {
      const count = counts[i];
      if (!count) return 0;
      const survival = Math.exp(-count.loss * Math.exp(u));
      const off = (misfit / Z80) * misfitGrown(count.loss);
      let sum = 0;
      // Relative to the best any share could do, so that nothing underflows.
      const best = logBinomial(count, count.alive / count.total);
      for (const [start, weight] of starts)
        for (const [z, share] of DEVIATE)
          sum += weight * share * Math.exp(logBinomial(count, start * survival + z * off) - best);
      return Math.log(sum + 1e-300);
    },
    Math.log(s.storageSpread) / Z80,
    s.oddCountShare,
    MISFITS.map((times) => times * s.storageMisfit),
  );
}

/** Logarithm of the binomial likelihood of a count at this share alive, less what no share changes. */
function logBinomial(count: ViabilityCount, share: number): number {
  const p = Math.min(1 - 1e-9, Math.max(1e-9, share));
  return count.alive * Math.log(p) + (count.total - count.alive) * Math.log1p(-p);
}

/** How many times the default density this strain settles to in this house, from cell counts. */
export function learnDensity(counts: readonly DensityCount[], s: Settings): Learned {
  return learn(
    counts.length,
    (i, u) => {
      const count = counts[i];
      if (!count) return 0;
      const off = (Math.log(count.billionPerMl / count.expected) - u) / count.errorShare;
      return -0.5 * off * off;
    },
    Math.log(s.densitySpread) / Z80,
    s.oddCountShare,
    [0],
  );
}

/**
 * The settings that hold for one strain once its counts are in: rates, density and their spreads
 * replaced by what was learnt. Without counts the settings come back as they are.
 */
export function learnedSettings(
  s: Settings,
  learned: { loss?: Learned | undefined; density?: Learned | undefined },
): Settings {
  const { loss, density } = learned;
  const own: Record<string, number> = {};
  if (loss && loss.counts > 0) {
    own.storageLossAt1C = s.storageLossAt1C * loss.times.likely;
    own.storageLossAt5C = s.storageLossAt5C * loss.times.likely;
    own.storageLossAt25C = s.storageLossAt25C * loss.times.likely;
    own.storageSpread = loss.spread;
    own.storageMisfit = loss.misfit;
  }
  if (density && density.counts > 0) {
    own.densityHigh = s.densityHigh * density.times.likely;
    own.densityMedium = s.densityMedium * density.times.likely;
    own.densityLow = s.densityLow * density.times.likely;
    own.densitySpread = density.spread;
  }
  return Object.keys(own).length === 0 ? s : { ...s, ...own };
}

/** One jar looked at under the microscope, as the house writes it down. */
export type SlurryCount = {
  /** Living and all cells seen; null where only the density was counted. */
  stain: { alive: number; total: number } | null;
  /** Cells per mL with its error; null where only the stain was counted. */
  cells: { billionPerMl: number; errorShare: number; settleDays: number } | null;
  flocculation: Flocculation;
  /** Days and temperature on the beer after fermentation, then in the cold. */
  beerDays: number;
  beerC: number;
  storeDays: number;
  storeC: number;
  /** Alcohol of the beer it came from, % by volume, and the generation of this slurry. */
  abvPercent: number;
  generation: number;
};

/** Everything the counts of one strain in one house teach, and the settings that follow for it. */
export function learnStrain(
  counts: readonly SlurryCount[],
  s: Settings,
): { loss: Learned; density: Learned; settings: Settings } {
  const loss = learnLoss(
    counts.flatMap((c) => {
      if (!c.stain) return [];
      const ageing = strongAgeing(c.abvPercent, s) * generationAgeing(c.generation, s);
      const onBeer = c.beerDays * beerLossPerDay(c.beerC, s);
      const cold = c.storeDays * storageLossPerDay(c.storeC, s);
      return [{ ...c.stain, loss: (onBeer + cold) * ageing }];
    }),
    s,
  );
  const density = learnDensity(
    counts.flatMap((c) => {
      if (!c.cells) return [];
      const { billionPerMl, errorShare, settleDays } = c.cells;
      const expected = densityBPerMl(c.flocculation, settleDays, s).likely;
      return [{ billionPerMl, errorShare, expected }];
    }),
    s,
  );
  return { loss, density, settings: learnedSettings(s, { loss, density }) };
}
