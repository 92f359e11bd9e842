// Raises the prices until the bound hardly rises any more: a subgradient ascent, the same on every machine.
import type { Relaxation } from './relax.ts';
import { Rings } from './rings.ts';

export type Climb = {
  value: number;
  prices: Float64Array;
  turns: number;
  /** Averages over the rounds, by brew: its day, the square of its day, how often it was left out. */
  day: Float64Array;
  square: Float64Array;
  out: Float64Array;
};

/**
 * Climbs from `prices` for so many turns. `aim`: the cost of the plan at hand, which no bound passes; it sets the length of
 * the steps. `told` is given the best value after each turn and stops the climb by returning true.
 */
export function climb(
  relaxation: Relaxation,
  prices: Float64Array,
  aim: number,
  turns: number,
  told?: (value: number, turn: number) => boolean,
): Climb {
  const { at } = relaxation;
  const current = prices.slice();
  const best = prices.slice();
  const slope = new Float64Array(at.count);
  const way = new Float64Array(at.count);
  const rings = new Rings(relaxation);
  const brews = relaxation.net.brews;
  const day = new Float64Array(brews);
  const square = new Float64Array(brews);
  const out = new Float64Array(brews);
  let bestValue = -Infinity;
  let pace = START_PACE;
  let idle = 0;
  let turn = 0;
  for (; turn < turns; turn++) {
    const value = relaxation.value(current, slope);
    if (value > bestValue) {
      if (value > bestValue + Math.abs(bestValue) * 1e-5) idle = 0;
      bestValue = value;
      best.set(current);
    } else idle++;
    if (told?.(bestValue, turn) || value === Infinity || bestValue >= aim - 0.5) break;
    rings.note();
    const share = Math.max(RENEWED, 1 / (turn + 1));
    for (let c = 0; c < brews; c++) {
      const node = relaxation.node[c] as number;
      const gone = node < 0;
      out[c] = (out[c] as number) * (1 - share) + (gone ? share : 0);
      if (gone) continue;
      const d = relaxation.net.nodeDay[node] as number;
      day[c] = (day[c] as number) * (1 - share) + d * share;
      square[c] = (square[c] as number) * (1 - share) + d * d * share;
    }
    if (turn % CUT_EVERY === CUT_EVERY - 1 && rings.cut() > 0) idle = 0;
    if (idle >= PATIENCE) {
      idle = 0;
      pace *= 0.7;
      if (pace < LEAST_PACE) break;
      current.set(best);
      way.fill(0);
      continue;
    }
    let norm = 0;
    const used = at.cuts + relaxation.cuts.length;
    for (let i = 0; i < used; i++) {
      let s = slope[i] as number;
      // a price at zero that wants to fall stays
      if (s < 0 && current[i] === 0) s = 0;
      const w = s + KEPT * (way[i] as number);
      way[i] = w;
      norm += w * w;
    }
    if (norm === 0) break;
    const step = (pace * Math.max(1, aim - value)) / norm;
    for (let i = 0; i < used; i++) {
      const next = (current[i] as number) + step * (way[i] as number);
      current[i] = Math.max(next, 0);
    }
  }
  return { value: bestValue, prices: best, turns: turn, day, square, out };
}

const START_PACE = 1;
const LEAST_PACE = 1e-3;
const PATIENCE = 25;
const CUT_EVERY = 10;
/** Share of each average that a round renews at least. */
const RENEWED = 0.05;
/** Share of the last direction that is kept in the next. */
const KEPT = 0.7;
