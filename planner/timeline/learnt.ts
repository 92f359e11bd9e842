// What a house's own counts say about each of its strains, as settings that hold for that strain alone.
import type { House, Range, Settings, Yeast, YeastCount } from '../model/index.ts';
import { cropViability, learnStrain, type SlurryCount } from '../science/index.ts';
import { dayNumber } from './calendar.ts';
import { type OnBeer, usualTimeOnBeer } from './on-beer.ts';

export type LearntStrain = {
  /** The house's settings where nothing was counted; else with this strain's own rates and densities. */
  settings: Settings;
  /** Stained counts that its viability rests on. */
  counts: number;
  /** Cell counts that its density rests on. */
  densityCounts: number;
  /** How many times as fast as the house's settings say it dies; 1 without counts. */
  lossTimes: number;
  /** Share alive at the end of fermentation: the settings', or as learnt. */
  crop: Range;
};

/** Counts that are learnt from, the newest first: older ones say little of the yeast of today. */
const NEWEST = 200;

/** What each strain's counts teach, in the order of the house's yeasts. */
export function learntStrains(house: House, s: Settings): LearntStrain[] {
  return house.yeasts.map((yeast) => {
    const counts = house.counts
      .filter((count) => count.yeast === yeast.yeast)
      .sort((a, z) => (a.countedOn < z.countedOn ? 1 : a.countedOn > z.countedOn ? -1 : 0))
      .slice(0, NEWEST);
    if (counts.length === 0)
      return { settings: s, counts: 0, densityCounts: 0, lossTimes: 1, crop: cropViability(s) };
    const onBeer = usualTimeOnBeer(house, yeast, s);
    const { loss, density, settings } = learnStrain(
      counts.map((count) => slurryCount(count, yeast, onBeer, house, s)),
      s,
    );
    return {
      settings,
      counts: loss.counts,
      densityCounts: density.counts,
      lossTimes: loss.counts > 0 ? loss.times.likely : 1,
      crop: cropViability(settings),
    };
  });
}

/**
 * A row of the house as the learning wants it: on its beer as long as this house usually leaves it there,
 * then in the store since its harvest, at the store's temperature.
 */
function slurryCount(
  count: YeastCount,
  yeast: Yeast,
  onBeer: OnBeer,
  house: House,
  s: Settings,
): SlurryCount {
  const storeDays = Math.max(0, dayNumber(count.countedOn) - dayNumber(count.harvestedOn));
  const { stained, total, millionPerMl } = count;
  return {
    stain: stained === null || total === null ? null : { alive: total - stained, total },
    cells:
      millionPerMl === null
        ? null
        : {
            billionPerMl: millionPerMl / 1000,
            // Poisson's error of the cells seen; what scatters besides is learnt from jar to jar.
            errorShare: 1 / Math.sqrt(total ?? s.countedCells),
            settleDays: storeDays,
          },
    flocculation: yeast.flocculation,
    beer: onBeer,
    storeDays,
    storeC: house.store.tempC,
    abvPercent: count.sourceAbv ?? s.strongAfterAbv,
    generation: count.generation,
  };
}
