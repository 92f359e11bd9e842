// Every value published outside the project that the science is held to, in the order docs/science.md shows them.
import { need, packs, slurry } from './cells.ts';
import { alcohol, gravity } from './gravity.ts';
import { carryOver, harvest, starters, wakeUp } from './growing.ts';
import { limits } from './limits.ts';
import { colour, counting, tasting } from './seen.ts';
import type { OutsideValue } from './value.ts';
import { viability } from './viability.ts';

export { agrees, type OutsideValue } from './value.ts';

export const OUTSIDE_VALUES: readonly OutsideValue[] = [
  ...gravity,
  ...alcohol,
  ...need,
  ...packs,
  ...slurry,
  ...viability,
  ...harvest,
  ...starters,
  ...wakeUp,
  ...carryOver,
  ...limits,
  ...counting,
  ...tasting,
  ...colour,
];
