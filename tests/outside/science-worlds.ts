// Houses whose yeast dies by another law than the planner's, to see whether what it learns from their
// counts is as sure as it says.
//
// The law: a cell dies when all of its `hits` targets are hit (multi-target theory, as for germs killed
// by radiation): share alive = 1 − (1 − exp(−kt))^hits, which has a shoulder where hits > 1. Strains and
// jars scatter lognormally, the crop starts at a share dead of about 3 %, and every count is binomial.
import { resolveSettings } from '../../planner/model/settings.ts';
import * as science from '../../planner/science/index.ts';

export type World = {
  name: string;
  hits: number;
  /** Standard deviation of the logarithm of the rate, from strain to strain. */
  strainSd: number;
  /** The same from jar to jar of one strain. */
  jarSd: number;
  /** Chance that a jar dies five times as fast. */
  odd: number;
  cells: number;
};

export type Outcome = { learnt: number; unlearnt: number; width: number; widthUnlearnt: number };

const SETTINGS = resolveSettings('home', {});

/** A plain generator of numbers between 0 and 1, the same every time. */
function random(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** Loss by the planner's default at which the two laws are made to agree on average: two weeks at 3 °C. */
const AGREE_AT = 14 * science.storageLossPerDay(3, SETTINGS);

/**
 * How often a count falls inside the stated 80 % interval, over `houses` houses that have each counted
 * `counts` jars of a strain and then count one more.
 */
export function coverage(world: World, counts: number, houses: number, seed: number): Outcome {
  const uniform = random(seed);
  const normal = () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
  const alike = -Math.log(1 - (1 - Math.exp(-AGREE_AT)) ** (1 / world.hits)) / AGREE_AT;
  const outcome = { learnt: 0, unlearnt: 0, width: 0, widthUnlearnt: 0 };
  for (let house = 0; house < houses; house++) {
    const strain = Math.exp(world.strainSd * normal());
    const rate = science.storageLossPerDay(2 + 3 * uniform(), SETTINGS);
    const count = () => {
      const loss = (3 + 32 * uniform()) * rate;
      const jar = Math.exp(world.jarSd * normal()) * (uniform() < world.odd ? 5 : 1);
      const survival = 1 - (1 - Math.exp(-loss * alike * strain * jar)) ** world.hits;
      const dead = Math.min(0.3, 0.03 * Math.exp(0.6 * normal()));
      let alive = 0;
      for (let cell = 0; cell < world.cells; cell++) if (uniform() < (1 - dead) * survival) alive++;
      return { alive, total: world.cells, loss };
    };
    const seen = Array.from({ length: counts }, count);
    const own = science.learnedSettings(SETTINGS, { loss: science.learnLoss(seen, SETTINGS) });
    const next = count();
    const stated = (s: typeof SETTINGS) => {
      const times = s.storageLossAt1C / SETTINGS.storageLossAt1C;
      const v = science.viabilityRange(
        { start: science.cropViability(s), beerLoss: 0, storeLoss: next.loss * times },
        s,
      );
      return { v, inside: science.expectedCount(v, next.total) };
    };
    const share = next.alive / next.total;
    const learnt = stated(own);
    const unlearnt = stated(SETTINGS);
    outcome.learnt += Number(share >= learnt.inside.low && share <= learnt.inside.high);
    outcome.unlearnt += Number(share >= unlearnt.inside.low && share <= unlearnt.inside.high);
    outcome.width += learnt.v.high - learnt.v.low;
    outcome.widthUnlearnt += unlearnt.v.high - unlearnt.v.low;
  }
  return {
    learnt: outcome.learnt / houses,
    unlearnt: outcome.unlearnt / houses,
    width: outcome.width / houses,
    widthUnlearnt: outcome.widthUnlearnt / houses,
  };
}

const world = (name: string, own: Partial<World> = {}): World => ({
  name,
  hits: 2,
  strainSd: 0.45,
  jarSd: 0.25,
  odd: 0,
  cells: 200,
  ...own,
});

/** A shouldered law (two targets) with strain spread: the world the stated certainty is held to. */
export const SHOULDERED = world('shoulder');

/** Other worlds, kinder and harsher, shown beside it in docs/science.md. */
export const WORLDS: readonly World[] = [
  SHOULDERED,
  world('no shoulder', { hits: 1 }),
  world('mild shoulder', { hits: 1.5 }),
  world('strong shoulder', { hits: 3 }),
  world('shoulder, like jars', { jarSd: 0.15 }),
  world('shoulder, unlike jars', { jarSd: 0.35 }),
  world('shoulder, 100 cells counted', { cells: 100 }),
  world('shoulder, 400 cells counted', { cells: 400 }),
  world('shoulder, one jar in twenty odd', { odd: 0.05 }),
];
