// From what was decided to all that follows: days, packs, draws, cells, jars. Called for every plan the search tries.
import { starterGivesB, starterGrowDays, starterSeedB } from '../science/index.ts';
import { FAR, FRESH, type Problem, STARTER_SIZES } from './problem.ts';
import type { Timeline } from './timeline.ts';

/** Works out everything that follows from the decisions in `t`, in place. */
export function unfold(t: Timeline): void {
  const p = t.problem;
  sortByDay(t);
  for (let i = 0; i < t.orderCount; i++) dates(p, t, t.order[i] as number);
  buyPacks(p, t);
  t.drawnMl.fill(0);
  t.draws.fill(0);
  t.jarsCut.fill(0);
  for (let i = 0; i < t.orderCount; i++) pitch(p, t, t.order[i] as number);
  keepForNextSeason(p, t);
  fillShelf(p, t);
  fillVessels(p, t);
  fillKettle(p, t);
}

function sortByDay(t: Timeline): void {
  const { order, placed, day } = t;
  let n = 0;
  for (let b = 0; b < placed.length; b++) if (placed[b]) order[n++] = b;
  t.orderCount = n;
  for (let i = 1; i < n; i++) {
    const b = order[i] as number;
    const d = day[b] as number;
    let j = i - 1;
    while (j >= 0) {
      const other = order[j] as number;
      if ((day[other] as number) <= d) break;
      order[j + 1] = other;
      j--;
    }
    order[j + 1] = b;
  }
}

/** Days after the pitch on which this yeast in this wort is taken to be done fermenting. */
export function cropOffset(p: Problem, b: number, y: number): number {
  const s = p.settings;
  const brew = p.brews[b];
  const yeast = p.yeasts[y];
  if (!brew || !yeast) return s.cropDayAle;
  const base = yeast.isLager ? s.cropDayLager : s.cropDayAle;
  const slow = brew.ogP > s.strongBeerP || yeast.row.flocculation === 'low';
  return base + (slow ? s.cropDaysExtra : 0);
}

function dates(p: Problem, t: Timeline, b: number): void {
  const brew = p.brews[b];
  const tank = p.tanks[t.tank[b] as number];
  const y = t.yeast[b] as number;
  const yeast = p.yeasts[y];
  if (!brew || !tank || !yeast) return;
  const { days, settings: s } = p;
  const day = t.day[b] as number;
  const first = days.first;
  const emptied = brew.done?.emptiedDay ?? (days.nextWork[day + brew.tankDays - first] as number);
  t.emptied[b] = emptied;
  t.free[b] = emptied + tank.turnaroundDays * yeast.turnaroundTimes;
  const ready = emptied + brew.conditionDays;
  t.ready[b] = ready;
  t.late[b] = brew.readyBy === FAR ? 0 : Math.max(0, ready - brew.readyBy);

  const offset = cropOffset(p, b, y);
  const fermented = day + Math.min(offset, brew.tankDays);
  let harvest = emptied;
  if (brew.harvested) harvest = brew.harvested.day;
  else if (tank.bottomOutlet && (t.crop[b] as number) >= 0) {
    harvest = days.nextWork[day + (brew.harvestDay ?? offset) - first] as number;
    for (let k = t.crop[b] as number; k > 0 && harvest < emptied; k--) {
      harvest = days.nextWork[harvest + 1 - first] as number;
    }
    if (harvest > emptied) harvest = emptied;
  }
  t.harvestDay[b] = harvest;
  t.usableFrom[b] = harvest + p.house.store.settleDays;
  const crashed = tank.canCrash && harvest - s.crashDays >= fermented;
  t.crashed[b] = crashed ? 1 : 0;
  const beerDays = Math.max(0, harvest - fermented);
  const cold = crashed ? Math.min(s.crashDays, beerDays) : 0;
  t.beerLoss[b] = brew.beerLossPerDay * (beerDays - cold) + brew.crashLossPerDay * cold;

  const size = t.starter[b] as number;
  t.starterChill[b] = -1;
  if (size > 0 && !brew.done) {
    const litres = (p.house.starterGear.maxLitres * size) / STARTER_SIZES;
    const grow = starterGrowDays(litres, p.house.starterGear.maxLitres);
    let ends = day;
    if (litres > s.decantFromShare * brew.volumeL) {
      ends = days.lastStarter[day - 1 - first] as number;
      t.starterChill[b] = ends;
    }
    t.starterLitres[b] = litres;
    t.starterStart[b] = days.lastStarter[ends - grow - first] as number;
    t.useDay[b] = t.starterStart[b] as number;
  } else {
    t.starterLitres[b] = 0;
    t.starterStart[b] = day;
    t.useDay[b] = day;
  }
}

