// Pure scheduling: one tank, ample yeast, only lateness priced. The classic single machine with weighted tardiness.
//
// Cases by the recipe of Potts & Van Wassenhove, Operations Research 33 (1985): processing times 1–100, weights 1–10, due dates
// uniform in P·(1 − TF − RDD/2) … P·(1 − TF + RDD/2), with RDD and TF of 0.2 … 1.0. Small ones are solved exactly here by dynamic
// programming over subsets; for larger ones the reference is a plain local search on orders, which knows nothing of beer.
import { NO_FACTS } from '../../planner/index.ts';
import { House } from '../../planner/model/index.ts';
import { compile } from '../../planner/timeline/problem.ts';
import { dice } from '../outside/highs/small-season.ts';
import type { Row } from './measure.ts';
import { middle, searchFor } from './timed.ts';

export type Job = { days: number; weight: number; due: number };

export function jobsOf(count: number, rdd: number, tf: number, seed: number): Job[] {
  const roll = dice(seed);
  const whole = (low: number, high: number) => low + Math.floor(roll() * (high - low + 1));
  const days = Array.from({ length: count }, () => whole(1, 100));
  const all = days.reduce((sum, d) => sum + d, 0);
  const low = Math.round(all * (1 - tf - rdd / 2));
  const high = Math.round(all * (1 - tf + rdd / 2));
  return days.map((d) => ({ days: d, weight: whole(1, 10), due: Math.max(0, whole(low, high)) }));
}

const tardiness = (jobs: readonly Job[], order: readonly number[]): number => {
  let now = 0;
  let sum = 0;
  for (const j of order) {
    const { days, weight, due } = jobs[j] as Job;
    now += days;
    sum += weight * Math.max(0, now - due);
  }
  return sum;
};

/** The least weighted tardiness, by dynamic programming over subsets; for about 16 jobs at most. */
export function leastTardiness(jobs: readonly Job[]): number {
  const n = jobs.length;
  const best = new Float64Array(1 << n).fill(Infinity);
  best[0] = 0;
  for (let set = 0; set < 1 << n; set++) {
    let now = 0;
    for (let j = 0; j < n; j++) if (set & (1 << j)) now += (jobs[j] as Job).days;
    for (let j = 0; j < n; j++) {
      if (set & (1 << j)) continue;
      const { days, weight, due } = jobs[j] as Job;
      const cost = (best[set] as number) + weight * Math.max(0, now + days - due);
      if (cost < (best[set | (1 << j)] as number)) best[set | (1 << j)] = cost;
    }
  }
  return best[(1 << n) - 1] as number;
}

/** A plain search on orders: descent by moving one job or swapping two, from many kicked starts. */
export function searchedTardiness(jobs: readonly Job[], seed: number, kicks: number): number {
  const roll = dice(seed);
  const n = jobs.length;
  let order = jobs.map((_, j) => j).sort((a, b) => (jobs[a] as Job).due - (jobs[b] as Job).due);
  let cost = descend(jobs, order);
  let best = cost;
  for (let kick = 0; kick < kicks && best > 0; kick++) {
    const tried = [...order];
    for (let i = 0; i < 4; i++) {
      const [job] = tried.splice(Math.floor(roll() * n), 1);
      tried.splice(Math.floor(roll() * n), 0, job as number);
    }
    const found = descend(jobs, tried);
    if (found <= cost) {
      order = tried;
      cost = found;
    }
    best = Math.min(best, cost);
  }
  return best;
}

function descend(jobs: readonly Job[], order: number[]): number {
  let cost = tardiness(jobs, order);
  for (let better = true; better; ) {
    better = false;
    for (let i = 0; i < order.length; i++) {
      for (let j = 0; j < order.length; j++) {
        if (i === j) continue;
        for (const swap of [true, false]) {
          const tried = [...order];
          if (swap) {
            if (j < i) continue;
            tried[i] = order[j] as number;
            tried[j] = order[i] as number;
          } else {
            const [job] = tried.splice(i, 1);
            tried.splice(j, 0, job as number);
          }
          const found = tardiness(jobs, tried);
          if (found < cost) {
            cost = found;
            order.splice(0, order.length, ...tried);
            better = true;
          }
        }
      }
    }
  }
  return cost;
}

const FIRST = Date.UTC(2027, 0, 1);
const iso = (day: number): string => new Date(FIRST + day * 86_400_000).toISOString().slice(0, 10);
const EVERY_DAY = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'] as const;

