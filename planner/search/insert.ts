// Finds a good place and source for one brew in a plan that stands: quick quotes first, the best of them judged in full.
import { FRESH } from '../timeline/problem.ts';
import { refold } from '../timeline/refold.ts';
import type { Timeline } from '../timeline/timeline.ts';
import type { Desk } from './desk.ts';
import { firstAtLeast } from './lanes.ts';
import { ANY_STARTER, NO_STARTER } from './quotes.ts';
import { compareScores, type Score, WORST } from './score.ts';

/** How many slots are quoted, and how many of the cheapest are judged in full; `plain`: none quoted with a starter. */
export type Reach = { slots: number; judged: number; plain?: true };

/** One brew's possible places, cheapest first; made once a desk and written over. */
export class Places {
  readonly most = 96;
  count = 0;
  readonly day = new Int32Array(this.most);
  readonly tank = new Int32Array(this.most);
  readonly yeast = new Int32Array(this.most);
  readonly source = new Int32Array(this.most);
  readonly starter = new Int32Array(this.most);
  readonly price = new Float64Array(this.most);

  add(day: number, tank: number): void {
    for (let i = 0; i < this.count; i++) {
      if (this.day[i] === day && this.tank[i] === tank) return;
    }
    if (this.count === this.most) return;
    this.day[this.count] = day;
    this.tank[this.count++] = tank;
  }

  /** Takes the cheapest of the rest to place `i`. */
  cheapestTo(i: number): void {
    let best = i;
    for (let k = i + 1; k < this.count; k++) {
      if ((this.price[k] as number) < (this.price[best] as number)) best = k;
    }
    for (const list of [this.day, this.tank, this.yeast, this.source, this.starter, this.price]) {
      const was = list[i] as number;
      list[i] = list[best] as number;
      list[best] = was;
    }
  }
}

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
  const held = brew.fixedDay >= 0 || brew.pinDay >= 0;
  const { places, scratch: trial, one } = desk;
  const wasYeast = t.yeast[b] as number;
  one[0] = b;
  findPlaces(desk, t, b, reach.slots);
  quotePlaces(desk, t, b, reach.plain ? NO_STARTER : ANY_STARTER);
  let best: Score | null = null;
  let chosen = -1;
  let chosenCrop = -1;
  const judge = (i: number, crop: number): void => {
    trial.copyFrom(t);
    put(desk, trial, b, i, crop);
    refold(trial, t, one, 1, desk.marks);
    desk.steps++;
    const score = desk.judge.rescore(trial, desk.marks.judge, best ?? WORST);
    if (score.hard > standing.hard && !held) return;
    if (best && compareScores(score, best) >= 0) return;
    best = score;
    chosen = i;
    chosenCrop = crop;
  };
  for (let i = 0; i < places.count && i < reach.judged; i++) {
    places.cheapestTo(i);
    judge(i, -1);
    if (p.tanks[places.tank[i] as number]?.bottomOutlet) judge(i, 0);
  }
  // quotes know nothing of the shelf: plain packs need no room on it
  for (let i = 0; i < places.count && i < 2 * reach.judged && chosen < 0; i++) {
    if (brew.pinSource >= FRESH) break;
    places.source[i] = FRESH;
    places.starter[i] = 0;
    judge(i, -1);
  }
  if (chosen < 0) {
    t.yeast[b] = wasYeast;
    t.starter[b] = 0;
    return null;
  }
  trial.copyFrom(t);
  put(desk, t, b, chosen, chosenCrop);
  refold(t, trial, one, 1, desk.marks);
  return desk.judge.rescore(t, desk.marks.judge, WORST);
}

function put(desk: Desk, t: Timeline, b: number, i: number, crop: number): void {
  const { places } = desk;
  t.placed[b] = 1;
  t.day[b] = places.day[i] as number;
  t.tank[b] = places.tank[i] as number;
  t.yeast[b] = places.yeast[i] as number;
  t.source[b] = places.source[i] as number;
  t.starter[b] = places.starter[i] as number;
  t.crop[b] = crop;
}

/** Quotes every place with each strain and the cheapest source; places on the same day share a quote. */
function quotePlaces(desk: Desk, t: Timeline, b: number, sizes: number): void {
  const { places, quotes, problem: p, random } = desk;
  const brew = p.brews[b];
  if (!brew) return;
  quotes.read(t);
  for (let i = 0; i < places.count; i++) {
    let same = 0;
    while (places.day[same] !== places.day[i]) same++;
    if (same < i) {
      for (const list of [places.yeast, places.source, places.starter, places.price]) {
        list[i] = list[same] as number;
      }
      continue;
    }
    t.day[b] = places.day[i] as number;
    t.tank[b] = places.tank[i] as number;
    t.crop[b] = -1;
    places.price[i] = Infinity;
    places.source[i] = FRESH;
    places.yeast[i] = brew.yeasts[0] ?? 0;
    places.starter[i] = 0;
    for (const yeast of brew.yeasts) {
      t.yeast[b] = yeast;
      const price =
        brew.pinSource >= FRESH
          ? quotes.only(t, b, brew.pinSource)
          : quotes.best(t, b, sizes, random, desk.heat * 0.5);
      if (price >= (places.price[i] as number)) continue;
      places.price[i] = price;
      places.yeast[i] = yeast;
      places.source[i] = quotes.source;
      places.starter[i] = quotes.starter;
    }
  }
}

/** The first free slots of each tank and some at random; where a held brew must stand if there is none. */
function findPlaces(desk: Desk, t: Timeline, b: number, most: number): void {
  const { places, lanes, random, problem: p } = desk;
  const brew = p.brews[b];
  places.count = 0;
  if (!brew) return;
  const { days, tanks } = brew;
  lanes.read(t);
  const eachTank = Math.max(1, Math.floor((most * 0.6) / Math.max(1, tanks.length)));
  for (const tank of tanks) {
    let found = 0;
    for (let k = 0; k < days.length && found < eachTank; k++) {
      const day = days[k] as number;
      const next = lanes.blockedUntil(t, b, tank, day);
      if (next > day) {
        // on to the first day after what stands in the way
        k = Math.max(k, firstAtLeast(days, next) - 1);
        continue;
      }
      places.add(day, tank);
      found++;
    }
  }
  if (places.count > 0 && days.length > 1) {
    for (let i = 0; i < most * 0.8; i++) {
      const day = days[random.below(days.length)] as number;
      const tank = tanks[random.below(tanks.length)] as number;
      if (lanes.blockedUntil(t, b, tank, day) <= day) places.add(day, tank);
    }
  }
  if (places.count === 0 && (brew.fixedDay >= 0 || brew.pinDay >= 0)) {
    for (const tank of tanks) places.add(days[0] as number, tank);
  }
}
