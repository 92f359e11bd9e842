// One value published outside the project and what a model says to the same question.
//
// A source is read at the place it names, or in a restatement of it, unless it says 'from memory'; a rule
// of thumb is 'common practice, no source'.
import { resolveSettings } from '../../../planner/model/settings.ts';
import * as science from '../../../planner/science/index.ts';

export type OutsideValue = {
  model: string;
  what: string;
  source: string;
  /** What the source says: a value within a tolerance, or a band. */
  expected: { value: number; within: number } | { low: number; high: number };
  got: () => number;
  digits: number;
  /**
   * Why the model knowingly departs from this source; absent where it agrees. The test holds that it still
   * departs, so that docs/science.md cannot go on saying so by mistake.
   */
  differs?: string;
};

export const HOME = resolveSettings('home', {});
export const NANO = resolveSettings('nano', {});
export const CP = 'common practice, no source';

export const near = (value: number, within: number) => ({ value, within });
export const band = (low: number, high: number) => ({ low, high });

/** Billion cells for ale wort at this rate and °P, without the increase for strong wort. */
export const perMl = (rate: number, volumeL: number, ogP: number) =>
  science.needB(
    { fermentC: 20, ogP, souring: null, harvested: true, volumeL },
    { ...HOME, rateAle: rate, strongIncrease: 0 },
  );

/** Whether a number lies where the source says. */
export function agrees(expected: OutsideValue['expected'], got: number): boolean {
  if ('value' in expected) return Math.abs(got - expected.value) <= expected.within;
  return got >= expected.low && got <= expected.high;
}
