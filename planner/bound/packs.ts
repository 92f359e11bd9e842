// The least that fresh packs can cost a brew, whatever is in the cupboard and whoever orders with it.
import { starterSeedB } from '../science/index.ts';
import type { Problem, YeastData } from '../timeline/problem.ts';
import type { Asker } from './ask.ts';

/** One way to pitch packs: what it costs with a delivery left out, how many paid-for packs it takes, whether it must order. */
export type PackWay = { cost: number; fromHand: number; ordered: boolean };

/**
 * The ways in which brew b, which stands with its starter, can be pitched with packs: none of them dearer than what a
 * plan would pay. Amounts that depend on other brews (the age of packs that share a delivery, who takes which pack of the
 * cupboard) are taken at their best.
 */
export function packWays(asker: Asker, b: number, y: number): PackWay[] {
  const { problem: p, t } = asker;
  const brew = p.brews[b];
  const yeast = p.yeasts[y];
  if (!brew || !yeast) return [];
  const use = t.useDay[b] as number;
  const wanted = wantedB(p, t.starterLitres[b] as number, brew.needFreshB);
  if (!(wanted < Infinity)) return [];
  const hand = handAt(yeast, use);
  const full = yeast.row.packCellsB;
  const ownCells = full * Math.exp(-yeast.lossPerDay * p.house.packAgeOnArrivalDays);
  const joinedCells = ownCells * Math.exp(-yeast.lossPerDay * p.settings.orderWindowDays);
  const canOrder = use >= p.today + p.house.orderLeadDays;
  const ways: PackWay[] = [];
  for (let fromHand = 0; fromHand <= hand.count; fromHand++) {
    const missing = wanted - fromHand * hand.best;
    const bought = missing > 1e-9 ? Math.ceil(missing / ownCells - 1e-9) : 0;
    if (bought > 0 && !canOrder) continue;
    // never fewer cells than were wanted; packs of an earlier delivery hold a little less
    const cellsB = Math.max(wanted, bought * joinedCells);
    const alive = Math.max(fromHand > 0 ? hand.best : 0, bought > 0 ? ownCells : 0) / full;
    asker.fresh(b, { packs: fromHand + bought, fromHand, cellsB, alive });
    if (asker.broken(b) === 0) {
      const cost = asker.cost(b, 'pitch') + asker.risk(b, asker.hazard(b));
      ways.push({ cost, fromHand, ordered: bought > 0 });
    }
    if (bought === 0) break;
  }
  return ways;
}

function wantedB(p: Problem, litres: number, needB: number): number {
  if (litres <= 0) return needB;
  return starterSeedB(needB, litres, p.house.starterGear.stirred, p.settings);
}

/** What the ways of a day depend on: the packs that could be used on it, and whether more can be ordered by then. */
export function cupboardAt(asker: Asker, b: number, y: number): string {
  const { problem: p, t } = asker;
  const yeast = p.yeasts[y];
  const use = t.useDay[b] as number;
  if (!yeast) return '';
  const { count, best } = handAt(yeast, use);
  return `${count} ${best} ${use >= p.today + p.house.orderLeadDays}`;
}

/** How many paid-for packs could be used on a day, and the most living cells that one of them holds. */
function handAt(yeast: YeastData, use: number): { count: number; best: number } {
  let count = 0;
  let best = 0;
  for (const batch of yeast.hand) {
    const old = use - batch.madeDay;
    if (use < batch.fromDay || old < 0 || old > yeast.expiryDays) continue;
    count += batch.count;
    best = Math.max(best, yeast.row.packCellsB * Math.exp(-yeast.lossPerDay * old));
  }
  return { count, best };
}
