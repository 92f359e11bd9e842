// Who comes of whom in a plan, worked out from its sources alone and not by the planner's own families.
import type { Plan } from '../../planner/index.ts';

/** Brews that are pitched, over any number of steps, with yeast of these harvests and jars; not those brews themselves. */
export function descendants(
  plan: Plan,
  harvests: ReadonlySet<string>,
  jars: ReadonlySet<string> = new Set(),
): Set<string> {
  const found = new Set<string>();
  for (let before = -1; before !== found.size; ) {
    before = found.size;
    for (const { brew, source } of plan.brews) {
      const from =
        (source.kind === 'jar' && jars.has(source.jar)) ||
        (source.kind === 'harvest' && (harvests.has(source.brew) || found.has(source.brew)));
      if (from) found.add(brew);
    }
  }
  return found;
}

/** What a slip may be expected to touch: the brew, all that is or comes into its tank, and all that comes of it. */
export function touchedBySlip(brew: string, plans: readonly Plan[]): Set<string> {
  const touched = new Set([brew]);
  for (const plan of plans) {
    const tank = plan.brews.find((one) => one.brew === brew)?.tank;
    for (const one of plan.brews) if (one.tank === tank) touched.add(one.brew);
    for (const one of descendants(plan, new Set([brew]))) touched.add(one);
  }
  return touched;
}
