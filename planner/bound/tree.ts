// Tightens the bound by cases: every plan brews a brew early, or late, or leaves it out; the bound is that of the worst case.
import { climb } from './climb.ts';
import type { Forest } from './forest.ts';
import type { Net } from './net.ts';
import { opening } from './opening.ts';

type Case = {
  value: number;
  prices: Float64Array;
  closed: Uint8Array;
  out: Uint8Array;
  /** What to tell apart next: a brew, and the last day that counts as early; -1: whether it is left out at all. */
  brew: number;
  day: number;
};

/** How many rounds so many visits are. */
export const turnsFor = (net: Net, visits: number): number =>
  Math.floor(visits / (net.arcCost.length + BESIDES));

/** Rounds for a case that begins from the prices of the one it is part of. */
const TURNS_A_CASE = 60;
/** What going through a round costs besides its arcs. */
const BESIDES = 2000;

/**
 * The least value over all cases, each case split as long as there is effort left: `turns` rounds for the whole, then
 * cases until so many arcs have been looked at in all. `aim`: cases that reach it need no splitting.
 */
export function branch(
  forest: Forest,
  aim: number,
  turns: number,
  visits: number,
  from: Float64Array = opening(forest),
): { value: number; turns: number } {
  let left = turnsFor(forest.net, visits);
  let spent = 0;
  let settled = Infinity;
  const open: Case[] = [];
  const look = (
    prices: Float64Array,
    closed: Uint8Array,
    out: Uint8Array,
    most: number,
    floor: number,
  ) => {
    forest.restrict(closed, out);
    const found = climb(forest, prices, aim, Math.max(1, Math.min(most, left)));
    left -= found.turns;
    spent += found.turns;
    // a part of a case is never worth less than the case
    const value = Math.max(found.value, floor);
    if (value === Infinity) return;
    const next = value < aim - 0.5 ? whatNext(forest, closed, out, found) : null;
    if (next) open.push({ value, prices: found.prices, closed, out, ...next });
    else settled = Math.min(settled, value);
  };
  look(from, forest.closed.slice(), forest.out.slice(), turns, -Infinity);
  while (open.length > 0 && left > TURNS_A_CASE) {
    let at = 0;
    for (let i = 1; i < open.length; i++) {
      if ((open[i] as Case).value < (open[at] as Case).value) at = i;
    }
    // what is settled below all that is open cannot be raised any more
    const worst = open[at] as Case;
    if (settled <= worst.value) break;
    open.splice(at, 1);
    for (const part of partsOf(forest, worst)) {
      look(worst.prices, part.closed, part.out, TURNS_A_CASE, worst.value);
    }
  }
  return {
    value: open.reduce((least, { value }) => Math.min(least, value), settled),
    turns: spent,
  };
}

/** The brew whose day, or whose place in the plan, the rounds were least agreed on. */
function whatNext(
  r: Forest,
  closed: Uint8Array,
  out: Uint8Array,
  averages: { seen: Float64Array; day: Float64Array; square: Float64Array; out: Float64Array },
): { brew: number; day: number } | null {
  let best: { brew: number; day: number } | null = null;
  let most = 0;
  for (let c = 0; c < r.net.brews; c++) {
    if (out[c] === 2) continue;
    const gone = averages.out[c] as number;
    if (out[c] === 1) {
      const unsure = UNSURE * gone * (1 - gone);
      if (unsure > most) {
        most = unsure;
        best = { brew: c, day: -1 };
      }
    }
    let first = Infinity;
    let last = -Infinity;
    for (let n = r.net.nodeStart[c] as number; n < (r.net.nodeStart[c + 1] as number); n++) {
      if (closed[n]) continue;
      first = Math.min(first, r.net.nodeDay[n] as number);
      last = Math.max(last, r.net.nodeDay[n] as number);
    }
    if (!(first < last)) continue;
    const there = Math.max(1e-6, averages.seen[c] as number);
    const mean = (averages.day[c] as number) / there;
    const spread = Math.max(0, (averages.square[c] as number) / there - mean * mean) * there;
    // where all are agreed any day that is still open will do
    const worth = spread + 1e-6;
    if (worth > most) {
      most = worth;
      best = { brew: c, day: Math.min(last - 1, Math.max(first, Math.floor(mean))) };
    }
  }
  return best;
}

/** How much not being agreed on leaving a brew out counts against days squared. */
const UNSURE = 400;

function partsOf(r: Forest, whole: Case): { closed: Uint8Array; out: Uint8Array }[] {
  const { brew, day, closed, out } = whole;
  const gone = out.slice();
  gone[brew] = 2;
  const stays = out.slice();
  stays[brew] = 0;
  if (day < 0) {
    return [
      { closed, out: gone },
      { closed, out: stays },
    ];
  }
  const early = closed.slice();
  const late = closed.slice();
  for (let n = r.net.nodeStart[brew] as number; n < (r.net.nodeStart[brew + 1] as number); n++) {
    if ((r.net.nodeDay[n] as number) > day) early[n] = 1;
    else late[n] = 1;
  }
  const placed = [
    { closed: early, out: stays },
    { closed: late, out: stays },
  ];
  return out[brew] === 1 ? [...placed, { closed, out: gone }] : placed;
}
