// How many full pitch predictions a second the science makes on one core: the search leans on this.
import { resolveSettings } from '../../planner/model/settings.ts';
import * as science from '../../planner/science/index.ts';
import { cpuSeconds, type Row } from './measure.ts';

const HOME = resolveSettings('home', {});

/** Everything that is predicted of one pitch from slurry, from its need to its own harvest. */
function predictPitch(i: number): number {
  const og = 1.04 + (i % 40) / 1000;
  const volumeL = 18 + (i % 7);
  const ogP = science.platoFromSg(og);
  const wort = { fermentC: 10 + (i % 12), ogP, souring: null, harvested: true, volumeL };
  const need = science.needB(wort, HOME);
  const abv = science.abvPercent(og, 1.01);
  const ageing = science.strongAgeing(abv, HOME);
  const alive = science.viabilityRange(
    {
      start: science.cropViability(HOME),
      beerLoss: (i % 5) * science.beerLossPerDay(20, HOME) * ageing,
      storeLoss: (i % 30) * science.storageLossPerDay(3, HOME) * ageing,
    },
    HOME,
  );
  const density = science.densityBPerMl('medium', i % 3, HOME);
  const draw = science.drawMl(need, density, alive);
  const seed = science.starterSeedB(need, 2, true, HOME);
  const crop = science.expectedHarvest(
    {
      pitchedViableB: need,
      volumeL,
      flocculation: 'low',
      crashed: i % 2 === 0,
      settleDays: 1,
      jarMl: 500,
    },
    HOME,
  );
  const carried = science.carryOver(
    { ml: draw.likely, from: { ebc: 60, ibu: 40, abvPercent: 6 } },
    { volumeL, beer: { ebc: 10, ibu: 20, abvPercent: 5 } },
    HOME,
  );
  return draw.likely + crop.cellsB + carried.ebcChange + (Number.isFinite(seed) ? seed : 0);
}

const RUNS = 20_000;
const ROUNDS = 5;

/** Full pitch predictions a second: the best of five rounds, so that a busy machine does not decide. */
export function predictionsPerSecond(): number {
  let sum = 0;
  let best = 0;
  // the first round warms up
  for (let round = 0; round <= ROUNDS; round++) {
    const { seconds } = cpuSeconds(() => {
      for (let i = 0; i < RUNS; i++) sum += predictPitch(i);
    });
    if (round > 0) best = Math.max(best, RUNS / seconds);
  }
  if (!Number.isFinite(sum)) throw new RangeError('a prediction is not a number');
  return best;
}

export function predictionRows(): Row[] {
  return [
    {
      what: 'full pitch predictions',
      value: predictionsPerSecond(),
      unit: 'a second',
      target: 100_000,
      better: 'more',
      note: 'need, share alive, density, draw, starter, harvest and carry-over of one pitch',
    },
  ];
}
