// The search leans on the science: a hundred thousand full pitch predictions a second on one core.
import { expect, test } from 'vitest';
import * as science from '../../../planner/science/index.ts';
import { HOME } from './houses.ts';

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

test('full pitch predictions a second', () => {
  const runs = 20_000;
  let sum = 0;
  for (let i = 0; i < runs; i++) sum += predictPitch(i);
  // The best of five, so that a busy machine does not decide.
  let best = Infinity;
  for (let round = 0; round < 5; round++) {
    const start = performance.now();
    for (let i = 0; i < runs; i++) sum += predictPitch(i);
    best = Math.min(best, performance.now() - start);
  }
  const perSecond = runs / (best / 1000);
  console.info(`full pitch predictions a second: ${Math.round(perSecond).toLocaleString('en')}`);
  expect(Number.isFinite(sum)).toBe(true);
  expect(perSecond).toBeGreaterThan(100_000);
});
