// How much of a source's slurry is alive on a day, with how sure that is.
import type { Range } from '../model/index.ts';
import { cropViability, viabilityRange } from '../science/index.ts';
import { isoDay } from './calendar.ts';
import { countedShare } from './counted.ts';
import { coldLoss, cropAgeing } from './pitch.ts';
import type { Problem } from './problem.ts';
import type { Timeline } from './timeline.ts';

/** What is alive at the start of a source's time in the cold, with how sure that is. */
function startOf(
  p: Problem,
  t: Timeline,
  source: number,
): { start: Range; counted: boolean; beerLoss: number; lossPerDay: number; startDay: number } {
  const yeast = p.yeasts[strainOf(p, t, source)];
  const spread = yeast?.learnt.crop ?? cropViability(p.settings);
  if (source < p.jars.length) {
    const jar = p.jars[source];
    if (!jar) return { start: spread, counted: false, beerLoss: 0, lossPerDay: 0, startDay: 0 };
    const start = jar.measured ?? spread;
    const { measured, storeLossPerDay: lossPerDay, startDay } = jar;
    return { start, counted: measured !== null, beerLoss: 0, lossPerDay, startDay };
  }
  const b = source - p.jars.length;
  const ageing = cropAgeing(p, t, b);
  const count = p.brews[b]?.harvested?.count;
  if (count?.viability != null) {
    return {
      start: countedShare(
        p.house,
        {
          yeast: yeast?.row.yeast ?? '',
          harvestedOn: isoDay(t.harvestDay[b] as number),
          countedOn: isoDay(count.day),
          share: count.viability,
        },
        p.settings,
      ),
      counted: true,
      beerLoss: 0,
      lossPerDay: coldLoss(p, t, b) * ageing,
      startDay: count.day,
    };
  }
  return {
    start: spread,
    counted: false,
    beerLoss: (t.beerLoss[b] as number) * ageing,
    lossPerDay: coldLoss(p, t, b) * ageing,
    startDay: t.harvestDay[b] as number,
  };
}

/** Share of slurry from a source that is alive on a day, low / likely / high. */
export function slurryAlive(p: Problem, t: Timeline, source: number, day: number): Range {
  const { start, beerLoss, lossPerDay, startDay } = startOf(p, t, source);
  const storeLoss = lossPerDay * Math.max(0, day - startDay);
  const own = p.yeasts[strainOf(p, t, source)]?.learnt.settings ?? p.settings;
  return viabilityRange({ start, beerLoss, storeLoss }, own);
}

/** The same share as the house's settings alone would say it, without the counts of the strain. */
export function slurryAliveBeforeCounts(
  p: Problem,
  t: Timeline,
  source: number,
  day: number,
): Range {
  const { start: now, counted, beerLoss, lossPerDay, startDay } = startOf(p, t, source);
  const start = counted ? now : cropViability(p.settings);
  const times = p.yeasts[strainOf(p, t, source)]?.learnt.lossTimes ?? 1;
  const storeLoss = (lossPerDay * Math.max(0, day - startDay)) / times;
  return viabilityRange({ start, beerLoss, storeLoss }, p.settings);
}

/** The yeast of slurry from a source. */
function strainOf(p: Problem, t: Timeline, source: number): number {
  return source < p.jars.length
    ? (p.jars[source]?.yeast ?? -1)
    : (t.yeast[source - p.jars.length] as number);
}
