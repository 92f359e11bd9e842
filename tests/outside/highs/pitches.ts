// Every pitch that a brew can get on a day, and what each costs: the outside reading of sources and hazards.
import {
  carriedBeerL,
  carriedChange,
  densityBPerMl,
  grownCellsB,
  packExpiryDays,
  packLossPerDay,
  starterGivesB,
  starterSeedB,
} from '../../../planner/science/index.ts';
import { type Beer, type BrewRead, dayOf, type Season, yeastOf } from './reading.ts';
import type { Crop, Pitch, Source } from './ways.ts';

/** A starter as it is laid out; 0 L for none. */
type Starter = { quarters: number; litres: number; use: number; decanted: boolean };

function startersOf(z: Season, brew: BrewRead, day: number, y: number): Starter[] {
  const none: Starter = { quarters: 0, litres: 0, use: day, decanted: false };
  const gear = z.house.starterGear;
  if (gear.vessels === 0 || yeastOf(z, y).form === 'dry') return [none];
  const out = [none];
  for (let quarters = 1; quarters <= 4; quarters++) {
    const litres = (gear.maxLitres * quarters) / 4;
    const growDays = quarters > 2 ? 2 : 1;
    const decanted = litres > z.s.decantFromShare * brew.volumeL;
    // chilled on the last day that has hands, and hands when it was begun: it grows no longer than it needs
    let grown = day;
    if (decanted) {
      const low = yeastOf(z, y).flocculation === 'low';
      grown = z.handDayUntil(day - (low ? z.s.starterSettleDaysLow : z.s.starterSettleDays));
      for (let tries = 0; tries < 7 && !z.isHandDay(grown - growDays); tries++) {
        grown = z.handDayUntil(grown - 1);
      }
    }
    const use = grown - growDays;
    if (use < z.today || !z.isHandDay(use) || (decanted && !z.isHandDay(day))) continue;
    out.push({ quarters, litres, use, decanted });
  }
  return out;
}

/** What a pitch is judged by. */
type Judged = {
  /** What the slurry came out of; null for packs. */
  beer: Beer | null;
  generation: number;
  alive: number;
  /** Days in the cold. */
  age: number;
  daysAfterHops: number;
  drawMl: number;
  starter: Starter;
  pitchedB: number;
  needB: number;
};

export function pitchesOf(
  z: Season,
  brew: BrewRead,
  b: number,
  day: number,
  y: number,
  crops: readonly Crop[],
): Pitch[] {
  const out: Pitch[] = [];
  for (const starter of startersOf(z, brew, day, y)) {
    const add = (source: Source, cash: number, judged: Omit<Judged, 'starter'>) => {
      const cost = costOf(z, brew, y, { ...judged, starter });
      if (cost === null) return;
      out.push({
        b,
        day,
        yeast: y,
        source,
        starterQuarters: starter.quarters,
        use: starter.use,
        generation: judged.generation,
        grownB: grownCellsB(judged.pitchedB, brew.volumeL, z.s),
        drawMl: judged.drawMl,
        jars: Math.ceil(judged.drawMl / z.house.store.jarMl - 1e-9),
        cost: cost + cash,
      });
    };
    addPacks(z, brew, y, starter, add);
    addSlurry(z, brew, y, starter, day, crops, add);
  }
  return out;
}

type Add = (source: Source, cash: number, judged: Omit<Judged, 'starter'>) => void;

function addPacks(z: Season, brew: BrewRead, y: number, starter: Starter, add: Add): void {
  const yeast = yeastOf(z, y);
  const { starterGear: gear, packAgeOnArrivalDays: arrivalAge } = z.house;
  const loss = packLossPerDay(yeast.form, z.s);
  const wantedB =
    starter.litres > 0
      ? starterSeedB(brew.needFreshB, starter.litres, gear.stirred, z.s)
      : brew.needFreshB;
  if (!Number.isFinite(wantedB)) return;
  const made = yeast.packsMadeOn === null ? z.today - arrivalAge : dayOf(yeast.packsMadeOn);
  const handAge = starter.use - made;
  const handB = yeast.packCellsB * Math.exp(-loss * Math.max(0, handAge));
  const newB = yeast.packCellsB * Math.exp(-loss * arrivalAge);
  const usable = handAge >= 0 && handAge <= packExpiryDays(yeast.form, z.s);
  const most = usable ? Math.min(yeast.packsOnHand, Math.ceil(wantedB / handB - 1e-9)) : 0;
  for (let fromHand = 0; fromHand <= most; fromHand++) {
    const missing = wantedB - fromHand * handB;
    const bought = missing > 1e-9 ? Math.ceil(missing / newB - 1e-9) : 0;
    if (bought > 0 && starter.use < z.today + z.house.orderLeadDays) continue;
    const cellsB = fromHand * handB + bought * newB;
    const pitchedB =
      starter.litres > 0 ? starterGivesB(cellsB, starter.litres, gear.stirred, z.s) : cellsB;
    add({ kind: 'packs', fromHand, bought }, bought * z.money(yeast.packPrice), {
      beer: null,
      generation: 0,
      alive: cellsB / ((fromHand + bought) * yeast.packCellsB),
      age: 0,
      daysAfterHops: 0,
      drawMl: 0,
      pitchedB,
      needB: brew.needFreshB,
    });
  }
}

