// Raises the prices until the bound hardly rises any more: a subgradient ascent, the same on every machine.
import type { Forest } from './forest.ts';
import { Rings } from './rings.ts';

export type Climb = {
  value: number;
  prices: Float64Array;
  turns: number;
  /** Averages over the rounds, by brew: how often it stood, its day, the square of its day, how often it was left out. */
  seen: Float64Array;
  day: Float64Array;
  square: Float64Array;
  out: Float64Array;
};

/**
 * Climbs from `prices` for so many turns. `aim`: the cost of the plan at hand, which no bound passes; it sets the length of
 * the steps. `told` is given the best value after each turn and stops the climb by returning true.
 */
export function climb(
  forest: Forest,
  prices: Float64Array,
  aim: number,
  turns: number,
  told?: (value: number, turn: number) => boolean,
): Climb {
  const { at } = forest;
  const current = prices.slice();
  const best = prices.slice();
  const slope = new Float64Array(at.count);
  const way = new Float64Array(at.count);
  const rings = new Rings(forest);
  const brews = forest.net.brews;
  const day = new Float64Array(brews);
  const square = new Float64Array(brews);
  const out = new Float64Array(brews);
  const seen = new Float64Array(brews);
  // the prices of brews come first, and they alone may fall below zero
  const free = brews;
  let bestValue = -Infinity;
  let reach = 0;
  let idle = 0;
  let turn = 0;
  for (; turn < turns; turn++) {
    const value = forest.value(current, slope);
    if (value > bestValue) {
      if (turn === 0) reach = Math.max(1, aim - value) * FIRST_REACH;
      else if (value > bestValue + reach * ENOUGH) idle = 0;
      bestValue = value;
      best.set(current);
    } else idle++;
    if (told?.(bestValue, turn) || value === Infinity || bestValue >= aim - 0.5) break;
    rings.note();
    const share = Math.max(RENEWED, 1 / (turn + 1));
    for (let c = 0; c < brews; c++) {
      out[c] = (out[c] as number) * (1 - share) + (forest.gone[c] as number) * share;
      seen[c] = (seen[c] as number) * (1 - share) + (forest.seen[c] as number) * share;
      day[c] = (day[c] as number) * (1 - share) + (forest.seenDay[c] as number) * share;
      square[c] = (square[c] as number) * (1 - share) + (forest.seenSquare[c] as number) * share;
    }
    if (turn % CUT_EVERY === CUT_EVERY - 1 && rings.cut() > 0) idle = 0;
    if (idle >= PATIENCE) {
      idle = 0;
      reach *= 0.6;
      if (reach < LEAST_REACH) break;
      current.set(best);
      way.fill(0);
      continue;
    }
    let norm = 0;
    const used = at.cuts + forest.cuts.length;
    for (let i = 0; i < used; i++) {
      let s = slope[i] as number;
      // a price at zero that wants to fall stays
      if (s < 0 && i >= free && current[i] === 0) s = 0;
      const w = s + KEPT * (way[i] as number);
      way[i] = w;
      norm += w * w;
    }
    if (norm === 0) break;
    const step = (bestValue + reach - value) / norm;
    for (let i = 0; i < used; i++) {
      const next = (current[i] as number) + step * (way[i] as number);
      current[i] = i < free ? next : Math.max(next, 0);
    }
  }
  return { value: bestValue, prices: best, turns: turn, seen, day, square, out };
}

const FIRST_REACH = 0.2;
const LEAST_REACH = 0.5;
const ENOUGH = 0.05;
const PATIENCE = 15;
const CUT_EVERY = 10;
/** Share of each average that a round renews at least. */
const RENEWED = 0.05;
/** Share of the last direction that is kept in the next. */
const KEPT = 0.7;
