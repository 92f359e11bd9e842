// Finds a good place and source for one brew in a plan that stands, by judging whole plans.
import { FRESH } from '../timeline/problem.ts';
import { refold } from '../timeline/refold.ts';
import type { Timeline } from '../timeline/timeline.ts';
import type { Desk } from './desk.ts';
import { compareScores, type Score, WORST } from './score.ts';

export type Reach = { slots: number; sources: number };

type Choice = {
  day: number;
  tank: number;
  yeast: number;
  source: number;
  starter: number;
  crop: number;
};

const NO_STARTER = [0] as const;
const STARTERS = [0, 2] as const;
const LATE_CROP = [-1] as const;
const BOTH_CROPS = [-1, 0] as const;

/**
 * Places brew b in `t` (unfolded and judged, b not placed) where the whole plan is judged best, among the
 * first free slots of each tank and some at random. Returns the score, or null, with `t` as it was, if it
 * finds no place that breaks nothing more; a held brew is placed all the same.
 */
export function insertBest(
  desk: Desk,
  t: Timeline,
  b: number,
  standing: Score,
  reach: Reach,
): Score | null {
  const p = desk.problem;
  const brew = p.brews[b];
  if (!brew) return null;
  const one = Int32Array.of(b);
  const held = brew.fixedDay >= 0 || brew.pinDay >= 0;
  const trial = desk.scratch;
  let best: Score | null = null;
  let choice: Choice | null = null;
  const wasYeast = t.yeast[b] as number;
  for (const yeast of brew.yeasts) {
    t.yeast[b] = yeast;
    for (const { day, tank } of findSlots(desk, t, b, reach.slots)) {
      const sizes =
        p.yeasts[yeast]?.dry || p.house.starterGear.vessels === 0 ? NO_STARTER : STARTERS;
      const crops = p.tanks[tank]?.bottomOutlet ? BOTH_CROPS : LATE_CROP;
      for (const source of sourcesFor(desk, t, b, day, reach.sources)) {
        for (const starter of sizes) {
          for (const crop of crops) {
            trial.copyFrom(t);
            trial.placed[b] = 1;
            trial.day[b] = day;
            trial.tank[b] = tank;
            trial.source[b] = source;
            trial.starter[b] = starter;
            trial.crop[b] = crop;
            refold(trial, t, one, 1, desk.marks);
            desk.steps++;
            const score = desk.judge.rescore(trial, desk.marks.judge, best ?? WORST);
            if (score.hard > standing.hard && !held) continue;
            if (best && compareScores(score, best) >= 0) continue;
            best = score;
            choice = { day, tank, yeast, source, starter, crop };
          }
        }
      }
    }
  }
  t.yeast[b] = choice?.yeast ?? wasYeast;
  if (!choice) return null;
  trial.copyFrom(t);
  t.placed[b] = 1;
  t.day[b] = choice.day;
  t.tank[b] = choice.tank;
  t.source[b] = choice.source;
  t.starter[b] = choice.starter;
  t.crop[b] = choice.crop;
  refold(t, trial, one, 1, desk.marks);
  return desk.judge.rescore(t, desk.marks.judge, WORST);
}

/** The youngest slurries that no rule's shortcut forbids, and fresh packs; or the source it is pinned to. */
function sourcesFor(desk: Desk, t: Timeline, b: number, day: number, most: number): number[] {
  const brew = desk.problem.brews[b];
  if (brew && brew.pinSource >= FRESH) return [brew.pinSource];
  const n = desk.listSources(t, b, day);
  const out: number[] = [];
  for (let i = n - 1; i >= 0 && out.length < most; i--) out.push(desk.option(i));
  if (n > 0 && !out.includes(desk.option(0))) out.push(desk.option(0));
  // better a pitch that comes too late and says so than none
  return out.length > 0 ? out : [FRESH];
}

function findSlots(
  desk: Desk,
  t: Timeline,
  b: number,
  most: number,
): { day: number; tank: number }[] {
  const brew = desk.problem.brews[b];
  const out: { day: number; tank: number }[] = [];
  if (!brew) return out;
  const held = brew.fixedDay >= 0 || brew.pinDay >= 0;
  const eachTank = Math.max(1, Math.floor((most * 0.6) / Math.max(1, brew.tanks.length)));
  for (const tank of brew.tanks) {
    let found = 0;
    for (let k = 0; k < brew.days.length && found < eachTank; k++) {
      const day = brew.days[k] as number;
      if (desk.slotFree(t, b, tank, day)) {
        out.push({ day, tank });
        found++;
      }
    }
  }
  if (out.length > 0 && brew.days.length > 1) {
    for (let i = 0; i < most * 0.4; i++) {
      const day = brew.days[desk.random.below(brew.days.length)] as number;
      const tank = brew.tanks[desk.random.below(brew.tanks.length)] as number;
      if (desk.slotFree(t, b, tank, day)) out.push({ day, tank });
    }
  }
  // a held brew stands where it must, even if that breaks something
  if (out.length === 0 && held) {
    for (const tank of brew.tanks) out.push({ day: brew.days[0] as number, tank });
  }
  return out;
}
