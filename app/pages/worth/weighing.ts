// The plan and the two plain ways side by side, as figures that picture and table share.
import { type House, type Plan, resolveSettings } from '../../../planner/index.ts';

export type Way = {
  id: 'plan' | 'freshOnly' | 'dateOrder';
  says: string;
  cashMinor: number;
  workMinor: number;
  riskMinor: number;
  /** Minutes of work with yeast; null where the house gives its minutes no price to tell them by. */
  workMinutes: number | null;
  packs: number;
  deliveries: number;
  lateDays: number;
  leftOut: number;
};

const SAYS: Record<Way['id'], string> = {
  plan: 'This plan',
  freshOnly: 'Fresh packs for everything',
  dateOrder: 'Re-pitching in date order, not looking ahead',
};

/** The three ways, this plan first. */
export function waysOf(plan: Plan, house: House): Way[] {
  const price = resolveSettings(house.kind, house.rules).pricePerMinute * plan.minorPerMajor;
  const totals = { plan: plan.totals, ...plan.baselines };
  return (['plan', 'freshOnly', 'dateOrder'] as const).map((id) => {
    const { cashMinor, workMinor, riskMinor, packs, deliveries, lateDays, leftOut } = totals[id];
    const workMinutes = price > 0 ? Math.round(workMinor / price) : null;
    const figures = { cashMinor, workMinor, riskMinor, workMinutes };
    return { id, says: SAYS[id], ...figures, packs, deliveries, lateDays, leftOut };
  });
}

export type StrainSum = {
  yeast: string;
  brews: number;
  packs: number;
  repitches: number;
  /** Generation of the oldest slurry that is pitched. */
  oldest: number;
  /** Brews in the longest line of one pitch after another. */
  longest: number;
  keptForNext: boolean;
};

/** What each strain of the plan gives, in the order of the plan's brews. */
export function strainsOf(plan: Plan): StrainSum[] {
  const sums = new Map<string, StrainSum>();
  for (const { yeast, source, generation } of plan.brews) {
    const sum = sums.get(yeast) ?? {
      yeast,
      brews: 0,
      packs: 0,
      repitches: 0,
      oldest: 0,
      longest: 0,
      keptForNext: false,
    };
    sum.brews += 1;
    if (source.kind === 'fresh') sum.packs += source.packs;
    else sum.repitches += 1;
    sum.oldest = Math.max(sum.oldest, generation);
    sums.set(yeast, sum);
  }
  for (const { yeast, brews } of plan.chains) {
    const sum = sums.get(yeast);
    if (sum) sum.longest = Math.max(sum.longest, brews.length);
  }
  const kept = [
    ...plan.harvests.filter(({ jars }) =>
      jars.some((jar) => jar.for === null && jar.untilPassed === undefined),
    ),
    ...plan.shelf.filter((jar) => jar.kept),
  ];
  for (const { yeast } of kept) {
    const sum = sums.get(yeast);
    if (sum) sum.keptForNext = true;
  }
  return [...sums.values()];
}
