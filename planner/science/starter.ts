// What a starter gives from the cells it is begun with, and what it must be begun with.
//
// Still: White & Zainasheff, Yeast, Brewers Publications 2010: 100 billion in 0.5–20 L of 9 °P wort
// (1 L read at the source, the others from memory), turned into new cells per gram of extract by the
// inoculation rate. Stirred: K. Troester, braukaiser.com (from memory): about 1.4 billion new cells a
// gram up to 1.4 billion a gram at the start, falling in a straight line to none at 3.5.
import type { Settings } from '../model/settings.ts';

/** Extract in the litre of 9 °P wort behind the still table, g: 9 % of 1.0359 kg. */
const TABLE_G_PER_L = 93.23;

/** Litres and billion cells grown from 100 billion in the still table. */
const STILL_TABLE: readonly (readonly [litres: number, newB: number])[] = [
  [20, 500],
  [8, 269],
  [4, 176],
  [2, 105],
  [1.5, 81],
  [1, 52],
  [0.8, 38],
  [0.5, 12],
];

/** A growth curve as points: cells at the start and at the end, billion per gram of extract. */
type Curve = { readonly start: readonly number[]; readonly end: readonly number[] };

const STILL: Curve = stillCurve();

/** The still table per gram of extract, from nothing, down to where growth has come to nothing. */
function stillCurve(): Curve {
  const start = [0];
  const end = [0];
  for (const [litres, newB] of STILL_TABLE) {
    const grams = litres * TABLE_G_PER_L;
    start.push(100 / grams);
    end.push((100 + newB) / grams);
  }
  // Beyond the table the last two points are carried on until nothing grows.
  const n = start.length - 1;
  const x1 = start[n - 1] ?? 0;
  const x2 = start[n] ?? 0;
  const growth1 = (end[n - 1] ?? 0) - x1;
  const growth2 = (end[n] ?? 0) - x2;
  const none = x2 + (growth2 * (x2 - x1)) / (growth1 - growth2);
  start.push(none);
  end.push(none);
  return { start, end };
}

/** Troester's line with the house's yield per gram; the shape scales with it. */
const STIRRED_FULL_TO = 1.4;
const STIRRED_NONE_FROM = 3.5;

/** Grams of extract in a starter of `litres`. */
export function extractG(litres: number, s: Settings): number {
  return litres > 0 ? litres * s.starterGramsPerL : 0;
}

function stirredEnd(x: number, s: Settings): number {
  if (x >= STIRRED_NONE_FROM) return x;
  if (x <= STIRRED_FULL_TO) return x + s.starterStirredBPerG;
  return (
    x + (s.starterStirredBPerG * (STIRRED_NONE_FROM - x)) / (STIRRED_NONE_FROM - STIRRED_FULL_TO)
  );
}

/** Value at `x` on the broken line through `xs`, `ys` (xs rising from 0); beyond it, y = x. */
function along(x: number, xs: readonly number[], ys: readonly number[]): number {
  for (let i = 1; i < xs.length; i++) {
    const x2 = xs[i] ?? 0;
    if (x <= x2) {
      const x1 = xs[i - 1] ?? 0;
      const y1 = ys[i - 1] ?? 0;
      return y1 + (((ys[i] ?? 0) - y1) * (x - x1)) / (x2 - x1);
    }
  }
  return x;
}

/**
 * Living cells that a starter of `litres` ends with, billion, begun with `seedB`. Rises with the seed;
 * never more than the seed could become in one step (`starterMinSeedShare`), never less than the seed.
 */
export function starterGivesB(
  seedB: number,
  litres: number,
  stirred: boolean,
  s: Settings,
): number {
  if (!(seedB > 0)) return 0;
  const grams = extractG(litres, s);
  if (grams === 0) return seedB;
  const x = seedB / grams;
  const end = stirred ? stirredEnd(x, s) : along(x, STILL.start, STILL.end);
  return Math.max(seedB, Math.min(end * grams, seedB / s.starterMinSeedShare));
}

/**
 * Smallest seed, billion living cells, from which a starter of `litres` ends with `wantB`: at least
 * `starterMinSeedShare` of it. Infinity where so few litres grow nothing towards so many cells.
 */
export function starterSeedB(wantB: number, litres: number, stirred: boolean, s: Settings): number {
  if (!(wantB > 0)) return 0;
  const grams = extractG(litres, s);
  if (grams === 0) return Infinity;
  const y = wantB / grams;
  const seed = stirred ? stirredStart(y, s) : stillStart(y);
  return Math.max(seed * grams, wantB * s.starterMinSeedShare);
}

function stirredStart(y: number, s: Settings): number {
  if (y >= STIRRED_NONE_FROM) return Infinity;
  const full = s.starterStirredBPerG;
  if (y <= STIRRED_FULL_TO + full) return Math.max(0, y - full);
  const span = STIRRED_NONE_FROM - STIRRED_FULL_TO;
  return (y * span - full * STIRRED_NONE_FROM) / (span - full);
}

function stillStart(y: number): number {
  const most = STILL.end[STILL.end.length - 1] ?? 0;
  return y >= most ? Infinity : along(y, STILL.end, STILL.start);
}

/**
 * Share alive of a finished starter: what was dead in its seed is still in it, the rest is new and alive.
 * `seedAlive` is the share alive of the seed of `seedB` living cells.
 */
export function starterAlive(seedB: number, seedAlive: number, endB: number): number {
  if (!(seedAlive > 0) || !(endB > 0)) return 0;
  const dead = seedB / seedAlive - seedB;
  return endB / (endB + dead);
}

/** Days a starter grows: one, or two when it is more than half of what the largest vessel holds. */
export function starterGrowDays(litres: number, largestLitres: number): 1 | 2 {
  return litres > largestLitres / 2 ? 2 : 1;
}