/** The same as a season: a job is a brew in the only tank, its weight the priority, a day late one unit. */
export function asSeason(jobs: readonly Job[]): House {
  const all = jobs.reduce((sum, job) => sum + job.days, 0);
  const nothing = {
    harvestMinutes: 0,
    jarMinutes: 0,
    checkMinutes: 0,
    starterMinutes: 0,
    endJarValue: 0,
    maxLateDays: 10_000,
    dryExpiryDays: 4000,
    dryLossPerDay: 0,
  };
  return House.parse({
    name: 'One tank',
    kind: 'home',
    timeZone: 'Etc/UTC',
    currency: 'JPY',
    from: iso(0),
    to: iso(all + 1),
    brewDays: EVERY_DAY,
    workDays: EVERY_DAY,
    brewsPerDay: 1,
    orderLeadDays: 0,
    packAgeOnArrivalDays: 0,
    deliveryCost: 0,
    store: { tempC: 3, maxJars: 0, jarMl: 500, settleDays: 2 },
    starterGear: { vessels: 0, maxLitres: 0, stirred: false },
    rules: nothing,
    weights: { lateness: 1, 'pitch-risk': 0, 'over-pitch': 0, freshness: 0 },
    tanks: [
      {
        tank: 'T',
        minFillL: 1,
        maxFillL: 30,
        minC: 0,
        maxC: 30,
        turnaroundDays: 0,
        bottomOutlet: false,
      },
    ],
    yeasts: [
      {
        yeast: 'Ample',
        kind: 'ale',
        form: 'dry',
        nature: 'clean',
        packCellsB: 1000,
        packPrice: 0,
        packsOnHand: 0,
        minC: 10,
        maxC: 25,
        flocculation: 'high',
      },
    ],
    brews: jobs.map((job, j) => ({
      brew: `Job ${j + 1}`,
      yeasts: ['Ample'],
      volumeL: 20,
      og: 1.045,
      fg: 1.011,
      ebc: 10,
      ibu: 20,
      fermentC: 18,
      tankDays: job.days,
      conditionDays: 0,
      readyBy: iso(job.due),
      priority: job.weight,
      value: 0,
    })),
  });
}

const GRID = [0.2, 0.4, 0.6, 0.8, 1] as const;

/** Gap in % of our cost over a reference; both may be 0. */
const gap = (ours: number, best: number): number => (100 * (ours - best)) / Math.max(1, best);

function run(jobs: readonly Job[], seconds: number): number {
  const problem = compile(asSeason(jobs), iso(0), NO_FACTS, [], null);
  const { score } = searchFor(problem, 1, seconds);
  return score.hard > 0 || score.leftOutCount > 0 ? Infinity : score.cost;
}

export function schedulingRows(quick: boolean): Row[] {
  const rows: Row[] = [];
  const cases = (count: number, most: number) => {
    const all = GRID.flatMap((rdd, r) =>
      GRID.map((tf, t) => jobsOf(count, rdd, tf, count * 100 + r * 5 + t)),
    );
    return all.filter((_, i) => i % Math.ceil(25 / most) === 0).slice(0, quick ? 2 : most);
  };
  const add = (what: string, value: number, unit: string, target: number | null, note: string) =>
    rows.push({
      what: `one tank: ${what}`,
      value,
      unit,
      target,
      better: unit === '% of cases' ? 'more' : 'less',
      note,
    });
  const small = cases(12, 13).map((jobs) => ({
    ours: run(jobs, 1),
    best: leastTardiness(jobs),
  }));
  const equal = small.filter(({ ours, best }) => ours === best).length;
  add(
    '12 brews at the optimum in 1 s',
    (100 * equal) / small.length,
    '% of cases',
    100,
    `${equal} of ${small.length}, exact by dynamic programming`,
  );
  for (const { count, seconds, most } of [
    { count: 40, seconds: 2, most: 13 },
    { count: 100, seconds: 5, most: 6 },
  ]) {
    const taken = cases(count, most);
    const gaps = taken.map((jobs) => {
      const best = searchedTardiness(jobs, 1, count > 50 ? 3 : 40);
      return gap(run(jobs, seconds), best);
    });
    const fits = gaps.filter(Number.isFinite);
    const met = gaps.filter((g) => g <= 0).length;
    const note = `${taken.length} cases of ${seconds} CPU s against a plain search on orders; ${gaps.length - fits.length} leave a brew out`;
    if (count === 40)
      add('40 brews at the best known in 2 s', (100 * met) / gaps.length, '% of cases', 100, note);
    add(
      `${count} brews, mean gap`,
      fits.reduce((sum, g) => sum + g, 0) / Math.max(1, fits.length),
      '%',
      count === 100 ? 0.05 : null,
      note,
    );
    add(`${count} brews, middle gap`, middle(fits), '%', null, note);
  }
  return rows;
}
