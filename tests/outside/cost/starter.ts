// The section on starters of docs/planner.md: what one gives, and what it must be begun with.
import type { Season } from './season.ts';

type Point = [x: number, y: number];

/** Litres, and billion cells that 100 billion grow in them without stirring. */
const STILL = [
  [20, 500],
  [8, 269],
  [4, 176],
  [2, 105],
  [1.5, 81],
  [1, 52],
  [0.8, 38],
  [0.5, 12],
];

/** Points of the starter line, billion cells per gram at the start and at the end. */
function line(x: Season): Point[] {
  if (x.house.starterGear.stirred) {
    const r = x.s('starterStirredBPerG');
    return [
      [0, r],
      [1.4, 1.4 + r],
      [3.5, 3.5],
    ];
  }
  const points = STILL.map(([l = 1, n = 0]): Point => [100 / (93.23 * l), (100 + n) / (93.23 * l)]);
  const [[x1, y1], [x2, y2]] = points.slice(-2) as [Point, Point];
  const end = x2 + ((y2 - x2) * (x2 - x1)) / (y1 - x1 - (y2 - x2));
  return [[0, 0], ...points, [end, end]];
}

/** The value at x of a broken line, or null past its end. */
function along(points: Point[], x: number): number | null {
  for (let i = 1; i < points.length; i++) {
    const [x1, y1] = points[i - 1] as Point;
    const [x2, y2] = points[i] as Point;
    if (x <= x2) return y1 + ((y2 - y1) * (x - x1)) / (x2 - x1);
  }
  return null;
}

export function starterGives(x: Season, seed: number, litres: number): number {
  const grams = litres * x.s('starterGramsPerL');
  const y = along(line(x), seed / grams) ?? seed / grams;
  return Math.max(seed, Math.min(y * grams, seed / x.s('starterMinSeedShare')));
}

export function starterSeed(x: Season, want: number, litres: number): number {
  const grams = litres * x.s('starterGramsPerL');
  const back = line(x).map(([a, b]): Point => [b, a]);
  const y = want / grams;
  const start = y < (back[0]?.[0] ?? 0) ? 0 : along(back, y);
  if (start === null) return Number.POSITIVE_INFINITY;
  return Math.max(start * grams, want * x.s('starterMinSeedShare'));
}
