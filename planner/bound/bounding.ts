// The bound beside a search: a first one while it still goes on, a closer one at its end.
import type { Plan } from '../model/index.ts';
import type { Judge, Score } from '../search/score.ts';
import type { Problem } from '../timeline/problem.ts';
import { Asker } from './ask.ts';
import { buildNet } from './build.ts';
import { climb } from './climb.ts';
import { Forest } from './forest.ts';
import { type Effort, FEWEST_TURNS, MOST_CUTS, wholeMinor } from './index.ts';
import type { Net } from './net.ts';
import { opening } from './opening.ts';
import { groupTanks } from './tanks.ts';
import { branch, turnsFor } from './tree.ts';

/** Steps a brew that a search must have been given for a bound to be worth its time beside it. */
const STEPS_A_BREW = 500;
const VISITS_A_STEP = 300;
const LARGEST = 130;
/** Up to so many brews all generations are told apart. */
const FEW = 8;
/** Share of the effort that goes to the first bound. */
const EARLY = 0.4;

/** The effort that goes with a search of so many steps, or null for none. */
export function effortFor(brews: number, steps: number): Effort | null {
  if (brews === 0 || brews > LARGEST || steps < brews * STEPS_A_BREW) return null;
  return { turns: 400, visits: steps * VISITS_A_STEP, levels: brews <= FEW ? 6 : 3 };
}

/** The bound of a search of so many steps, or null where the effort is too small for one or the season holds what it does not know. */
export function boundingFor(problem: Problem, judge: Judge, steps: number): Bounding | null {
  const effort = effortFor(problem.brews.length, steps);
  return effort === null || keepsStarters(problem) ? null : new Bounding(problem, judge, effort);
}

/** Why a plan states no bound, in a sentence. */
export function whyNoBound(
  problem: Problem,
  score: Score,
  steps: number,
  stopped: boolean,
): string {
  const brews = problem.brews.length;
  const unknown = 'How far this is above the best possible is not known';
  if (score.hard > 0) return `${unknown}: a rule is broken, and a bound speaks of sound plans.`;
  if (stopped) return `${unknown}: planning was stopped before it was worked out.`;
  if (keepsStarters(problem)) return `${unknown} where a part of a starter may be kept.`;
  if (brews > LARGEST)
    return `${unknown}: it is worked out for up to ${LARGEST} brews, and these are ${brews}.`;
  if (effortFor(brews, steps) === null)
    return `${unknown}: it takes ${brews * STEPS_A_BREW} steps of planning or more, and these were ${steps}.`;
  return `${unknown}.`;
}

/**
 * The ways of feeding a brew are packs, jars and harvests. A part kept of a starter is none of them, and may be cheaper
 * than each: where there can be one nothing is claimed.
 */
function keepsStarters(problem: Problem): boolean {
  return problem.settings.keptStarterJars > 0 || problem.brews.some((brew) => brew.keptStarter);
}

export class Bounding {
  private net: Net | null = null;
  private begun = false;
  private forest: Forest | null = null;
  private prices: Float64Array | null = null;
  private least = -Infinity;

  constructor(
    private readonly problem: Problem,
    private readonly judge: Judge,
    private readonly effort: Effort,
  ) {}

  /** Works out a first bound, once, against the best plan so far. */
  early(best: Score): void {
    if (this.begun || best.hard > 0) return;
    const forest = this.forestFor(best.leftOut);
    if (!forest) return;
    const turns = Math.floor(turnsFor(forest.net, this.effort.visits) * EARLY);
    const most = Math.min(turns, this.effort.turns);
    const found = climb(forest, opening(forest), best.cost, Math.max(1, most));
    this.prices = found.prices;
    this.least = found.value;
  }

  /** The bound as far as it is known against this plan, in whole minor units; null: nothing is. */
  known(best: Score): number | null {
    if (this.forest?.mayLeave !== best.leftOut || !Number.isFinite(this.least)) return null;
    const minor = wholeMinor(this.least);
    return minor > best.cost ? null : minor;
  }

  /** The bound as a plan states it: null where there is none to state. */
  publish(score: Score): Plan['bound'] {
    if (score.hard > 0) return null;
    const first = this.begun && this.forest?.mayLeave === score.leftOut;
    const forest = this.forestFor(score.leftOut);
    if (!forest) return null;
    const { turns, visits } = this.effort;
    const left = visits * (first ? 1 - EARLY : 1);
    const from = first && this.prices ? this.prices : opening(forest);
    const found = branch(forest, score.cost, turns, left, from);
    this.least = Math.max(first ? this.least : -Infinity, found.value);
    const costMinor = this.known(score);
    // a bound above a plan that is there would be wrong: nothing is claimed then
    if (costMinor === null) return null;
    const gap = score.cost - costMinor;
    const gapPercent = gap === 0 ? 0 : costMinor > 0 ? (gap / costMinor) * 100 : null;
    return { costMinor, gapPercent, says: inWords(gapPercent) };
  }

  private forestFor(leftOut: number): Forest | null {
    if (!this.begun) {
      this.begun = true;
      const asker = new Asker(this.problem, this.judge);
      const { levels, visits } = this.effort;
      const arcs = Math.floor(visits / levels / FEWEST_TURNS);
      this.net = buildNet(asker, groupTanks(this.problem, asker.t), { levels, arcs });
    }
    if (!this.net) return null;
    if (this.forest?.mayLeave !== leftOut) this.forest = new Forest(this.net, leftOut, MOST_CUTS);
    return this.forest;
  }
}

function inWords(gapPercent: number | null): string {
  if (gapPercent === null) return 'How far this is above the best possible is not known.';
  if (gapPercent === 0) return 'No plan is cheaper: this is the best possible.';
  // rounded up: never closer than it is
  return `At most ${Math.ceil(gapPercent)} % above the best possible.`;
}
