// The search leans on the science: a hundred thousand full pitch predictions a second on one core.
import { expect, test } from 'vitest';
import { predictionsPerSecond } from '../../bench/predictions.ts';

test('full pitch predictions a second', () => {
  const perSecond = predictionsPerSecond();
  console.info(`full pitch predictions a second: ${Math.round(perSecond).toLocaleString('en')}`);
  expect(perSecond).toBeGreaterThan(100_000);
});
