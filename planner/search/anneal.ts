// Simulated annealing over the moves, with ruin and recreate now and then; keeps the best it ever stood on.
import type { Problem } from '../timeline/problem.ts';
import type { Timeline } from '../timeline/timeline.ts';
import type { Desk } from './desk.ts';
import { home } from './moves/home.ts';
import { MOVES } from './moves/index.ts';
import { keepStarter } from './moves/keep-starter.ts';
import { ruinAndRecreate } from './moves/ruin.ts';
import { compareScores, type Score } from './score.ts';

export type Watch = (stepsDone: number, best: Score, plan: Timeline) => boolean;

/** How the search cools: once, from a share of the price of a fresh pitch down to small change. */
const ROUNDS = 1;
const RUIN_EVERY = 150;
const HOT_SHARE = 0.45;
const WATCH_EVERY = 512;

/** Where a search from nothing begins, minor units: a share of what a brew costs, its fresh pitch at least. */
function heatOf(p: Problem, cost: number): number {
  let sum = 0;
  for (const brew of p.brews) {
    let least = Infinity;
    for (const y of brew.yeasts) {
      const yeast = p.yeasts[y];
      if (!yeast) continue;
      least = Math.min(least, Math.ceil(brew.needFreshB / yeast.row.packCellsB) * yeast.priceMinor);
    }
    if (least < Infinity) sum += least;
  }
  // or of what a brew costs where it begins, if lateness makes most of that
  const each = Math.max(sum, cost) / Math.max(1, p.brews.length);
  return Math.max(20, each * HOT_SHARE, p.minorPerMajor * 0.5);
}

/** Searches until the desk has judged `until` plans, or `watch` says stop. `heatShare`: how hot it begins, against a plan from nothing. */
export function anneal(
  desk: Desk,
  until: number,
  watch: Watch,
  heatShare = 1,
): { stopped: boolean } {
  const { problem, random } = desk;
  if (desk.free.length === 0) return { stopped: false };
  const start = desk.steps;
  const total = Math.max(1, until - start);
  const hot = heatShare * heatOf(problem, desk.score.cost);
  const cold = Math.max(0.5, hot / 200);
  const keeps = problem.settings.keptStarterJars > 0;
  const moves = MOVES.filter((m) => (desk.home || m !== home) && (keeps || m !== keepStarter));
  const shares = moves.reduce((sum, m) => sum + m.share, 0);
  let heat = hot;
  const accept = (candidate: Score, standing: Score): boolean => {
    if (candidate.hard !== standing.hard) return candidate.hard < standing.hard;
    if (candidate.leftOut !== standing.leftOut) return candidate.leftOut < standing.leftOut;
    if (candidate.leftOutCount !== standing.leftOutCount) {
      return candidate.leftOutCount < standing.leftOutCount;
    }
    const worse = candidate.cost - standing.cost;
    return worse <= desk.limit;
  };
  let sinceRuin = 0;
  let idle = 0;
  let nextWatch = start;
  let round = 0;
  while (desk.steps < until) {
    if (desk.steps >= nextWatch) {
      nextWatch = desk.steps + WATCH_EVERY;
      if (watch(desk.steps, desk.bestScore, desk.best)) return { stopped: true };
    }
    const done = (desk.steps - start) / total;
    const nowRound = Math.min(ROUNDS - 1, Math.floor(done * ROUNDS));
    if (nowRound !== round) {
      round = nowRound;
      desk.returnToBest();
    }
    const within = done * ROUNDS - nowRound;
    const roof = hot / (1 + round * 1.5);
    heat = roof * (cold / roof) ** within;
    desk.heat = heat;
    desk.limit = -heat * Math.log(random.next() + 1e-12);
    desk.slack = hot * 0.2;
    if (sinceRuin >= RUIN_EVERY) {
      sinceRuin = 0;
      if (!ruinAndRecreate(desk, 2 + random.below(7), accept)) desk.steps++;
      continue;
    }
    let pick = random.next() * shares;
    let move = moves[0];
    for (const m of moves) {
      move = m;
      pick -= m.share;
      if (pick < 0) break;
    }
    const t = desk.begin();
    if (!move?.apply(desk, t)) {
      // a move that finds nothing still uses up time; count it so that a stuck plan ends
      if (++idle % 4 === 0) desk.steps++;
      continue;
    }
    sinceRuin++;
    desk.settle(accept);
  }
  desk.returnToBest();
  return { stopped: false };
}

/** How many places a brew is tried in, and how many are judged, when the plan is polished. */
const POLISH = { slots: 40, judged: 10 };

/** Takes single brews and pairs out of the best plan and puts them back where they do best, until the budget is used. */
export function polish(desk: Desk, until: number, watch: Watch): { stopped: boolean } {
  if (desk.free.length === 0) return { stopped: false };
  desk.heat = 0;
  desk.limit = Infinity;
  let nextWatch = desk.steps;
  while (desk.steps < until) {
    if (desk.steps >= nextWatch) {
      nextWatch = desk.steps + WATCH_EVERY;
      if (watch(desk.steps, desk.bestScore, desk.best)) return { stopped: true };
    }
    const count = 1 + desk.random.below(2);
    const better = (a: Score, b: Score) => compareScores(a, b) <= 0;
    if (!ruinAndRecreate(desk, count, better, POLISH)) desk.steps++;
  }
  return { stopped: false };
}
