// The figures that hands follow, kept as they were told while the new ones say the same to a jug and an eye: a count that
// shifts every amount of the season by two per cent is no reason to write every entry of the calendar anew.
import type { House, Plan, PlannedBrew, PlannedHarvest, Range, Told } from '../model/index.ts';

/** What a jug or the marks of a jar are read to, and so what an amount is told to. Common practice, no source. */
export const SAME_AMOUNT = 0.05;
/** The same where 5 % is less than a drop more or less, mL. Common practice, no source. */
const SAME_ML = 2;
/** A share alive is told with an interval of tens of points: so many points of it change nothing. Common practice, no source. */
const SAME_SHARE = 0.03;
const SAME_BOUND = 0.05;
/** The crop of a beer is foreseen to a third at best (docs/science.md), so this is the same crop. */
const SAME_CROP = 0.1;

type ToldBrew = Told['brews'][number];
type ToldHarvest = Told['harvests'][number];

const near = (a: number, z: number, share: number, least = 0): boolean =>
  Math.abs(a - z) <= Math.max(share * Math.abs(a), least);
const kept = (was: number | null, now: number | null, share = SAME_AMOUNT): number | null =>
  was !== null && now !== null && near(was, now, share) ? was : now;

/**
 * The plan with the figures that its tasks say: those of the plan before it, wherever the new ones lie within what can be
 * read. They are held against what was told and not against the last plan, so that small steps do not add up unseen.
 * @param before the plan in force that it takes the place of
 */
export function steadied(plan: Plan, before: Plan, house: House): Plan {
  const told = asTold(before);
  const brews = plan.brews.flatMap((now) => {
    const was = told.brews.find(({ brew }) => brew === now.brew);
    if (was === undefined || now.done || !sameYeast(was, now)) return [];
    return [steadyBrew(was, now, roomy(plan, house, now))];
  });
  const harvests = plan.harvests.flatMap((now) => {
    const was = told.harvests.find(({ brew }) => brew === now.brew);
    return was === undefined ? [] : [steadyHarvest(was, now)];
  });
  return { ...plan, told: { brews, harvests } };
}

/** The plan as its tasks tell it: the same in all but the last digits of its amounts. */
export function asTold(plan: Plan): Plan {
  const { told } = plan;
  if (told === undefined) return plan;
  const brews = new Map(told.brews.map((one) => [one.brew, one]));
  const harvests = new Map(told.harvests.map((one) => [one.brew, one]));
  const drawnShare = new Map(
    plan.brews.map((brew) => [brew.brew, shareOf(brew, brews.get(brew.brew))]),
  );
  return {
    ...plan,
    brews: plan.brews.map((brew) => brewAsTold(brew, brews.get(brew.brew))),
    harvests: plan.harvests.map((one) => harvestAsTold(one, harvests.get(one.brew), drawnShare)),
  };
}

function sameYeast(was: PlannedBrew, now: PlannedBrew): boolean {
  const [a, z] = [was.source, now.source];
  const litres = (brew: PlannedBrew) => brew.starter?.litres ?? 0;
  if (was.yeast !== now.yeast || litres(was) !== litres(now)) return false;
  if (a.kind === 'jar') return z.kind === 'jar' && a.jar === z.jar;
  if (a.kind === 'fresh') return z.kind === 'fresh' && a.packs === z.packs;
  return z.kind === 'harvest' && a.brew === z.brew && a.ofStarter === z.ofStarter;
}

/**
 * Whether all draws that are still to come out of the source of this brew may be a little larger than planned, and it is
 * not empty before the last. What was poured out of it is gone.
 */
function roomy(plan: Plan, house: House, { source }: PlannedBrew): boolean {
  if (source.kind === 'fresh') return true;
  let poured = 0;
  let planned = 0;
  for (const brew of plan.brews) {
    if (!sameSlurry(source, brew.source)) continue;
    const drawMl = drawOf(brew) ?? 0;
    if (brew.done) poured += drawMl;
    else planned += drawMl;
  }
  const most = poured + planned * (1 + SAME_AMOUNT) + SAME_ML;
  if (source.kind === 'jar') {
    const jar = house.jars.find((one) => one.jar === source.jar);
    return jar !== undefined && most <= jar.settledMl;
  }
  const harvest = plan.harvests.find((one) => one.brew === source.brew);
  return harvest !== undefined && most <= harvest.settledMl.likely;
}

