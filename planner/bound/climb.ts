// Raises the prices until the bound hardly rises any more: a subgradient ascent, the same on every machine.
import type { Cut, Relaxation } from './relax.ts';

export type Climb = { value: number; prices: Float64Array; turns: number };

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
    if (turn % CUT_EVERY === CUT_EVERY - 1) addCuts(relaxation);
    if (idle >= PATIENCE) {
      idle = 0;
      pace *= 0.6;
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
  return { value: bestValue, prices: best, turns: turn };
}

const START_PACE = 1;
const LEAST_PACE = 1e-3;
const PATIENCE = 12;
const CUT_EVERY = 4;
/** Share of the last direction that is kept in the next. */
const KEPT = 0.6;

/** Brews that feed each other in a ring stand for a cut: one of them at least is fed from outside. */
function addCuts(r: Relaxation): void {
  const { net } = r;
  const mark = new Int32Array(net.brews).fill(-1);
  for (let c = 0; c < net.brews; c++) {
    let b = c;
    while (b >= 0 && mark[b] === -1) {
      mark[b] = c;
      b = giverOf(r, b);
    }
    if (b < 0 || mark[b] !== c) continue;
    const inside = new Uint8Array(net.brews);
    let priority = 0;
    for (let i = b; ; ) {
      inside[i] = 1;
      priority += net.priority[i] as number;
      i = giverOf(r, i);
      if (i === b || i < 0) break;
    }
    addCut(r, { inside }, priority);
  }
}

function addCut(r: Relaxation, cut: Cut, priority: number): void {
  // where all of them may be left out, none needs to be fed
  if (r.cuts.length >= r.mostCuts || priority <= r.mayLeave) return;
  const same = r.cuts.some((known) => known.inside.every((is, i) => is === cut.inside[i]));
  if (!same) r.cuts.push(cut);
}

function giverOf(r: Relaxation, c: number): number {
  const arc = r.arc[c] as number;
  return arc < 0 ? -1 : r.giverOf(r.net.arcLink[arc] as number);
}
