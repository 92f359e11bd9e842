// The days that follow from a brew day and a tank: emptying, harvest, crash, ready, starter.
import { earliestCropDay, starterGrowDays, starterSettleDays } from '../science/index.ts';
import { KEPT } from './kept.ts';
import { FAR, type Problem, STARTER_SIZES } from './problem.ts';
import type { Timeline } from './timeline.ts';

/** Days after the pitch on which this yeast in this wort is taken to be done fermenting. */
export function cropOffset(p: Problem, b: number, y: number): number {
  const s = p.settings;
  const brew = p.brews[b];
  const yeast = p.yeasts[y];
  if (!brew || !yeast) return s.cropDayAle;
  const { flocculation } = yeast.row;
  return earliestCropDay({ lager: yeast.isLager, ogP: brew.ogP, flocculation }, s);
}

/** Works out the days of one brew. */
export function dates(p: Problem, t: Timeline, b: number): void {
  const brew = p.brews[b];
  const tank = p.tanks[t.tank[b] as number];
  const y = t.yeast[b] as number;
  const yeast = p.yeasts[y];
  if (!brew || !tank || !yeast) return;
  const { days, settings: s } = p;
  const day = t.day[b] as number;
  const first = days.first;
  let emptied = brew.done?.emptiedDay ?? (days.nextWork[day + brew.tankDays - first] as number);
  // a brewed beer that nobody has emptied is still in its tank today
  if (brew.done && brew.done.emptiedDay === null && emptied < p.today) {
    emptied = days.nextWork[p.today - first] as number;
  }
  t.emptied[b] = emptied;
  t.free[b] = emptied + tank.turnaroundDays * yeast.turnaroundTimes;
  const ready = emptied + brew.conditionDays;
  t.ready[b] = ready;
  t.late[b] = brew.readyBy === FAR ? 0 : Math.max(0, ready - brew.readyBy);

  const offset = cropOffset(p, b, y);
  const fermented = day + Math.min(offset, brew.tankDays);
  let harvest = emptied;
  if (brew.harvested) harvest = brew.harvested.day;
  else if (t.crop[b] === KEPT) harvest = day;
  else if (tank.bottomOutlet && (t.crop[b] as number) >= 0) {
    harvest = days.nextWork[day + (brew.harvestDay ?? offset) - first] as number;
    for (let k = t.crop[b] as number; k > 0 && harvest < emptied; k--) {
      harvest = days.nextWork[harvest + 1 - first] as number;
    }
    if (harvest > emptied) harvest = emptied;
  }
  // what was not taken by today can be taken today at the earliest, and not at all once the tank is empty
  const missed = brew.done !== null && brew.harvested === null && harvest < p.today;
  const over = t.crop[b] === KEPT ? day < p.today : emptied < p.today;
  if (missed && !over) harvest = days.nextWork[p.today - first] as number;
  t.harvestDay[b] = harvest;
  t.usableFrom[b] = missed && over ? FAR : harvest + p.house.store.settleDays;
  // a beer whose dry hop is still to come is not chilled before it
  const hopped = brew.dryHopDay === null || day + brew.dryHopDay < harvest;
  const crashed = hopped && s.crashDays > 0 && tank.canCrash && harvest - s.crashDays >= fermented;
  t.crashed[b] = crashed ? 1 : 0;
  const beerDays = Math.max(0, harvest - fermented);
  const cold = crashed ? Math.min(s.crashDays, beerDays) : 0;
  const yeastAt = t.yeast[b] as number;
  t.beerLoss[b] =
    (brew.beerLossPerDay[yeastAt] as number) * (beerDays - cold) +
    (brew.crashLossPerDay[yeastAt] as number) * cold;

  const size = t.starter[b] as number;
  t.starterChill[b] = -1;
  if (brew.begun && !brew.done) {
    const { litres, day: begins } = brew.begun;
    const grow = starterGrowDays(litres, p.house.starterGear.maxLitres);
    const decanted = litres > s.decantFromShare * brew.volumeL;
    if (decanted) t.starterChill[b] = Math.min(day, begins + grow);
    t.starterLitres[b] = litres;
    t.starterStart[b] = begins;
    t.useDay[b] = begins;
  } else if (size > 0 && !brew.done) {
    const litres = (p.house.starterGear.maxLitres * size) / STARTER_SIZES;
    const grow = starterGrowDays(litres, p.house.starterGear.maxLitres);
    let ends = day;
    if (litres > s.decantFromShare * brew.volumeL) {
      // chilled as late as its days allow; once cold it may stand, but it grows no longer than it needs
      const settles = starterSettleDays(yeast.row.flocculation, s);
      ends = days.lastStarter[day - settles - first] as number;
      for (let back = 0; back < 7 && !days.starter[ends - grow - first]; back++) {
        ends = days.lastStarter[ends - 1 - first] as number;
      }
      t.starterChill[b] = ends;
    }
    t.starterLitres[b] = litres;
    t.starterStart[b] = ends - grow;
    t.useDay[b] = t.starterStart[b] as number;
  } else {
    t.starterLitres[b] = 0;
    t.starterStart[b] = day;
    t.useDay[b] = day;
  }
}
