// A pitch and what becomes of it: generation, viability, mL drawn, cells pitched, the crop it leaves.
import { generationAgeing, grownCellsB, starterGivesB, starterSeedB } from '../science/index.ts';
import { divideStarter, givenGeneration, KEPT } from './kept.ts';
import { FAR, FRESH, type Problem } from './problem.ts';
import type { Timeline } from './timeline.ts';

/** Works out one pitch; its source must have been worked out before. */
export function pitch(p: Problem, t: Timeline, b: number): void {
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
    t.packs[b] = 0;
    t.packsFromHand[b] = 0;
    t.delivery[b] = -1;
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
      density = cropDensity(p, t, from);
      const there = t.placed[from] === 1 && (t.day[from] as number) < (t.day[b] as number);
      t.generation[b] = there ? givenGeneration(t, from) : 1;
      const harvested = t.harvestDay[from] as number;
      const age = there ? Math.max(0, use - harvested) : 0;
      t.ageDays[b] = age;
      t.viability[b] = there ? cropAlive(p, t, from, age) : 0;
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
    } else {
      t.drawMl[b] = 0;
      t.drawJars[b] = 0;
      t.pitchedB[b] = 0;
      t.drawnEarly[b] = FAR;
    }
    // what is in its starter already was there to be drawn
    if (brew.begun) t.drawnEarly[b] = -1;
  }
  taint(p, t, b);
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
    t.viability[b] = cropAlive(p, t, from, age);
  }
}

/** Loss per day in the cold store of what brew `from` gives, before its generation. */
export function coldLoss(p: Problem, t: Timeline, from: number): number {
  const y = t.yeast[from] as number;
  if (t.crop[from] === KEPT) return p.yeasts[y]?.storeLossPerDay ?? 0;
  return p.brews[from]?.storeLossPerDay[y] ?? 0;
}

/** How many times faster what brew `from` gives dies for its generation. */
export function cropAgeing(p: Problem, t: Timeline, from: number): number {
  return generationAgeing(givenGeneration(t, from), p.settings);
}

/** Billion cells per mL of what brew `from` gives: as counted, else as its strain settles. */
export function cropDensity(p: Problem, t: Timeline, from: number): number {
  const counted = p.brews[from]?.harvested?.count?.densityBPerMl;
  return counted ?? p.yeasts[t.yeast[from] as number]?.density ?? 1;
}

/** Share alive of what brew `from` gives, so many days after its harvest. */
function cropAlive(p: Problem, t: Timeline, from: number, ageDays: number): number {
  const count = p.brews[from]?.harvested?.count;
  if (count?.viability != null) {
    const since = (t.harvestDay[from] as number) + ageDays - count.day;
    const perDay = coldLoss(p, t, from) * cropAgeing(p, t, from);
    return count.viability * Math.exp(-perDay * Math.max(0, since));
  }
  const loss = (t.beerLoss[from] as number) + coldLoss(p, t, from) * ageDays;
  const alive = p.yeasts[t.yeast[from] as number]?.learnt.crop.likely ?? 0;
  return alive * Math.exp(-loss * cropAgeing(p, t, from));
}

/** Whether what this brew is pitched with comes of something suspect. */
function taint(p: Problem, t: Timeline, b: number): void {
  const source = t.source[b] as number;
  let tainted = 0;
  if (source >= p.jars.length) {
    const from = source - p.jars.length;
    tainted = p.brews[from]?.state === 'suspect' || t.tainted[from] ? 1 : 0;
  } else if (source >= 0) tainted = p.jars[source]?.state === 'suspect' ? 1 : 0;
  t.tainted[b] = tainted;
}

function crop(p: Problem, t: Timeline, b: number): void {
  const brew = p.brews[b];
  const yeast = p.yeasts[t.yeast[b] as number];
  if (!brew || !yeast) return;
  if (brew.harvested) {
    t.cropMl[b] = brew.harvested.ml;
    t.cropCellsB[b] = brew.harvested.ml * cropDensity(p, t, b);
    return;
  }
  if (t.crop[b] === KEPT) {
    divideStarter(p, t, b);
    return;
  }
  if (t.usableFrom[b] === FAR) {
    t.cropMl[b] = 0;
    t.cropCellsB[b] = 0;
    return;
  }
  const grown = grownCellsB(t.pitchedB[b] as number, brew.volumeL, p.settings);
  const cells = grown * (t.crashed[b] ? yeast.recoverCrashed : yeast.recoverUncrashed);
  t.cropCellsB[b] = cells;
  t.cropMl[b] = cells / yeast.density;
}

/** The jars that are kept for the end of the season: how much, how many, how much alive by then. */
export function keepForNextSeason(p: Problem, t: Timeline): void {
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
      v = cropAlive(p, t, from, age);
      density = cropDensity(p, t, from);
      have = t.cropMl[from] as number;
    }
    const wanted = (p.keepNeedB[y] as number) / (density * v);
    const ml = source < nJars ? have : Math.min(wanted, have);
    t.keepMl[y] = ml;
    t.keepJars[y] = source < nJars ? 1 : Math.max(1, Math.ceil(ml / p.house.store.jarMl - 1e-9));
    t.keepViability[y] = v;
  }
}
