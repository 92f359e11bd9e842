// A short season lived day by day over the API; the whole one of sixty brews is `npm run simulate`.
import { expect, test } from 'vitest';
import { GENERATED_TODAY, generatedSeason, shapeOf } from '../bench/generated.ts';
import { bundledWorker } from '../builders/worker.ts';
import { liveSeason } from './season.ts';

test('six brews with slips, losses and a bad culture: facts hold, UIDs stay, nothing suspect is pitched', async () => {
  const season = await liveSeason({
    house: generatedSeason(shapeOf(6, 2)),
    from: GENERATED_TODAY,
    seed: 7,
    workerUrl: await bundledWorker(),
    chance: { slip: 0.25, slow: 0.15, lost: 0.1, counted: 0.4 },
    firstSteps: 2000,
    steps: 200,
  });
  expect(season.violations).toEqual([]);
  expect(season.brewed).toBe(6);
  // without these the season would have tried nothing
  expect(season.told.some(({ kind }) => kind === 'slipped')).toBe(true);
  expect(season.told.some(({ kind }) => kind === 'suspect')).toBe(true);
}, 120_000);
