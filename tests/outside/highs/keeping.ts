// Jars kept for the next season: which of them would be worth their value on the last day.
import { densityBPerMl } from '../../../planner/science/index.ts';
import { dayOf, type Season, yeastOf } from './reading.ts';
import type { CropWay } from './ways.ts';

export type Keep = {
  yeast: number;
  from: { jar: number } | { crop: CropWay };
  ml: number;
  jars: number;
};

/** What may be kept of each strain for the next season and would be worth its value then. */
export function keepsOf(z: Season, crops: readonly CropWay[]): Keep[] {
  const out: Keep[] = [];
  if (z.money(z.s.endJarValue) === 0) return out;
  const sound = (
    y: number,
    from: { harvested: number; generation: number; ogP: number; og: number; alive: number },
  ) => {
    const own = yeastOf(z, y).maxGeneration ?? z.s.maxGeneration;
    const strong = from.ogP > z.s.strongBeerP;
    const limit = strong ? z.s.maxGenerationAfterStrong : z.s.maxGeneration;
    return (
      from.harvested <= z.to &&
      z.to - from.harvested <= z.s.maxStorageDays &&
      from.generation <= Math.min(z.s.maxGeneration, own, limit) &&
      from.alive >= z.s.viabilityFloor &&
      from.og < z.s.gravityCeiling - 1e-9
    );
  };
  z.jars.forEach((jar, j) => {
    const y = z.house.yeasts.findIndex((yeast) => yeast.yeast === jar.yeast);
    const measured = jar.measuredViability !== null && jar.measuredOn !== null;
    const since = measured ? dayOf(jar.measuredOn ?? jar.harvestedOn) : jar.harvested;
    const alive =
      (jar.measuredViability ?? z.cropShareAlive) *
      Math.exp(-jar.beer.lossPerColdDay * Math.max(0, z.to - since));
    const enough = jar.settledMl * alive * jar.density >= z.keepB(jar.yeast) / 2;
    const clean = !jar.sourceDryHopped && jar.state === 'sound' && jar.beer.souring === null;
    const from = { ...jar.beer, harvested: jar.harvested, generation: jar.generation, alive };
    if (!enough || !clean || jar.beer.additions.length > 0 || !sound(y, from)) return;
    out.push({ yeast: y, from: { jar: j }, ml: jar.settledMl, jars: 1 });
  });
  for (const way of crops) {
    const { crop } = way;
    const brew = z.brews[crop.b];
    if (!brew || brew.souring !== null || brew.additions.length > 0 || crop.daysAfterHops > 0)
      continue;
    const yeast = yeastOf(z, crop.yeast);
    const density = densityBPerMl(yeast.flocculation, z.house.store.settleDays, z.s).likely;
    const alive =
      crop.alive * Math.exp(-brew.beer.lossPerColdDay * Math.max(0, z.to - crop.harvested));
    const wanted = z.keepB(yeast.yeast);
    const ml = Math.min(wanted / (density * alive), way.ml);
    const from = { ...brew.beer, ...crop, alive };
    if (ml * alive * density < wanted / 2 || !sound(crop.yeast, from)) continue;
    const jars = Math.max(1, Math.ceil(ml / z.house.store.jarMl - 1e-9));
    out.push({ yeast: crop.yeast, from: { crop: way }, ml, jars });
  }
  return out;
}
