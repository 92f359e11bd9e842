// Packs that are paid for: in the cupboard, or ordered and on their way, less what beers and starters have used.
import type { Facts, House } from '../model/index.ts';
import { dayNumber } from './calendar.ts';

/** Packs of one making; usable from `fromDay` on. `slot` counts batches over all yeasts. */
export type PackBatch = { count: number; madeDay: number; fromDay: number; slot: number };

/** The batches of every yeast of the house, each list the oldest first. */
export function cupboard(house: House, facts: Facts, today: number): PackBatch[][] {
  let slot = 0;
  return house.yeasts.map((yeast) => {
    const batches: PackBatch[] = [];
    const add = (count: number, madeDay: number, fromDay: number) => {
      if (count > 0) batches.push({ count, madeDay, fromDay, slot: 0 });
    };
    const made =
      yeast.packsMadeOn === null
        ? today - house.packAgeOnArrivalDays
        : dayNumber(yeast.packsMadeOn);
    add(yeast.packsOnHand, made, 0);
    let bought = 0;
    for (const line of facts.bought) {
      if (line.yeast !== yeast.yeast) continue;
      const arrives = dayNumber(line.arrivesOn);
      bought += line.packs;
      add(line.packs, arrives - house.packAgeOnArrivalDays, arrives);
    }
    batches.sort((a, b) => a.madeDay - b.madeDay || a.fromDay - b.fromDay);
    take(batches, used(facts, yeast.yeast, bought));
    const left = batches.filter((batch) => batch.count > 0);
    for (const batch of left) batch.slot = slot++;
    return left;
  });
}

/**
 * Packs that brewed beers took from what was there. Packs that the plan meant to buy for them came out of an
 * order: out of one that was told, or out of one that nobody told and that is used up by them.
 */
function used(facts: Facts, yeast: string, bought: number): number {
  let fromHand = 0;
  let ordered = 0;
  const count = (taken: { packs: number; packsFromHand: number }) => {
    fromHand += taken.packsFromHand;
    ordered += taken.packs - taken.packsFromHand;
  };
  for (const { source, yeast: pitched } of [...facts.brewed, ...facts.begun]) {
    if (pitched === yeast && source.kind === 'fresh') count(source);
  }
  for (const lost of facts.lostPacks) if (lost.yeast === yeast) count(lost);
  return fromHand + Math.min(Math.max(0, ordered), bought);
}

/** The oldest go first. */
function take(batches: PackBatch[], count: number): void {
  let wanted = count;
  for (const batch of batches) {
    const taken = Math.min(batch.count, wanted);
    batch.count -= taken;
    wanted -= taken;
  }
}
