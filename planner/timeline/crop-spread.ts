// How far off the mL of a harvest that is still to come may be.
import { densityBPerMl } from '../science/index.ts';
import type { Problem } from './problem.ts';

/** The likely mL times and divided by this are the ends of the 80 % interval: growth and density are off independently. */
export function cropSpread(p: Problem, yeast: number): number {
  const y = p.yeasts[yeast];
  if (!y) return p.settings.harvestSpread;
  const density = densityBPerMl(y.row.flocculation, p.house.store.settleDays, y.learnt.settings);
  return Math.exp(
    Math.hypot(Math.log(p.settings.harvestSpread), Math.log(density.high / density.likely)),
  );
}
