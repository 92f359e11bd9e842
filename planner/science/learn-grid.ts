// Bayes on a grid, shared by what is learnt of losses and of densities.
//
// Everything is worked out for the logarithm of a factor: how many times the default something is. It
// scatters normally from jar to jar around the strain's own level in this house; level and scatter are both
// learnt, and a jar may be odd altogether. Only sums, exponentials and logarithms are needed:
// docs/decisions/030-chance-in-the-planner.md.
import type { Range } from '../model/common.ts';

/** Grid of the logarithm, in standard deviations of the prior: −4 … 4. */
const STEP = 0.25;
const HALF = 16;
export const POINTS = 2 * HALF + 1;
/** Scatter from jar to jar as a share of the prior's whole standard deviation, each as likely. */
const SCATTERS = [0.25, 0.4, 0.55, 0.75];
/** An odd jar may lie this many standard deviations of the prior away. */
const ODD = 3;

/** Where on the axis of the logarithm a grid point lies, for a prior of this standard deviation. */
export const logAt = (point: number, sd: number): number => (point - HALF) * STEP * sd;

export const at = (values: Float64Array, i: number): number => values[i] ?? 0;

/** Normal weights over differences of grid points, for one standard deviation in grid units. */
function bell(sd: number): Float64Array {
  const values = new Float64Array(2 * POINTS - 1);
  for (let i = 0; i < values.length; i++) {
    const z = ((i - POINTS + 1) * STEP) / sd;
    values[i] = (Math.exp(-0.5 * z * z) / sd) * STEP;
  }
  return values;
}

const ODD_BELL = bell(ODD);
const BELLS = SCATTERS.map((scatter) => ({
  jars: bell(scatter),
  /** Grid points beyond which a jar's bell is nothing. */
  width: Math.ceil((6 * scatter) / STEP),
  prior: bell(Math.sqrt(1 - scatter * scatter)),
}));

/** Weight of `values` under a bell around point `m`, from one point to another. */
function around(
  values: Float64Array,
  bell: Float64Array,
  m: number,
  from = 0,
  to = POINTS - 1,
): number {
  let sum = 0;
  for (let point = from; point <= to; point++)
    sum += (values[point] as number) * (bell[point - m + POINTS - 1] as number);
  return sum;
}

/** First and last point at which a likelihood is more than nothing. */
function reach(jar: Float64Array): { from: number; to: number } {
  return {
    from: Math.max(
      0,
      jar.findIndex((here) => here > 1e-12),
    ),
    to: jar.findLastIndex((here) => here > 1e-12),
  };
}

/** What the counts say of one way the world may be: weights over the grid, on a common scale. */
export type Weighed = {
  /** Logarithm of the largest weight; the weights below are relative to it. */
  log: number;
  /** Weight of the strain's own level at each point. */
  level: Float64Array;
  /** Weight of the next sound jar at each point. */
  next: Float64Array;
};

/** What one count says: its likelihood at every point for a sound jar, and altogether for an odd one. */
export type Said = { jar: Float64Array; odd: number };

/** Weight of a likelihood under a bell as wide as odd jars are: for counts that any factor could give. */
export const oddAmong = (jar: Float64Array): number => around(jar, ODD_BELL, HALF);

/** What a likelihood of 1 at every point weighs. */
export const WHOLE = Math.sqrt(2 * Math.PI);

/**
 * Weighs one way the world may be from what the counts say; `odd` is the share of counts that are odd jars or
 * slips of the pen, `logPrior` how likely that way was before.
 */
export function weigh(said: readonly Said[], odd: number, logPrior: number): Weighed {
  const seen = said.map((count) => ({
    jar: count.jar,
    odd: odd * count.odd,
    ...reach(count.jar),
  }));
  const cases = BELLS.map(({ jars, width, prior }) => {
    const logs = new Float64Array(POINTS);
    for (let m = 0; m < POINTS; m++) {
      let log = logPrior + Math.log(at(prior, m - HALF + POINTS - 1) + 1e-300);
      for (const count of seen) {
        const from = Math.max(count.from, m - width);
        const to = Math.min(count.to, m + width);
        log += Math.log((1 - odd) * around(count.jar, jars, m, from, to) + count.odd + 1e-300);
      }
      logs[m] = log;
    }
    return { jars, logs };
  });
  const log = cases.reduce((most, one) => Math.max(most, ...one.logs), -Infinity);
  const level = new Float64Array(POINTS);
  const next = new Float64Array(POINTS);
  for (const { jars, logs } of cases)
    for (let m = 0; m < POINTS; m++) {
      const weight = Math.exp(at(logs, m) - log);
      if (weight < 1e-12) continue;
      level[m] = at(level, m) + weight;
      for (let point = 0; point < POINTS; point++)
        next[point] = at(next, point) + weight * at(jars, point - m + POINTS - 1);
    }
  return { log, level, next };
}

/** Adds up several ways the world may be, each at its own weight; the weights come back beside the sums. */
export function mix(ways: readonly Weighed[]): {
  level: Float64Array;
  next: Float64Array;
  weights: number[];
} {
  const most = ways.reduce((a, way) => Math.max(a, way.log), -Infinity);
  const level = new Float64Array(POINTS);
  const next = new Float64Array(POINTS);
  const weights = ways.map((way) => Math.exp(way.log - most));
  for (const [i, way] of ways.entries())
    for (let point = 0; point < POINTS; point++) {
      const weight = weights[i] ?? 0;
      level[point] = at(level, point) + weight * at(way.level, point);
      next[point] = at(next, point) + weight * at(way.next, point);
    }
  return { level, next, weights };
}

/** 80 % interval of the factor from weights over the grid. */
export function factorRange(density: Float64Array, sd: number): Range {
  const share = (part: number) => Math.exp(logAt(quantile(density, part), sd));
  return { low: share(0.1), likely: share(0.5), high: share(0.9) };
}

/** Position below which this share of the weight lies; a point's weight spans half a step either way. */
export function quantile(density: Float64Array, share: number): number {
  const all = density.reduce((a, b) => a + b, 0);
  let below = 0;
  for (let point = 0; point < density.length; point++) {
    const here = at(density, point) / all;
    if (below + here >= share && here > 0) return point - 0.5 + (share - below) / here;
    below += here;
  }
  return density.length - 1;
}
