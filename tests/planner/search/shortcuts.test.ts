// What the search works out in passing against the whole truth, after every move: all that follows, and the score.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { House } from '../../../planner/model/index.ts';
import { RULES, type Rule } from '../../../planner/rules/index.ts';
import { construct, onlyFacts } from '../../../planner/search/construct.ts';
import { Desk } from '../../../planner/search/desk.ts';
import { MOVES } from '../../../planner/search/moves/index.ts';
import { ruinAndRecreate } from '../../../planner/search/moves/ruin.ts';
import { Random } from '../../../planner/search/random.ts';
import { Judge, type Score, WORST } from '../../../planner/search/score.ts';
import { compile } from '../../../planner/timeline/problem.ts';
import { copyDecisions, Timeline } from '../../../planner/timeline/timeline.ts';
import { unfold } from '../../../planner/timeline/unfold.ts';
import { seasons } from '../../builders/random-season.ts';

const NO_FACTS = {
  brewed: [],
  harvested: [],
  notBefore: [],
  begun: [],
  bought: [],
  goneJars: [],
  measured: [],
  passed: [],
  lostPacks: [],
};

/** What follows, a slot a brew. */
const BY_BREW = [
  'emptied',
  'free',
  'ready',
  'late',
  'harvestDay',
  'usableFrom',
  'crashed',
  'starterStart',
  'starterChill',
  'starterLitres',
  'useDay',
  'generation',
  'viability',
  'ageDays',
  'drawMl',
  'drawJars',
  'needB',
  'pitchedB',
  'packs',
  'packsFromHand',
  'delivery',
  'drawnEarly',
  'beerLoss',
  'cropMl',
] as const;
const BY_SOURCE = ['drawnMl', 'draws', 'jarsCut'] as const;
const BY_YEAST = ['keepMl', 'keepJars', 'keepViability'] as const;
const ONCE = ['orderCount', 'deliveryCount', 'shelfOver', 'turnsOver', 'startersOver'] as const;

/** The same decisions unfolded from nothing. */
function afresh(t: Timeline): Timeline {
  const full = new Timeline(t.problem);
  copyDecisions(t, full);
  unfold(full);
  return full;
}

/** Where the two differ, in words; nothing for brews that are left out and sources nobody draws from. */
function differences(t: Timeline, full: Timeline): string[] {
  const out: string[] = [];
  const note = (what: string, got: unknown, truth: unknown) => {
    if (got !== truth) out.push(`${what}: ${got} instead of ${truth}`);
  };
  for (const name of ONCE) note(name, t[name], full[name]);
  for (let b = 0; b < t.placed.length; b++) {
    if (!t.placed[b]) continue;
    for (const name of BY_BREW) note(`${name} of brew ${b}`, t[name][b], full[name][b]);
  }
  for (const name of BY_SOURCE) {
    for (let s = 0; s < t.draws.length; s++)
      note(`${name} of source ${s}`, t[name][s], full[name][s]);
  }
  for (const name of BY_YEAST) {
    for (let y = 0; y < t.keep.length; y++)
      note(`${name} of yeast ${y}`, t[name][y], full[name][y]);
  }
  return out;
}

function sumOf(judge: Judge, rule: Rule, t: Timeline): number {
  let sum = 0;
  const add = (amount: number) => {
    sum += amount;
  };
  if (rule.level === 'hard' || rule.level === 'left-out') rule.check(t, add);
  else {
    const mine = [...judge.hazards, ...judge.costs].find((w) => w.rule.id === rule.id);
    rule.check(t, mine?.weight ?? 0, add);
  }
  return sum;
}

/** Rule by rule, where a score that was worked out in passing goes astray. */
function byRule(judge: Judge, t: Timeline, full: Timeline): string {
  judge.joinHazards(full);
  return RULES.map((rule) => [rule.id, sumOf(judge, rule, t), sumOf(judge, rule, full)] as const)
    .filter(([, got, truth]) => got !== truth)
    .map(([id, got, truth]) => `${id}: ${got} instead of ${truth}`)
    .join('\n');
}

function hold(desk: Desk, t: Timeline, seen: Score, move: string): void {
  const full = afresh(t);
  const wrong = differences(t, full);
  if (wrong.length > 0) throw new Error(`after ${move}:\n${wrong.join('\n')}`);
  const truth = desk.judge.score(full);
  // a plan that is worse on an earlier level is thrown away before the rest is summed
  const cut = seen.cost === WORST.cost;
  const same = cut ? seen.hard === truth.hard : JSON.stringify(seen) === JSON.stringify(truth);
  if (!same) {
    throw new Error(
      `after ${move}: ${JSON.stringify(seen)} instead of ${JSON.stringify(truth)}\n${byRule(desk.judge, t, full)}`,
    );
  }
}

function walk(house: House, seed: number, moves: number, applied: Set<string>): void {
  const problem = compile(house, '2027-02-25', NO_FACTS, [], null);
  const judge = new Judge(problem);
  const random = new Random(seed);
  const reach = { slots: 4, judged: 2 };
  const built = construct(problem, judge, random, { slurry: true }, onlyFacts(problem), reach);
  // as on re-planning: with a plan to which brews can be taken back
  const home = afresh(built.current);
  const desk = new Desk(problem, judge, random, { slurry: true }, built.current, home);
  hold(desk, desk.current, desk.score, 'the first plan');
  for (let i = 0; i < moves; i++) {
    let seen: Score | null = null;
    let kept = false;
    const accept = (candidate: Score): boolean => {
      seen = candidate;
      // roam: also to dearer plans, but not to those that were not summed up
      kept = candidate.cost < WORST.cost && random.next() < 0.7;
      return kept;
    };
    const move = MOVES[random.below(MOVES.length + 1)];
    const name = move?.name ?? 'ruin';
    if (move) {
      const t = desk.begin();
      if (!move.apply(desk, t)) continue;
      desk.settle(accept);
    } else if (!ruinAndRecreate(desk, 2, accept)) continue;
    applied.add(name);
    if (seen !== null) hold(desk, kept ? desk.current : desk.trial, seen, name);
  }
}

test('after every move the shortcuts say what unfolding and judging everything says', () => {
  const applied = new Set<string>();
  fc.assert(
    fc.property(seasons, fc.nat({ max: 1_000_000 }), (house, seed) =>
      walk(house, seed, 60, applied),
    ),
    { numRuns: 25, seed: 20270302 },
  );
  expect([...applied].sort()).toEqual([...MOVES.map((m) => m.name), 'ruin'].sort());
});