/** Packs from the cupboard first, then orders; packs wanted within the window share a delivery where that is cheaper. */
function buyPacks(p: Problem, t: Timeline): void {
  const { fresh, handLeft, useDay } = t;
  let n = 0;
  for (let i = 0; i < t.orderCount; i++) {
    const b = t.order[i] as number;
    t.packs[b] = 0;
    t.packsFromHand[b] = 0;
    t.delivery[b] = -1;
    if (t.source[b] !== FRESH || t.done[b]) continue;
    let j = n - 1;
    const d = useDay[b] as number;
    while (j >= 0 && (useDay[fresh[j] as number] as number) > d) {
      fresh[j + 1] = fresh[j] as number;
      j--;
    }
    fresh[j + 1] = b;
    n++;
  }
  for (let y = 0; y < handLeft.length; y++) handLeft[y] = p.yeasts[y]?.row.packsOnHand ?? 0;
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
    const handAge = use - yeast.handMadeDay;
    const handCells = yeast.row.packCellsB * Math.exp(-yeast.lossPerDay * Math.max(0, handAge));
    const left = handLeft[y] as number;
    let fromHand = 0;
    if (left > 0 && handAge >= 0 && handAge <= yeast.expiryDays) {
      fromHand = Math.min(left, Math.ceil(wanted / handCells - 1e-9));
    }
    const missing = wanted - fromHand * handCells;
    let bought = 0;
    let age = fromHand > 0 ? handAge : p.house.packAgeOnArrivalDays;
    let cells = fromHand * handCells;
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
    handLeft[y] = left - fromHand;
    t.packs[b] = fromHand + bought;
    t.packsFromHand[b] = fromHand;
    t.ageDays[b] = age;
    t.seedB[b] = cells;
    const all = (fromHand + bought) * yeast.row.packCellsB;
    t.viability[b] = all > 0 ? cells / all : 0;
  }
  t.deliveryCount = deliveries;
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

function pitch(p: Problem, t: Timeline, b: number): void {
  const brew = p.brews[b];
  const y = t.yeast[b] as number;
  const yeast = p.yeasts[y];
  if (!brew || !yeast) return;
  const s = p.settings;
  const source = t.source[b] as number;
  const litres = t.starterLitres[b] as number;
  const stirred = p.house.starterGear.stirred;
  const nJars = p.jars.length;
  if (brew.done) {
    factPitch(p, t, b);
  } else if (source === FRESH) {
    t.generation[b] = 0;
    t.drawMl[b] = 0;
    t.drawJars[b] = 0;
    const cells = t.seedB[b] as number;
    t.pitchedB[b] = litres > 0 && !yeast.dry ? starterGivesB(cells, litres, stirred, s) : cells;
  } else {
    const need = brew.needHarvestedB * s.pitchMargin;
    t.needB[b] = brew.needHarvestedB;
    const use = t.useDay[b] as number;
    let density: number;
    if (source < nJars) {
      const jar = p.jars[source];
      if (!jar) return;
      density = jar.density;
      t.generation[b] = jar.generation;
      t.ageDays[b] = Math.max(0, use - jar.harvestedDay);
      t.viability[b] =
        jar.startViability * Math.exp(-jar.storeLossPerDay * Math.max(0, use - jar.startDay));
      const usable = jar.harvestedDay + p.house.store.settleDays;
      t.drawnEarly[b] = jar.gone
        ? FAR
        : Math.max(usable, p.today) > use
          ? Math.max(usable, p.today) - use
          : -1;
    } else {
      const from = source - nJars;
      const parent = p.brews[from];
      if (!parent) return;
      density = yeast.density;
      const there = t.placed[from] === 1 && (t.day[from] as number) < (t.day[b] as number);
      t.generation[b] = there ? (t.generation[from] as number) + 1 : 1;
      const harvested = t.harvestDay[from] as number;
      const age = there ? Math.max(0, use - harvested) : 0;
      t.ageDays[b] = age;
      t.viability[b] = there
        ? p.cropViability * Math.exp(-(t.beerLoss[from] as number) - parent.storeLossPerDay * age)
        : 0;
      const usable = Math.max(t.usableFrom[from] as number, p.today);
      t.drawnEarly[b] = !there ? FAR : usable > use ? usable - use : -1;
    }
    const seed = litres > 0 ? starterSeedB(need, litres, stirred, s) : need;
    const v = t.viability[b] as number;
    t.seedB[b] = seed;
    if (v > 0 && seed < Infinity) {
      const ml = seed / (density * v);
      t.drawMl[b] = ml;
      t.drawJars[b] = Math.ceil(ml / p.house.store.jarMl - 1e-9);
      t.pitchedB[b] = litres > 0 ? starterGivesB(seed, litres, stirred, s) : seed;
      t.drawnMl[source] = (t.drawnMl[source] as number) + ml;
    } else {
      t.drawMl[b] = 0;
      t.drawJars[b] = 0;
      t.pitchedB[b] = 0;
      t.drawnEarly[b] = FAR;
    }
    t.draws[source] = (t.draws[source] as number) + 1;
    t.jarsCut[source] = (t.jarsCut[source] as number) + (t.drawJars[b] as number);
  }
  crop(p, t, b);
}