function sameSlurry(a: PlannedBrew['source'], z: PlannedBrew['source']): boolean {
  if (a.kind === 'jar') return z.kind === 'jar' && a.jar === z.jar;
  return a.kind === 'harvest' && z.kind === 'harvest' && a.brew === z.brew;
}

function steadyBrew(was: PlannedBrew, now: PlannedBrew, mayDrawMore: boolean): ToldBrew {
  const alive = near(was.viability.likely, now.viability.likely, 0, SAME_SHARE);
  const bounds =
    near(was.viability.low, now.viability.low, 0, SAME_BOUND) &&
    near(was.viability.high, now.viability.high, 0, SAME_BOUND);
  return {
    brew: now.brew,
    drawMl: sameJars(was, now) ? steadyDraw(drawOf(was), drawOf(now), mayDrawMore) : drawOf(now),
    viability: alive && bounds ? was.viability : now.viability,
    pitchedB: kept(was.pitchedB, now.pitchedB) ?? now.pitchedB,
    initialB: kept(was.starter?.initialB ?? null, now.starter?.initialB ?? null),
    finalB: kept(was.starter?.finalB ?? null, now.starter?.finalB ?? null),
  };
}

const drawOf = ({ source }: PlannedBrew): number | null =>
  source.kind === 'fresh' ? null : source.drawMl;

/** An amount that filled two jars may be more than the one holds that the new amount fills. */
const sameJars = ({ source: a }: PlannedBrew, { source: z }: PlannedBrew): boolean =>
  a.kind !== 'harvest' || z.kind !== 'harvest' || a.jars === z.jars;

function steadyDraw(was: number | null, now: number | null, mayDrawMore: boolean): number | null {
  if (was === null || now === null || !near(was, now, SAME_AMOUNT, SAME_ML)) return now;
  return was <= now || mayDrawMore ? was : now;
}

const spareOf = (one: PlannedHarvest) => one.jars.filter((jar) => jar.for === null);

function steadyHarvest(was: PlannedHarvest, now: PlannedHarvest): ToldHarvest {
  const [before, spare] = [spareOf(was), spareOf(now)];
  return {
    brew: now.brew,
    // what was taken is a fact
    settledMl: now.done || !sameCrop(was.settledMl, now.settledMl) ? now.settledMl : was.settledMl,
    spareMl: spare.map(({ ml, untilPassed }, at) => {
      const old = before.length === spare.length ? before[at] : undefined;
      if (old === undefined || (old.untilPassed === undefined) !== (untilPassed === undefined))
        return ml;
      return near(old.ml, ml, SAME_AMOUNT, SAME_ML) ? old.ml : ml;
    }),
  };
}

const sameCrop = (was: Range, now: Range): boolean =>
  near(was.likely, now.likely, SAME_CROP) &&
  near(was.low, now.low, SAME_CROP) &&
  near(was.high, now.high, SAME_CROP);

/** The draw as told in parts of the draw as planned. */
function shareOf(brew: PlannedBrew, told: ToldBrew | undefined): number {
  const planned = drawOf(brew);
  return told?.drawMl == null || planned === null || planned <= 0 ? 1 : told.drawMl / planned;
}

function brewAsTold(brew: PlannedBrew, told: ToldBrew | undefined): PlannedBrew {
  if (told === undefined) return brew;
  const { source, starter } = brew;
  const { drawMl, viability, pitchedB, initialB, finalB } = told;
  return {
    ...brew,
    source: source.kind === 'fresh' || drawMl === null ? source : { ...source, drawMl },
    viability,
    pitchedB,
    starter: starter && {
      ...starter,
      initialB: initialB ?? starter.initialB,
      finalB: finalB ?? starter.finalB,
    },
  };
}

function harvestAsTold(
  one: PlannedHarvest,
  told: ToldHarvest | undefined,
  drawnShare: ReadonlyMap<string, number>,
): PlannedHarvest {
  const spare = told?.spareMl ?? [];
  let at = 0;
  const jars = one.jars.map((jar) =>
    jar.for === null
      ? { ...jar, ml: spare[at++] ?? jar.ml }
      : { ...jar, ml: jar.ml * (drawnShare.get(jar.for) ?? 1) },
  );
  return { ...one, jars, settledMl: told?.settledMl ?? one.settledMl };
}
