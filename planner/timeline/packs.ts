// Packs: what is taken from the cupboard, what is ordered, and which deliveries bring it.
import { starterSeedB } from '../science/index.ts';
import { FAR, FRESH, type Problem } from './problem.ts';
import type { Timeline } from './timeline.ts';

/** Packs from the cupboard first, then orders; packs wanted within the window share a delivery where that is cheaper. */
export function buyPacks(p: Problem, t: Timeline): void {
  const { fresh, handLeft, useDay } = t;
  let n = 0;
  for (let i = 0; i < t.orderCount; i++) {
    const b = t.order[i] as number;
    t.packs[b] = 0;
    t.packsFromHand[b] = 0;
    t.delivery[b] = -1;
    if (t.source[b] !== FRESH || t.done[b]) continue;
    if (p.brews[b]?.begun) {
      packsInStarter(p, t, b);
      continue;
    }
    let j = n - 1;
    const d = useDay[b] as number;
    while (j >= 0 && (useDay[fresh[j] as number] as number) > d) {
      fresh[j + 1] = fresh[j] as number;
      j--;
    }
    fresh[j + 1] = b;
    n++;
  }
  for (const yeast of p.yeasts) for (const batch of yeast.hand) handLeft[batch.slot] = batch.count;
  const deliveryMinor = p.house.deliveryCost * p.minorPerMajor;
  const lead = p.house.orderLeadDays;
  let deliveries = 0;
  for (let i = 0; i < n; i++) {
    const b = fresh[i] as number;
    const brew = p.brews[b];
    const y = t.yeast[b] as number;
    const yeast = p.yeasts[y];
    if (!brew || !yeast) continue;
    const use = useDay[b] as number;
    const wanted = packCellsWanted(p, t, b);
    let fromHand = 0;
    let age = p.house.packAgeOnArrivalDays;
    let cells = 0;
    for (const batch of yeast.hand) {
      const left = handLeft[batch.slot] as number;
      const old = use - batch.madeDay;
      if (left === 0 || use < batch.fromDay || old < 0 || old > yeast.expiryDays) continue;
      const each = yeast.row.packCellsB * Math.exp(-yeast.lossPerDay * old);
      const taken = Math.min(left, Math.ceil((wanted - cells) / each - 1e-9));
      if (taken <= 0) continue;
      age = fromHand === 0 ? old : Math.max(age, old);
      handLeft[batch.slot] = left - taken;
      fromHand += taken;
      cells += taken * each;
    }
    const missing = wanted - cells;
    let bought = 0;
    if (missing > 1e-9 && wanted < Infinity) {
      const ownCells =
        yeast.row.packCellsB * Math.exp(-yeast.lossPerDay * p.house.packAgeOnArrivalDays);
      const own = Math.ceil(missing / ownCells - 1e-9);
      bought = own;
      let arrives = use;
      let each = ownCells;
      const before = deliveries > 0 ? (t.deliveryDay[deliveries - 1] as number) : -FAR;
      let joins = false;
      if (use - before <= p.settings.orderWindowDays) {
        const joinAge = p.house.packAgeOnArrivalDays + use - before;
        const joinCells = yeast.row.packCellsB * Math.exp(-yeast.lossPerDay * joinAge);
        const joined = Math.ceil(missing / joinCells - 1e-9);
        if (joinAge <= yeast.expiryDays && (joined - own) * yeast.priceMinor <= deliveryMinor) {
          joins = true;
          bought = joined;
          arrives = before;
          each = joinCells;
          age = Math.max(age, joinAge);
        }
      }
      if (!joins) {
        t.deliveryDay[deliveries++] = use;
        age = Math.max(age, p.house.packAgeOnArrivalDays);
      }
      t.delivery[b] = deliveries - 1;
      cells += bought * each;
      t.drawnEarly[b] = arrives < p.today + lead ? p.today + lead - arrives : -1;
    } else {
      t.drawnEarly[b] = wanted === Infinity ? FAR : use < p.today ? p.today - use : -1;
    }
    t.packs[b] = fromHand + bought;
    t.packsFromHand[b] = fromHand;
    t.ageDays[b] = age;
    t.seedB[b] = cells;
    const all = (fromHand + bought) * yeast.row.packCellsB;
    t.viability[b] = all > 0 ? cells / all : 0;
  }
  t.deliveryCount = deliveries;
}

