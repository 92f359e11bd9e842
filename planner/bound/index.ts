// A proven lower bound on the cost of a season: no sound plan that leaves out no more costs less.
import type { Plan } from '../model/index.ts';
import type { Judge, Score } from '../search/score.ts';
import type { Problem } from '../timeline/problem.ts';
import { Asker } from './ask.ts';
import { buildNet } from './build.ts';
import { Forest } from './forest.ts';

import { groupTanks } from './tanks.ts';
import { branch } from './tree.ts';

export type Effort = {
  /** Rounds of raising prices at most. */
  turns: number;
  /** Ways of feeding a brew that are looked at in all; a season with more of them than a few rounds allow gets no bound. */
  visits: number;
  /** Generations told apart, or 1 for none. */
  levels: number;
};

export type Bound = { costMinor: number; turns: number };

/** Rounds without which a bound is not worth the name. */
const FEWEST_TURNS = 10;

/**
 * The bound on every plan that breaks no hard rule and leaves out priorities of no more than `leftOut` in all, or null
 * where the season is too large for the effort or no such plan exists. `cost`, of the plan at hand, only sets the pace.
 */
export function boundOf(
  problem: Problem,
  judge: Judge,
  at: Pick<Score, 'leftOut' | 'cost'>,
  effort: Effort,
): Bound | null {
  const asker = new Asker(problem, judge);
  const groups = groupTanks(problem, asker.t);
  const arcs = Math.floor(effort.visits / effort.levels / FEWEST_TURNS);
  const net = buildNet(asker, groups, { levels: effort.levels, arcs });
  if (!net) return null;
  const forest = new Forest(net, at.leftOut, MOST_CUTS);
  const found = branch(forest, at.cost, effort.turns, effort.visits);
  if (!Number.isFinite(found.value)) return null;
  // no negative zero
  return { costMinor: Math.ceil(found.value - ROUNDING) + 0, turns: found.turns };
}

const MOST_CUTS = 200;
/** Sums of floating numbers may be off by far less than this. */
const ROUNDING = 0.01;

/** Steps a brew that a search must have been given for a bound to be worth its time beside it. */
const STEPS_A_BREW = 1000;
const VISITS_A_STEP = 300;
const LARGEST = 64;
/** Up to so many brews generations are told apart. */
const FEW = 8;

/** The effort that goes with a search of so many steps, or null for none. */
export function effortFor(brews: number, steps: number): Effort | null {
  if (brews > LARGEST || steps < brews * STEPS_A_BREW) return null;
  return { turns: 400, visits: steps * VISITS_A_STEP, levels: brews <= FEW ? 6 : 3 };
}

/** The bound as a plan states it: null where there is none to state. */
export function publishBound(
  problem: Problem,
  judge: Judge,
  score: Score,
  steps: number,
): Plan['bound'] {
  const effort = effortFor(problem.brews.length, steps);
  if (effort === null || score.hard > 0 || keepsStarters(problem)) return null;
  const bound = boundOf(problem, judge, score, effort);
  // a bound above a plan that is there would be wrong: nothing is claimed then
  if (bound === null || bound.costMinor > score.cost) return null;
  const { costMinor } = bound;
  const gap = score.cost - costMinor;
  const gapPercent = gap === 0 ? 0 : costMinor > 0 ? (gap / costMinor) * 100 : null;
  return { costMinor, gapPercent, says: inWords(gapPercent) };
}

/**
 * Its ways of feeding a brew are packs, jars and harvests. A part kept of a starter is none of them, and may be cheaper
 * than each: where there can be one nothing is claimed.
 */
function keepsStarters(problem: Problem): boolean {
  return problem.settings.keptStarterJars > 0 || problem.brews.some((brew) => brew.keptStarter);
}

function inWords(gapPercent: number | null): string {
  if (gapPercent === null) return 'How far this is above the best possible is not known.';
  if (gapPercent === 0) return 'No plan is cheaper: this is the best possible.';
  // rounded up: never closer than it is
  return `At most ${Math.ceil(gapPercent)} % above the best possible.`;
}
