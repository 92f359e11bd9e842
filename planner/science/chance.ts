// The few laws of chance that counting and tasting need: normal, binomial, Wilson's interval.
//
// docs/decisions/030-chance-in-the-planner.md says why they stand here and not in a package; the tests hold each of
// them to a statistics package over its whole range.

/** Standard normal deviate that leaves 10 % on either side: the 80 % interval. */
export const Z80 = 1.2815515655446004;

/** Share of a standard normal below `x` (G. Marsaglia's series, J. Statistical Software 11(4), 2004). */
export function normalBelow(x: number): number {
  if (x > 9) return 1;
  if (x < -9) return 0;
  let sum = x;
  let term = x;
  for (let i = 3; ; i += 2) {
    term *= (x * x) / i;
    const next = sum + term;
    if (next === sum) break;
    sum = next;
  }
  return 0.5 + sum * Math.exp(-0.5 * x * x - 0.9189385332046728);
}

/** Logarithm of the number of ways to choose `k` of `n`. */
function logChoose(n: number, k: number): number {
  const few = Math.min(k, n - k);
  let sum = 0;
  for (let i = 1; i <= few; i++) sum += Math.log((n - few + i) / i);
  return sum;
}

/**
 * Probability of at least `k` successes in `n` trials of chance `p`, summed exactly over the shorter
 * tail. `n` and `k` are whole numbers, `p` between 0 and 1.
 */
export function binomialAtLeast(k: number, n: number, p: number): number {
  if (k <= 0) return 1;
  if (k > n || p <= 0) return 0;
  if (p >= 1) return 1;
  const odds = p / (1 - p);
  const upper = k > n * p;
  // Outwards from the edge the terms only shrink, so the sum loses nothing.
  let i = upper ? k : k - 1;
  let term = Math.exp(logChoose(n, i) + i * Math.log(p) + (n - i) * Math.log1p(-p));
  let sum = 0;
  while (i >= 0 && i <= n && term > 0) {
    sum += term;
    term *= upper ? ((n - i) / (i + 1)) * odds : i / (n - i + 1) / odds;
    i += upper ? 1 : -1;
  }
  return Math.min(1, upper ? sum : 1 - sum);
}

/**
 * Interval for a share from `hits` in `n` (E. B. Wilson, J. Am. Stat. Assoc. 22, 1927), at `z` normal
 * deviates. With nothing counted it is 0 to 1.
 */
export function wilson(hits: number, n: number, z: number = Z80): { low: number; high: number } {
  if (!(n > 0)) return { low: 0, high: 1 };
  const p = hits / n;
  const zz = (z * z) / n;
  const centre = (p + zz / 2) / (1 + zz);
  const half = (z * Math.sqrt((p * (1 - p)) / n + zz / (4 * n))) / (1 + zz);
  return {
    low: hits <= 0 ? 0 : Math.max(0, centre - half),
    high: hits >= n ? 1 : Math.min(1, centre + half),
  };
}

/** Student's t that leaves 10 % above it, for 1–10 degrees of freedom (any table of t). */
const T90 = [3.0777, 1.8856, 1.6377, 1.5332, 1.4759, 1.4398, 1.4149, 1.3968, 1.383, 1.3722];

/** Half-width, in standard errors, of the 80 % interval of a mean with `freedom` degrees of freedom. */
export function t80(freedom: number): number {
  const tabled = T90[Math.max(1, Math.floor(freedom)) - 1];
  if (tabled !== undefined) return tabled;
  // Cornish–Fisher from the normal deviate, good to 1e-4 from here on.
  const z = Z80;
  return (
    z + (z ** 3 + z) / (4 * freedom) + (5 * z ** 5 + 16 * z ** 3 + 3 * z) / (96 * freedom ** 2)
  );
}
