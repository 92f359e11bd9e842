// What would free a brew that was left out: small changes, each made to the house and planned again before it is told.
import type { Facts, House, Pin, Plan } from '../model/index.ts';
import { Desk } from '../search/desk.ts';
import { insertBest } from '../search/insert.ts';
import { Random } from '../search/random.ts';
import { Judge } from '../search/score.ts';
import { search } from '../search/search.ts';
import { isoDay } from '../timeline/calendar.ts';
import { compile } from '../timeline/problem.ts';
import { copyDecisions, Timeline } from '../timeline/timeline.ts';
import { unfold } from '../timeline/unfold.ts';

export type About = {
  house: House;
  today: string;
  facts: Facts;
  pins: readonly Pin[];
  inForce: Plan | null;
  seed: number;
};

/** A change of the house in words, with the day on which the brew is brewed then. */
export type WayOut = { says: string; day: string };

type Change = { says: (day: string) => string; house: House };

/** Plans judged to see whether a change frees a brew where it does not fit in by itself. */
const TRY_STEPS = 1500;
const WIDEST = { slots: 40, judged: 4 };

/**
 * Places brew `b` into a plan of a house that was changed, the others where they stand if that works, and moved
 * about if it does not.
 * @returns its brew day and the day it is ready, or null where no plan was found that breaks nothing more and
 *   leaves out less
 */
export function placedIn(
  house: House,
  plan: Timeline,
  b: number,
  about: About,
  steps = TRY_STEPS,
): { day: number; ready: number } | null {
  const problem = compile(house, about.today, about.facts, about.pins, about.inForce);
  const t = new Timeline(problem);
  copyDecisions(plan, t);
  unfold(t);
  const judge = new Judge(problem);
  const desk = new Desk(problem, judge, new Random(about.seed), { slurry: true }, t);
  const before = desk.score;
  const score = insertBest(desk, t, b, before, WIDEST);
  if (score && score.hard <= before.hard) {
    return { day: t.day[b] as number, ready: t.ready[b] as number };
  }
  if (steps === 0) return null;
  const standing = new Timeline(problem);
  copyDecisions(plan, standing);
  unfold(standing);
  const found = search(problem, { seed: about.seed, steps, standing }, () => false);
  const { timeline } = found;
  if (!timeline.placed[b] || found.score.hard > before.hard) return null;
  if (found.score.leftOut >= before.leftOut) return null;
  return { day: timeline.day[b] as number, ready: timeline.ready[b] as number };
}

/** The changes that free brew `b`, the smallest first, at most `most` of them. */
export function waysOut(plan: Timeline, b: number, about: About, most: number): WayOut[] {
  const out: WayOut[] = [];
  for (const change of changes(plan, b, about.house)) {
    if (out.length >= most) break;
    const placed = placedIn(change.house, plan, b, about);
    if (placed) out.push({ says: change.says(isoDay(placed.day)), day: isoDay(placed.day) });
  }
  return out;
}

function* changes(plan: Timeline, b: number, house: House): Generator<Change> {
  const brew = house.brews[b];
  const data = plan.problem.brews[b];
  if (!brew || !data) return;
  const row = (part: Partial<House['brews'][number]>): House => ({
    ...house,
    brews: house.brews.map((one, i) => (i === b ? { ...one, ...part } : one)),
  });
  if (brew.brewOn !== null) {
    yield {
      says: (day) => `Give up its fixed day: it could be brewed on ${day}.`,
      house: row({ brewOn: null }),
    };
  }
  yield* otherStrains(house, b, row);
  yield* tanksForIt(house, b, data.tanks.length > 0);
  const turns = house.brewsPerDay + 1;
  yield {
    says: (day) => `Brew ${turns} turns of the kettle in a day: it could be brewed on ${day}.`,
    house: { ...house, brewsPerDay: turns },
  };
}

/** Strains of the house that could ferment it, beside those that it accepts. */
function* otherStrains(
  house: House,
  b: number,
  row: (part: Partial<House['brews'][number]>) => House,
): Generator<Change> {
  const brew = house.brews[b];
  if (!brew) return;
  for (const { yeast, minC, maxC } of house.yeasts) {
    if (brew.yeasts.includes(yeast) || brew.fermentC < minC || brew.fermentC > maxC) continue;
    yield {
      says: (day) => `Take ${yeast} for it, too: it could be brewed on ${day}.`,
      house: row({ yeasts: [...brew.yeasts, yeast] }),
    };
  }
}

/** One more tank of each build that would take it, or one made for it where the house has none. */
function* tanksForIt(house: House, b: number, fits: boolean): Generator<Change> {
  const brew = house.brews[b];
  if (!brew) return;
  const names = new Set(house.tanks.map(({ tank }) => tank));
  let name = 'one more';
  while (names.has(name)) name += '*';
  const seen = new Set<string>();
  for (const tank of house.tanks) {
    const { volumeL, fermentC } = brew;
    const takes = volumeL >= tank.minFillL && volumeL <= tank.maxFillL;
    const holds = fermentC >= tank.minC && fermentC <= tank.maxC;
    const build = JSON.stringify({ ...tank, tank: '', outOfUse: [] });
    if (!takes || !holds || seen.has(build)) continue;
    seen.add(build);
    yield {
      says: (day) => `Find a second tank like ${tank.tank}: it could be brewed on ${day}.`,
      house: { ...house, tanks: [...house.tanks, { ...tank, tank: name, outOfUse: [] }] },
    };
  }
  if (fits) return;
  const made: House['tanks'][number] = {
    tank: name,
    minFillL: brew.volumeL,
    maxFillL: brew.volumeL,
    minC: brew.fermentC,
    maxC: brew.fermentC,
    turnaroundDays: 1,
    bottomOutlet: false,
    outOfUse: [],
  };
  yield {
    says: (day) =>
      `Find a tank that takes ${brew.volumeL} L and holds ${brew.fermentC} °C, or change the batch: it could be brewed on ${day}.`,
    house: { ...house, tanks: [...house.tanks, made] },
  };
}