function factPitch(p: Problem, t: Timeline, b: number): void {
  const brew = p.brews[b];
  const done = brew?.done;
  if (!brew || !done) return;
  const harvested = done.source !== FRESH;
  t.needB[b] = harvested ? brew.needHarvestedB : brew.needFreshB;
  t.generation[b] = done.generation;
  t.pitchedB[b] = done.pitchedB;
  t.drawMl[b] = done.drawMl;
  t.drawJars[b] = Math.ceil(done.drawMl / p.house.store.jarMl - 1e-9);
  t.packs[b] = done.packs;
  t.starterLitres[b] = done.starterLitres;
  t.drawnEarly[b] = -1;
  t.viability[b] = 1;
  t.ageDays[b] = 0;
  if (!harvested) return;
  const nJars = p.jars.length;
  const s = done.source;
  if (s < nJars) {
    const jar = p.jars[s];
    if (jar) {
      t.ageDays[b] = Math.max(0, done.day - jar.harvestedDay);
      t.viability[b] =
        jar.startViability * Math.exp(-jar.storeLossPerDay * Math.max(0, done.day - jar.startDay));
    }
  } else {
    const from = s - nJars;
    const age = Math.max(0, done.day - (t.harvestDay[from] as number));
    t.ageDays[b] = age;
    t.viability[b] =
      p.cropViability *
      Math.exp(-(t.beerLoss[from] as number) - (p.brews[from]?.storeLossPerDay ?? 0) * age);
  }
  t.drawnMl[s] = (t.drawnMl[s] as number) + done.drawMl;
  t.draws[s] = (t.draws[s] as number) + 1;
  t.jarsCut[s] = (t.jarsCut[s] as number) + (t.drawJars[b] as number);
}

function crop(p: Problem, t: Timeline, b: number): void {
  const brew = p.brews[b];
  const yeast = p.yeasts[t.yeast[b] as number];
  if (!brew || !yeast) return;
  if (brew.harvested) {
    t.cropMl[b] = brew.harvested.ml;
    t.cropCellsB[b] = brew.harvested.ml * yeast.density;
    return;
  }
  const s = p.settings;
  const grown = Math.min(
    s.growthFactor * (t.pitchedB[b] as number),
    s.cellCeilingBPerL * brew.volumeL,
  );
  const cells = grown * (t.crashed[b] ? yeast.recoverCrashed : yeast.recoverUncrashed);
  t.cropCellsB[b] = cells;
  t.cropMl[b] = cells / yeast.density;
}

function keepForNextSeason(p: Problem, t: Timeline): void {
  const nJars = p.jars.length;
  for (let y = 0; y < t.keep.length; y++) {
    const source = t.keep[y] as number;
    t.keepMl[y] = 0;
    t.keepJars[y] = 0;
    t.keepViability[y] = 0;
    if (source < 0) continue;
    let v: number;
    let density: number;
    let have: number;
    if (source < nJars) {
      const jar = p.jars[source];
      if (!jar) continue;
      v = jar.startViability * Math.exp(-jar.storeLossPerDay * Math.max(0, p.to - jar.startDay));
      density = jar.density;
      have = jar.ml;
    } else {
      const from = source - nJars;
      if (!t.placed[from]) continue;
      const age = Math.max(0, p.to - (t.harvestDay[from] as number));
      v =
        p.cropViability *
        Math.exp(-(t.beerLoss[from] as number) - (p.brews[from]?.storeLossPerDay ?? 0) * age);
      density = p.yeasts[y]?.density ?? 1;
      have = t.cropMl[from] as number;
    }
    const wanted = (p.keepNeedB[y] as number) / (density * v);
    const ml = source < nJars ? have : Math.min(wanted, have);
    t.keepMl[y] = ml;
    t.keepJars[y] = Math.max(1, Math.ceil(ml / p.house.store.jarMl - 1e-9));
    t.keepViability[y] = v;
    t.drawnMl[source] = (t.drawnMl[source] as number) + ml;
    t.draws[source] = (t.draws[source] as number) + 1;
    t.jarsCut[source] = (t.jarsCut[source] as number) + (t.keepJars[y] as number);
  }
}

