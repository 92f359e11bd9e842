// Seasons of 6, 9 and 12 brews: against `highs` on the same problem with the same time and ten times the time.
import { boundOf } from '../../planner/bound/index.ts';
import { NO_FACTS } from '../../planner/index.ts';
import { compareScores } from '../../planner/search/score.ts';
import { compile } from '../../planner/timeline/problem.ts';
import { type Optimum, solveWithin } from '../outside/highs/exact.ts';
import { SMALL_TODAY, type SmallShape, smallSeason } from '../outside/highs/small-season.ts';
import { cpuSeconds, type Row } from './measure.ts';
import { judgeOf, searchFor } from './timed.ts';

const SIZES = [
  { brews: 6, seasons: 12, proofSeconds: 1 },
  { brews: 9, seasons: 8, proofSeconds: 3 },
  { brews: 12, seasons: 6, proofSeconds: 10 },
] as const;
const SECONDS = 1;
/** Ways of feeding that the bound looks at in a second. */
const VISITS_A_SECOND = 5e7;

function shape(brews: number, number: number): SmallShape {
  return {
    seed: brews * 100 + number,
    brews,
    tanks: brews > 9 ? 3 : 2,
    strains: 1 + (number % 2),
    apartDays: number % 3 === 0 ? 5 : 8,
    deliveryCost: number % 2 === 0 ? 5 : 0,
    starters: number % 4 === 3,
    jars: number % 3,
    candidates: [2, 4],
    outlet: number % 2 === 1,
    nano: number % 5 === 4,
  };
}

const scoreOf = (o: Optimum) => ({
  hard: 0,
  leftOut: o.leftOutPriority,
  leftOutCount: o.leftOutCount,
  cost: o.costMinor,
});

export function smallRows(quick: boolean): Row[] {
  const rows: Row[] = [];
  for (const { brews, seasons, proofSeconds } of SIZES) {
    const count = quick ? 2 : seasons;
    let known = 0;
    let found = 0;
    let neverAbove = 0;
    let bySame = 0;
    let proven = 0;
    for (let number = 0; number < count; number++) {
      const house = smallSeason(shape(brews, number));
      const problem = compile(house, SMALL_TODAY, NO_FACTS, [], null);
      const ours = searchFor(problem, 1, SECONDS).score;
      const same = solveWithin(house, SMALL_TODAY, SECONDS);
      const longer = same?.proven ? same : solveWithin(house, SMALL_TODAY, 10 * SECONDS);
      if (same && compareScores(scoreOf(same), ours) < 0) bySame++;
      if (!longer || compareScores(ours, scoreOf(longer)) <= 0) neverAbove++;
      if (longer?.proven) {
        known++;
        if (compareScores(ours, scoreOf(longer)) === 0) found++;
      }
      const visits = proofSeconds * VISITS_A_SECOND;
      const { result } = cpuSeconds(() =>
        boundOf(problem, judgeOf(problem), ours, { turns: 3000, visits, levels: 4 }),
      );
      if (ours.hard === 0 && result && result.costMinor >= ours.cost) proven++;
    }
    const share = (what: string, part: number, of: number, target: number | null, note: string) =>
      rows.push({
        what: `${brews} brews: ${what}`,
        value: of === 0 ? Number.NaN : (100 * part) / of,
        unit: '%',
        target,
        better: 'more',
        note: `${part} of ${of}; ${note}`,
      });
    share('the optimum found in 1 s', found, known, 95, 'of those that highs proves in 10 s');
    share(
      'never above highs with 10 s',
      neverAbove,
      count,
      100,
      'highs as MIP of the same problem',
    );
    share('highs better in the same second', bySame, count, null, 'seasons in which it is');
    share(`proven within ${proofSeconds} s`, proven, count, 90, 'the bound meets the cost');
  }
  return rows;
}
