// The planner's own scoring of plans that come from elsewhere: of the exact model's optimum, and of every plan
// there is, one by one, where a season is small enough to try them all.
import { type House, NO_FACTS } from '../../../planner/index.ts';
import { compareScores, Judge, type Score, WORST } from '../../../planner/search/score.ts';
import { compile, FRESH, type Problem } from '../../../planner/timeline/problem.ts';
import { Timeline } from '../../../planner/timeline/timeline.ts';
import { unfold } from '../../../planner/timeline/unfold.ts';
import type { Optimum } from './exact.ts';
import { dayOf } from './reading.ts';

/** What the planner's rules say of the optimum. Throws if a harvest day of it is none that a plan can state. */
export function scoreOptimum(house: House, todayIso: string, optimum: Optimum): Score {
  const problem = compile(house, todayIso, NO_FACTS, [], null);
  const t = new Timeline(problem);
  const nJars = problem.jars.length;
  for (const slot of optimum.slots) {
    t.placed[slot.b] = 1;
    t.day[slot.b] = slot.day;
    t.tank[slot.b] = slot.tank;
    t.yeast[slot.b] = slot.yeast;
  }
  for (const { b, source, starterQuarters } of optimum.pitches) {
    t.starter[b] = starterQuarters;
    if (source.kind === 'jar') t.source[b] = source.jar;
    else t.source[b] = source.kind === 'crop' ? nJars + source.crop.b : FRESH;
  }
  for (const { yeast, from } of optimum.keeps) {
    t.keep[yeast] = 'jar' in from ? from.jar : nJars + from.crop.crop.b;
  }
  for (const { crop } of optimum.crops) {
    let k = -1;
    for (; k < 60; k++) {
      t.crop[crop.b] = k;
      unfold(t);
      if (t.harvestDay[crop.b] === crop.harvested) break;
    }
    if (k === 60) throw new RangeError(`no plan harvests brew ${crop.b} on day ${crop.harvested}`);
  }
  unfold(t);
  return new Judge(problem).score(t);
}

type Part = { placed: number; day: number; tank: number; yeast: number };
const OUT: Part = { placed: 0, day: 0, tank: 0, yeast: 0 };

/** The best of every plan that there is, tried one by one. For seasons of three brews at most. */
export function tryEveryPlan(house: House, todayIso: string): { best: Score; tried: number } {
  const problem = compile(house, todayIso, NO_FACTS, [], null);
  const t = new Timeline(problem);
  const judge = new Judge(problem);
  const nJars = problem.jars.length;
  const n = problem.brews.length;
  let best: Score = WORST;
  let tried = 0;
  const judged = () => {
    unfold(t);
    tried++;
    const score = judge.score(t);
    if (compareScores(score, best) < 0) best = score;
  };
  // the day of a crop matters only where somebody takes it
  const crops = (b: number): void => {
    if (b === n) {
      judged();
      return;
    }
    const taken = t.keep.includes(nJars + b) || t.source.includes(nJars + b);
    const most = t.placed[b] && taken ? mostCrops(problem, t, b) : 0;
    for (let crop = -1; crop < most; crop++) {
      t.crop[b] = crop;
      crops(b + 1);
    }
  };
  const keeps = (y: number): void => {
    if (y === problem.yeasts.length) {
      crops(0);
      return;
    }
    for (let source = -1; source < nJars + n; source++) {
      // a brew that is left out leaves nothing to keep, and slurry stays the strain it is
      if (source >= nJars && (!t.placed[source - nJars] || t.yeast[source - nJars] !== y)) continue;
      if (source >= 0 && source < nJars && problem.jars[source]?.yeast !== y) continue;
      t.keep[y] = source;
      keeps(y + 1);
    }
    t.keep[y] = -1;
  };
  const pitches = (b: number): void => {
    if (b === n) {
      keeps(0);
      return;
    }
    if (!t.placed[b]) {
      pitches(b + 1);
      return;
    }
    const starters = problem.house.starterGear.vessels === 0 ? 0 : 4;
    for (let source = FRESH; source < nJars + n; source++) {
      const from = source - nJars;
      // yeast flows forward, and stays the strain it is
      if (from >= 0 && (!t.placed[from] || (t.day[from] as number) >= (t.day[b] as number)))
        continue;
      if (from >= 0 && t.yeast[from] !== t.yeast[b]) continue;
      t.source[b] = source;
      for (let size = 0; size <= starters; size++) {
        t.starter[b] = size;
        pitches(b + 1);
      }
    }
    t.source[b] = FRESH;
    t.starter[b] = 0;
  };
  const slots = (b: number): void => {
    if (b === n) {
      pitches(0);
      return;
    }
    for (const part of [OUT, ...partsOf(house, problem, b)]) {
      // two beers never stand in one tank at once
      let clash = false;
      for (let o = 0; o < b && part.placed; o++) {
        const apart = part.day - (t.day[o] as number);
        const stands = problem.brews[apart >= 0 ? o : b]?.tankDays ?? 0;
        if (t.placed[o] && t.tank[o] === part.tank && Math.abs(apart) < stands) clash = true;
      }
      if (clash) continue;
      t.placed[b] = part.placed;
      t.day[b] = part.day;
      t.tank[b] = part.tank;
      t.yeast[b] = part.yeast;
      slots(b + 1);
    }
    t.placed[b] = 0;
  };
  slots(0);
  return { best, tried };
}

/** Work days on which the beer may be cropped before it is emptied: none before the earliest crop of an ale. */
function mostCrops(problem: Problem, t: Timeline, b: number): number {
  if (!problem.tanks[t.tank[b] as number]?.bottomOutlet) return 0;
  const { work, first } = problem.days;
  const day = t.day[b] as number;
  let days = 0;
  for (
    let d = day + problem.settings.cropDayAle;
    d < day + (problem.brews[b]?.tankDays ?? 0);
    d++
  ) {
    days += work[d - first] as number;
  }
  return days;
}

/** Every brew day of the brew's own stretch, in every tank, with every strain it accepts. */
function partsOf(house: House, problem: Problem, b: number): Part[] {
  const brew = house.brews[b];
  const out: Part[] = [];
  if (!brew) return out;
  const from = brew.notBefore === null ? problem.from : dayOf(brew.notBefore);
  // later than this no beer can be ready within the limit of late days, so no plan would brew it
  const last =
    brew.readyBy === null
      ? problem.to
      : dayOf(brew.readyBy) + problem.settings.maxLateDays - brew.tankDays - brew.conditionDays;
  for (let day = from; day <= Math.min(problem.to, last); day++) {
    if (!problem.days.brew[day - problem.days.first]) continue;
    for (let tank = 0; tank < problem.tanks.length; tank++) {
      for (const yeast of problem.brews[b]?.yeasts ?? []) out.push({ placed: 1, day, tank, yeast });
    }
  }
  return out;
}