/** The last day, not included, on which a jar of the shelf that nobody uses stands there. */
export function shelfJarLeaves(p: Problem, j: number): number {
  const jar = p.jars[j];
  if (!jar || jar.gone) return p.today;
  return Math.max(p.today, jar.harvestedDay + p.settings.maxStorageDays);
}

function fillShelf(p: Problem, t: Timeline): void {
  const { shelf } = t;
  const first = p.days.first;
  shelf.fill(0);
  const nJars = p.jars.length;
  const stand = (from: number, until: number, jars: number) => {
    if (until <= from) return;
    const a = from - first;
    const z = until - first;
    shelf[a] = (shelf[a] as number) + jars;
    shelf[z] = (shelf[z] as number) - jars;
  };
  for (let i = 0; i < t.orderCount; i++) {
    const b = t.order[i] as number;
    const source = t.source[b] as number;
    if (source < nJars) continue;
    stand(t.harvestDay[source - nJars] as number, t.useDay[b] as number, t.drawJars[b] as number);
  }
  for (let j = 0; j < nJars; j++) {
    if (!t.draws[j]) stand(p.today, shelfJarLeaves(p, j), 1);
  }
  for (let i = 0; i < t.orderCount; i++) {
    const b = t.order[i] as number;
    const source = t.source[b] as number;
    if (source >= 0 && source < nJars) stand(p.today, t.useDay[b] as number, 1);
  }
  for (let y = 0; y < t.keep.length; y++) {
    const source = t.keep[y] as number;
    if (source < 0) continue;
    const from = source < nJars ? p.today : (t.harvestDay[source - nJars] as number);
    stand(from, p.to + 1, t.keepJars[y] as number);
  }
  let now = 0;
  t.shelfOver = 0;
  const most = p.house.store.maxJars;
  const last = shelf.length;
  for (let i = 0; i < last; i++) {
    now += shelf[i] as number;
    if (now - most > t.shelfOver && first + i >= p.today) {
      t.shelfOver = now - most;
      t.shelfOverDay = first + i;
    }
  }
}

function fillVessels(p: Problem, t: Timeline): void {
  t.startersOver = 0;
  let any = false;
  for (let i = 0; i < t.orderCount; i++) {
    if ((t.starterLitres[t.order[i] as number] as number) > 0) any = true;
  }
  if (!any) return;
  const { vessels } = t;
  const first = p.days.first;
  vessels.fill(0);
  for (let i = 0; i < t.orderCount; i++) {
    const b = t.order[i] as number;
    if ((t.starterLitres[b] as number) <= 0 || t.done[b]) continue;
    const a = (t.starterStart[b] as number) - first;
    const z = (t.day[b] as number) + 1 - first;
    vessels[a] = (vessels[a] as number) + 1;
    vessels[z] = (vessels[z] as number) - 1;
  }
  let now = 0;
  for (let i = 0; i < vessels.length; i++) {
    now += vessels[i] as number;
    if (now - p.house.starterGear.vessels > t.startersOver && first + i >= p.today) {
      t.startersOver = now - p.house.starterGear.vessels;
      t.startersOverDay = first + i;
    }
  }
}

/** Lays the turns of the kettle on the brew day and, where they do not fit, on the brew days right after it. */
export function fillKettle(
  p: Problem,
  t: Timeline,
  laid?: (brew: number, day: number, turns: number) => void,
): void {
  const cap = p.house.brewsPerDay;
  const { carryBrew, carryTurns } = t;
  const first = p.days.first;
  let carried = 0;
  let next = 0;
  let day = -FAR;
  t.turnsOver = 0;
  while (next < t.orderCount || carried > 0) {
    const startDay = next < t.orderCount ? (t.day[t.order[next] as number] as number) : FAR;
    const carryDay = carried > 0 ? (p.days.brewDayAfter[day - first] as number) : FAR;
    day = Math.min(startDay, carryDay);
    while (next < t.orderCount && t.day[t.order[next] as number] === day) {
      const b = t.order[next++] as number;
      carryBrew[carried] = b;
      carryTurns[carried++] = p.brews[b]?.turns ?? 1;
    }
    // every brew under way takes at least one turn a day, those begun earlier take what is left first
    let spare = cap - carried;
    if (spare < 0) {
      if (t.turnsOver === 0) t.turnsOverDay = day;
      t.turnsOver -= spare;
      spare = 0;
    }
    let kept = 0;
    for (let i = 0; i < carried; i++) {
      const wants = carryTurns[i] as number;
      const more = Math.min(spare, wants - 1);
      spare -= more;
      laid?.(carryBrew[i] as number, day, 1 + more);
      if (wants - 1 - more > 0) {
        carryBrew[kept] = carryBrew[i] as number;
        carryTurns[kept++] = wants - 1 - more;
      }
    }
    carried = kept;
  }
}