function addSlurry(
  z: Season,
  brew: BrewRead,
  y: number,
  starter: Starter,
  day: number,
  crops: readonly Crop[],
  add: Add,
): void {
  const yeast = yeastOf(z, y);
  const { settleDays } = z.house.store;
  const needB = brew.needSlurryB * z.s.pitchMargin;
  const stirred = z.house.starterGear.stirred;
  const seedB = starter.litres > 0 ? starterSeedB(needB, starter.litres, stirred, z.s) : needB;
  if (!Number.isFinite(seedB)) return;
  const pitchedB = starter.litres > 0 ? starterGivesB(seedB, starter.litres, stirred, z.s) : seedB;
  const both = { pitchedB, needB: brew.needSlurryB };
  z.jars.forEach((jar, j) => {
    if (jar.yeast !== yeast.yeast || jar.state !== 'sound') return;
    if (starter.use < jar.harvested + settleDays) return;
    const measured = jar.measuredViability !== null;
    const since = measured && jar.measuredOn !== null ? dayOf(jar.measuredOn) : jar.harvested;
    const start = jar.measuredViability ?? z.cropShareAlive;
    const alive = start * Math.exp(-jar.beer.lossPerColdDay * Math.max(0, starter.use - since));
    const drawMl = seedB / (jar.density * alive);
    if (drawMl > jar.settledMl) return;
    add({ kind: 'jar', jar: j }, 0, {
      ...both,
      beer: jar.beer,
      generation: jar.generation,
      alive,
      age: starter.use - jar.harvested,
      daysAfterHops: jar.sourceDryHopped ? 1 : 0,
      drawMl,
    });
  });
  const density = densityBPerMl(yeast.flocculation, settleDays, z.s).likely;
  for (const crop of crops) {
    const from = z.brews[crop.b];
    if (crop.yeast !== y || !from || from === brew || crop.day >= day) continue;
    if (starter.use < crop.harvested + settleDays) continue;
    const age = starter.use - crop.harvested;
    const alive = crop.alive * Math.exp(-from.beer.lossPerColdDay * age);
    add({ kind: 'crop', crop }, 0, {
      ...both,
      beer: from.beer,
      generation: crop.generation,
      alive,
      age,
      daysAfterHops: crop.daysAfterHops,
      drawMl: seedB / (density * alive),
    });
  }
}

/** The limits that a pitch breaks, each named as the house would relax it. */
function broken(z: Season, y: number, p: Judged): string[] {
  const out: string[] = [];
  if (p.starter.litres === 0 && p.alive < z.s.viabilityFloor - 1e-9) out.push('viability-floor');
  if (p.beer === null) return out;
  const own = yeastOf(z, y).maxGeneration ?? Number.POSITIVE_INFINITY;
  const strong = p.beer.ogP > z.s.strongBeerP;
  const limit = Math.min(
    z.s.maxGeneration,
    own,
    strong ? z.s.maxGenerationAfterStrong : z.s.maxGeneration,
  );
  if (p.generation > limit) out.push('generation-limit');
  if (p.age > z.s.maxStorageDays) out.push('storage-limit');
  if (p.beer.og >= z.s.gravityCeiling - 1e-9) out.push('gravity-ceiling');
  if (p.beer.souring === 'kettle') out.push('kettle-soured');
  if (p.beer.souring === 'mixed') out.push('mixed-culture');
  if (p.daysAfterHops > 0) out.push('dry-hopped');
  if (p.beer.additions.length > 0) out.push('additions');
  return out;
}

/** Everything but the packs that a pitch costs; null if a hard rule forbids it. */
function costOf(z: Season, brew: BrewRead, y: number, p: Judged): number | null {
  const { s } = z;
  const breaks = broken(z, y, p);
  if (breaks.some((rule) => !z.relaxed.has(rule))) return null;
  let hazard = breaks.reduce((sum, rule) => sum + z.weight(rule), 0);
  const weak = Math.max(0, 0.9 - p.alive) * (p.starter.litres > 0 ? 0.25 : 1);
  hazard += z.weight('weak-yeast') * weak;
  hazard += z.weight('later-generation') * p.generation;
  hazard += (z.weight('old-slurry') * p.age) / 7;
  if (p.beer === null) {
    if (brew.beer.ogP > s.strongFromP) hazard += z.weight('first-into-strong');
  } else {
    const { beer } = p;
    hazard += z.weight('strong-to-light') * Math.max(0, beer.ogP - brew.beer.ogP);
    // the old beer is poured off with the starter's wort
    const carriedL = p.starter.decanted ? 0 : carriedBeerL(p.drawMl, s.slurryBeerShare);
    const noticed = (mine: number, theirs: number) =>
      Math.max(0, carriedChange(mine, brew.volumeL, theirs, carriedL)) / Math.max(1, mine / 10);
    hazard += z.weight('dark-to-light') * noticed(brew.ebc, beer.ebc);
    hazard += z.weight('hoppy-to-delicate') * noticed(brew.ibu, beer.ibu);
    if (beer.fermentC !== null) {
      hazard += z.weight('warm-to-cold') * Math.max(0, beer.fermentC - brew.fermentC - 2);
    }
  }
  const value = z.money(brew.value);
  let cost = Math.round(value * z.weight('pitch-risk') * (1 - Math.exp(-hazard)));
  cost += z.money(Math.max(0, p.pitchedB / p.needB - 1.5) * z.weight('over-pitch'));
  if (p.beer !== null) cost += z.money(s.checkMinutes * s.pricePerMinute);
  if (p.starter.litres > 0) {
    cost += z.money(p.starter.litres * s.starterWortPerL);
    cost += z.money(s.starterMinutes * s.pricePerMinute);
  }
  return cost;
}