/** Packs that are in a starter already: nothing to buy, nothing to wait for. */
function packsInStarter(p: Problem, t: Timeline, b: number): void {
  const begun = p.brews[b]?.begun;
  const yeast = p.yeasts[t.yeast[b] as number];
  if (!begun || !yeast) return;
  const age = p.house.packAgeOnArrivalDays;
  t.needB[b] = p.brews[b]?.needFreshB ?? 0;
  t.packs[b] = begun.packs;
  t.packsFromHand[b] = begun.packs;
  t.ageDays[b] = age;
  t.viability[b] = Math.exp(-yeast.lossPerDay * age);
  t.seedB[b] = begun.packs * yeast.row.packCellsB * (t.viability[b] as number);
  t.drawnEarly[b] = -1;
}

/** Viable cells wanted out of the packs: the need, or what seeds a starter that gives it. */
function packCellsWanted(p: Problem, t: Timeline, b: number): number {
  const brew = p.brews[b];
  const yeast = p.yeasts[t.yeast[b] as number];
  if (!brew || !yeast) return 0;
  const need = brew.needFreshB;
  t.needB[b] = need;
  const litres = t.starterLitres[b] as number;
  if (litres <= 0 || yeast.dry) return need;
  return starterSeedB(need, litres, p.house.starterGear.stirred, p.settings);
}

/**
 * A quick quote: what brew b alone would take and order, with everybody else's packs as they stand in `t`. Fills b's
 * slots as `buyPacks` would if nothing were joined. Returns whether it would have to pay for a delivery.
 */
export function packsAlone(p: Problem, t: Timeline, b: number): boolean {
  const y = t.yeast[b] as number;
  const yeast = p.yeasts[y];
  if (!yeast) return false;
  const use = t.useDay[b] as number;
  let used = 0;
  let near = false;
  for (let i = 0; i < t.orderCount; i++) {
    const o = t.order[i] as number;
    if (o === b || t.source[o] !== FRESH || t.done[o]) continue;
    const fromHand = t.packsFromHand[o] as number;
    if (t.yeast[o] === y) used += fromHand;
    if ((t.packs[o] as number) > fromHand) {
      const apart = (t.useDay[o] as number) - use;
      if (apart <= p.settings.orderWindowDays && -apart <= p.settings.orderWindowDays) near = true;
    }
  }
  const wanted = packCellsWanted(p, t, b);
  let cells = 0;
  let fromHand = 0;
  let age = p.house.packAgeOnArrivalDays;
  for (const batch of yeast.hand) {
    const left = Math.max(0, batch.count - used);
    used = Math.max(0, used - batch.count);
    const old = use - batch.madeDay;
    if (left === 0 || use < batch.fromDay || old < 0 || old > yeast.expiryDays) continue;
    const each = yeast.row.packCellsB * Math.exp(-yeast.lossPerDay * old);
    const taken = Math.min(left, Math.ceil((wanted - cells) / each - 1e-9));
    if (taken <= 0) continue;
    age = fromHand === 0 ? old : Math.max(age, old);
    fromHand += taken;
    cells += taken * each;
  }
  const missing = wanted - cells;
  let bought = 0;
  if (missing > 1e-9 && wanted < Infinity) {
    const each = yeast.row.packCellsB * Math.exp(-yeast.lossPerDay * p.house.packAgeOnArrivalDays);
    bought = Math.ceil(missing / each - 1e-9);
    cells += bought * each;
    const arrives = p.today + p.house.orderLeadDays;
    t.drawnEarly[b] = use < arrives ? arrives - use : -1;
  } else t.drawnEarly[b] = wanted === Infinity ? FAR : use < p.today ? p.today - use : -1;
  t.packs[b] = fromHand + bought;
  t.packsFromHand[b] = fromHand;
  t.ageDays[b] = age;
  t.seedB[b] = cells;
  const all = (fromHand + bought) * yeast.row.packCellsB;
  t.viability[b] = all > 0 ? cells / all : 0;
  return bought > 0 && !near;
}
