// Packs that are paid for: in the house or on their way, with how much of each is alive.
import { resolveSettings, type StandingPacks } from '../model/index.ts';
import { packExpiryDays, packViability } from '../science/index.ts';
import { dayNumber, isoDay } from '../timeline/calendar.ts';
import { cupboard } from '../timeline/cupboard.ts';
import type { Present } from './relatives.ts';

/** Packs of every strain, a line for each making. */
export function standingPacks({ house, facts, plan, today }: Present): StandingPacks[] {
  const settings = resolveSettings(house.kind, house.rules);
  const now = dayNumber(today);
  return cupboard(house, facts, now).flatMap((batches, at) => {
    const row = house.yeasts[at];
    if (row === undefined) return [];
    const brews = plan.brews.filter(
      ({ yeast, done, source }) =>
        yeast === row.yeast && !done && source.kind === 'fresh' && source.packsFromHand > 0,
    );
    return batches.map(({ count, madeDay, fromDay }) => {
      const alive = packViability(row.form, Math.max(now, fromDay) - madeDay, settings);
      return {
        yeast: row.yeast,
        packs: count,
        madeOn: isoDay(madeDay),
        hereFrom: fromDay > now ? isoDay(fromDay) : null,
        alive,
        cellsB: row.packCellsB * alive.likely,
        useBy: isoDay(madeDay + packExpiryDays(row.form, settings)),
        for: brews.map(({ brew }) => brew),
      };
    });
  });
}
