// How the living share of a pitch's yeast runs from where it began to the day it is drawn, as geometry for a small picture.
import type { House, Plan, PlannedBrew, Range } from '../../../planner/index.ts';
import { dayNumber } from '../../parts/days.ts';

export type Ageing = {
  /** What the first day is. */
  begins: 'harvested' | 'kept' | 'made' | 'counted' | 'today';
  fromDay: string;
  days: number;
  /** The day on which it leaves its jar or pack: into the beer, or some days before into its starter. */
  drawnOn: string;
  into: 'beer' | 'starter';
  start: Range;
  end: Range;
};

/** From which day and share the yeast of a pitch ages until it is drawn; null where the plan says only the end. */
export function ageingOf(brew: PlannedBrew, plan: Plan, house: House): Ageing | null {
  const source = brew.source;
  const end = brew.viability;
  const drawnOn = brew.starter?.startOn ?? brew.day;
  const into = brew.starter ? ('starter' as const) : ('beer' as const);
  const since = (fromDay: string) => ({
    fromDay,
    days: Math.max(0, dayNumber(drawnOn) - dayNumber(fromDay)),
    drawnOn,
    into,
  });
  if (source.kind === 'harvest') {
    const harvest = plan.harvests.find((one) => one.brew === source.brew);
    if (!harvest) return null;
    const start = harvest.cropViability;
    const begins = source.ofStarter ? ('kept' as const) : ('harvested' as const);
    return { begins, ...since(source.harvestedOn), start, end };
  }
  if (source.kind === 'fresh') {
    const start = { low: 1, likely: 1, high: 1 };
    return { begins: 'made', ...since(source.packsMadeOn), start, end };
  }
  const jar = house.jars.find((one) => one.jar === source.jar);
  if (jar?.measuredViability && jar.measuredOn) {
    const share = jar.measuredViability;
    const start = { low: share, likely: share, high: share };
    return { begins: 'counted', ...since(jar.measuredOn), start, end };
  }
  const shelf = plan.shelf.find((one) => one.jar === source.jar);
  if (!shelf) return null;
  return { begins: 'today', ...since(plan.today), start: shelf.viabilityToday, end };
}

/** Share alive after a part (0 to 1) of the way: first-order loss is a straight line of the logarithm. */
export function shareAt(start: number, end: number, part: number): number {
  if (start <= 0 || end <= 0) return start + (end - start) * part;
  return start * (end / start) ** part;
}

export type Frame = { left: number; right: number; top: number; bottom: number };

const STEPS = 16;

/** Paths of the likely line and of the band from low to high, in a frame whose height is 0 to 100 %. */
export function ageingPaths(ageing: Ageing, frame: Frame): { band: string; line: string } {
  const x = (part: number) => frame.left + (frame.right - frame.left) * part;
  const y = (share: number) => frame.bottom - (frame.bottom - frame.top) * share;
  const along = (key: keyof Range) =>
    Array.from({ length: STEPS + 1 }, (_, at) => {
      const part = at / STEPS;
      const share = shareAt(ageing.start[key], ageing.end[key], part);
      return `${x(part).toFixed(1)} ${y(share).toFixed(1)}`;
    });
  return {
    band: `M${along('high').join('L')}L${along('low').toReversed().join('L')}Z`,
    line: `M${along('likely').join('L')}`,
  };
}

/** Heights of three labels, moved apart so that they do not run into each other; given from the top down. */
export function apart(ys: readonly number[], least: number): number[] {
  const moved = [...ys];
  for (let at = 1; at < moved.length; at += 1) {
    const above = moved[at - 1] ?? 0;
    moved[at] = Math.max(moved[at] ?? 0, above + least);
  }
  return moved;
}
