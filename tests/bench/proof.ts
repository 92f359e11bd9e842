// A longer series of what tests/outside/bound.test.ts holds: bound ≤ optimum ≤ plan, and how tight the bound is.
import { squeeze } from '../outside/highs/squeeze.ts';
import type { Row } from './measure.ts';
import { middle } from './timed.ts';

export function proofRows(quick: boolean): Row[] {
  const seasons = quick ? 40 : 400;
  let above = 0;
  const gaps: number[] = [];
  for (let number = 1000; number < 1000 + seasons; number++) {
    const { bound, optimum } = squeeze(number, 5, 500);
    if (bound > optimum) above++;
    gaps.push((100 * (optimum - bound)) / Math.max(1, Math.abs(optimum)));
  }
  const note = `${seasons} random seasons of 2 to 5 brews, optimum by highs`;
  return [
    {
      what: 'bounds above the optimum',
      value: above,
      unit: 'seasons',
      target: 0,
      better: 'less',
      note,
    },
    {
      what: 'bound below the optimum, middle season',
      value: middle(gaps),
      unit: '%',
      target: null,
      better: 'less',
      note,
    },
    {
      what: 'bound below the optimum, worst season',
      value: Math.max(...gaps),
      unit: '%',
      target: null,
      better: 'less',
      note,
    },
  ];
}
