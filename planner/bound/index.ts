// A proven lower bound on the cost of a season: no sound plan that leaves out no more costs less.
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
  /** Slurry is told apart by stretches of days, each taken at its best; left out: only in seasons of more than 12 brews. */
  coarse?: boolean;
};

export type Bound = { costMinor: number; turns: number };

/** Rounds without which a bound is not worth the name. */
export const FEWEST_TURNS = 10;

/**
 * The bound on every plan that breaks no hard rule and leaves out priorities of no more than `leftOut` in all, or null
 * where the season is too large for the effort or no such plan exists. `cost`, of the plan at hand, only sets the pace.
 * Not for seasons that may keep parts of starters: see `boundingFor`.
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
  const net = buildNet(asker, groups, { ...effort, arcs });
  if (!net) return null;
  const forest = new Forest(net, at.leftOut, MOST_CUTS);
  const found = branch(forest, at.cost, effort.turns, effort.visits);
  if (!Number.isFinite(found.value)) return null;
  return { costMinor: wholeMinor(found.value), turns: found.turns };
}

export const MOST_CUTS = 200;
/** Sums of floating numbers may be off by far less than this. */
const ROUNDING = 0.01;

/** Whole minor units that no plan is below; never a negative zero. */
export const wholeMinor = (value: number): number => Math.ceil(value - ROUNDING) + 0;
