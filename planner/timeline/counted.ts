// How sure a counted share alive is: by the cells that were looked at, where the house wrote them down.
import type { House, Range, Settings } from '../model/index.ts';
import { countViability, measuredViability } from '../science/index.ts';

/** On a lid or in a report the share is rounded to whole percent. */
const ROUNDED = 0.0051;

/**
 * 80 % interval (Wilson) of a share alive counted on a day in slurry of a harvest. Where the house's counts
 * hold the same count with its cells, by those; else by as many cells as it usually counts (`countedCells`).
 */
export function countedShare(
  house: House,
  count: { yeast: string; harvestedOn: string; countedOn: string; share: number },
  s: Settings,
): Range {
  for (const { yeast, harvestedOn, countedOn, stained, total } of house.counts) {
    if (stained === null || total === null || yeast !== count.yeast) continue;
    if (harvestedOn !== count.harvestedOn || countedOn !== count.countedOn) continue;
    if (Math.abs(1 - stained / total - count.share) > ROUNDED) continue;
    const { low, high } = countViability(stained, total);
    return {
      low: Math.min(low, count.share),
      likely: count.share,
      high: Math.max(high, count.share),
    };
  }
  return measuredViability(count.share, s);
}
