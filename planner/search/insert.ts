// Finds a good place and source for one brew in a plan that stands, by judging whole plans.
import { FRESH } from '../timeline/problem.ts';
import type { Timeline } from '../timeline/timeline.ts';
import { unfold } from '../timeline/unfold.ts';
import type { Desk } from './desk.ts';
import { compareScores, type Score } from './score.ts';

export type Reach = { slots: number; sources: number };

/**
 * Places brew b in `t` (unfolded, b not placed) where the whole plan is judged best, among the first free
 * slots of each tank and some at random. Returns the score, or null if it finds no place that breaks nothing more.
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
  let best: Score | null = null;
  let choice:
    | [day: number, tank: number, yeast: number, source: number, starter: number, crop: number]
    | null = null;
  const slots = findSlots(desk, t, b, reach.slots);
  for (const yeast of brew.yeasts) {
    for (const { day, tank } of slots) {
      t.placed[b] = 0;
      t.yeast[b] = yeast;
      t.day[b] = day;
      t.tank[b] = tank;
      unfold(t);
      const n = brew.pinSource >= FRESH ? 1 : desk.listSources(t, b, day);
      const options: number[] = [];
      // the youngest slurries stand last
      for (let i = n - 1; i >= 0 && options.length < reach.sources; i--)
        options.push(desk.option(i));
      if (n > 0 && !options.includes(desk.option(0))) options.push(desk.option(0));
      if (brew.pinSource >= FRESH) options.splice(0, options.length, brew.pinSource);
      for (const source of options) {
        t.placed[b] = 1;
        t.source[b] = source;
        const outlet = p.tanks[tank]?.bottomOutlet === true;
        const sizes =
          p.yeasts[yeast]?.dry || p.house.starterGear.vessels === 0 ? NO_STARTER : STARTERS;
        for (const starter of sizes) {
          for (const crop of outlet ? BOTH_CROPS : LATE_CROP) {
            t.starter[b] = starter;
            t.crop[b] = crop;
            unfold(t);
            desk.steps++;
            const score = desk.judge.score(t, best ?? undefined);
            if (score.hard > standing.hard && brew.fixedDay < 0 && brew.pinDay < 0) continue;
            if (best && compareScores(score, best) >= 0) continue;
            best = score;
            choice = [day, tank, yeast, source, starter, crop];
          }
        }
      }
    }
  }
  if (!choice) {
    t.placed[b] = 0;
    return null;
  }
  t.placed[b] = 1;
  [t.day[b], t.tank[b], t.yeast[b], t.source[b], t.starter[b], t.crop[b]] = choice;
  unfold(t);
  return best;
}

const NO_STARTER = [0] as const;
const STARTERS = [0, 2] as const;
const LATE_CROP = [-1] as const;
const BOTH_CROPS = [-1, 0] as const;

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
