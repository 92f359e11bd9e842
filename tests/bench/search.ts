// Seasons of 24 to 1000 brews: how close a search comes to the best known in a given time, and to the proven bound.
import { boundOf } from '../../planner/bound/index.ts';
import { NO_FACTS } from '../../planner/index.ts';
import { dateOrderPlan } from '../../planner/search/baselines.ts';
import { compareScores } from '../../planner/search/score.ts';
import { compile } from '../../planner/timeline/problem.ts';
import { noteBest } from './best-known.ts';
import { GENERATED_TODAY, generatedSeason, nameOf, type Shape, shapeOf } from './generated.ts';
import { cpuSeconds, type Row } from './measure.ts';
import { costOf, judgeOf, middle, searchFor } from './timed.ts';

type Size = {
  brews: number;
  numbers: readonly number[];
  seconds: number;
  seeds: number;
  /** At most so many times the best known, from the table. */
  times: number | null;
  firstWhole: number | null;
  againstDateOrder: number | null;
  boundGap: number | null;
  boundVisits: number;
};

const NONE = { firstWhole: null, againstDateOrder: null, boundGap: null } as const;
const SIZES: readonly Size[] = [
  {
    brews: 24,
    numbers: [0, 3],
    seconds: 2,
    seeds: 10,
    times: 1.01,
    ...NONE,
    boundGap: 10,
    boundVisits: 6e8,
  },
  {
    brews: 60,
    numbers: [0],
    seconds: 10,
    seeds: 10,
    times: 1.02,
    ...NONE,
    againstDateOrder: 0.3,
    boundGap: 20,
    boundVisits: 1e9,
  },
  { brews: 120, numbers: [1], seconds: 15, seeds: 3, times: null, ...NONE, boundVisits: 1e9 },
  {
    brews: 250,
    numbers: [0],
    seconds: 30,
    seeds: 3,
    times: 1.05,
    ...NONE,
    firstWhole: 0.3,
    boundGap: 15,
    boundVisits: 1e9,
  },
  {
    brews: 1000,
    numbers: [1],
    seconds: 20,
    seeds: 1,
    times: null,
    ...NONE,
    firstWhole: 3,
    boundVisits: 0,
  },
];

const problemOf = (shape: Shape) =>
  compile(generatedSeason(shape), GENERATED_TODAY, NO_FACTS, [], null);

export function searchRows(quick: boolean): Row[] {
  const rows: Row[] = [];
  const stepSeconds: { brews: number; seconds: number }[] = [];
  for (const size of quick ? SIZES.slice(0, 2) : SIZES) {
    const seconds = quick ? size.seconds / 4 : size.seconds;
    for (const number of size.numbers) {
      const shape = shapeOf(size.brews, number);
      const name = nameOf(shape);
      const problem = problemOf(shape);
      const seeds = quick ? 2 : size.seeds;
      const runs = Array.from({ length: seeds }, (_, i) => searchFor(problem, i + 1, seconds));
      const best = runs.reduce((a, b) => (compareScores(b.score, a.score) < 0 ? b : a));
      const known =
        best.score.hard > 0
          ? null
          : noteBest(name, {
              leftOut: best.score.leftOut,
              costMinor: best.score.cost,
              by: `search, ${seconds} s`,
            });
      stepSeconds.push({
        brews: size.brews,
        seconds: middle(runs.map((run) => run.seconds / Math.max(1, run.steps))),
      });
      const note = `${seeds} seeds of ${seconds} CPU s, ${runs[0]?.steps ?? 0} steps`;
      const add = (what: string, value: number, unit: string, target: number | null, more = note) =>
        rows.push({ what: `${name}: ${what}`, value, unit, target, better: 'less', note: more });
      if (known) {
        const times = runs.map((run) => costOf(run.score, known.leftOut) / known.costMinor);
        const about = `${note}; best known ${known.costMinor} (${known.by})`;
        add('against the best known, middle seed', middle(times), 'times', size.times, about);
        add('against the best known, worst seed', Math.max(...times), 'times', null, about);
      }
      add('brews left out, best seed', best.score.leftOutCount, 'brews', null);
      add(
        'first plan with every brew',
        middle(runs.map((run) => run.firstWhole)),
        's',
        size.firstWhole,
      );
      const plain = judgeOf(problem).score(dateOrderPlan(problem));
      add(
        'cost against re-pitching in date order',
        best.score.cost / Math.max(1, plain.cost),
        'times',
        size.againstDateOrder,
        `the baseline leaves ${plain.leftOutCount} out`,
      );
      if (size.boundVisits > 0 && best.score.hard === 0) {
        const effort = { turns: 2000, visits: size.boundVisits / (quick ? 8 : 1), levels: 4 };
        const { result, seconds: took } = cpuSeconds(() =>
          boundOf(problem, judgeOf(problem), best.score, effort),
        );
        const gap = result ? (best.score.cost / Math.max(1, result.costMinor) - 1) * 100 : Infinity;
        add('above the proven bound', gap, '%', size.boundGap, `bound in ${took.toFixed(1)} CPU s`);
      }
    }
  }
  const first = stepSeconds[0];
  const last = stepSeconds.at(-1);
  if (first && last && last.brews > first.brews) {
    const growth = last.seconds / first.seconds;
    const nLogN = (n: number) => n * Math.log2(n);
    rows.push({
      what: `a step of ${last.brews} brews against one of ${first.brews}`,
      value: growth,
      unit: 'times',
      target: nLogN(last.brews) / nLogN(first.brews),
      better: 'less',
      note: 'the target is n log n',
    });
  }
  return rows;
}

/** Long runs for the book of the best known; not part of a plain `npm run bench`. */
export function longRows(): Row[] {
  for (const size of SIZES) {
    for (const number of size.numbers) {
      const shape = shapeOf(size.brews, number);
      const seconds = Math.min(600, size.seconds * 20);
      const { score } = searchFor(problemOf(shape), 99, seconds);
      if (score.hard > 0) continue;
      noteBest(nameOf(shape), {
        leftOut: score.leftOut,
        costMinor: score.cost,
        by: `search, ${seconds} s`,
      });
    }
  }
  return [];
}
