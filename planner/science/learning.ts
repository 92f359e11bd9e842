// What a house's own counts say about its own yeast: how alive its crops are, how fast they die, how thick they settle.
//
// How counts are weighed is in learn-grid.ts, what stained counts teach in learn-loss.ts. Here: densities, and
// the settings that follow for one strain. No counts give the default unchanged.
import type { Range } from '../model/common.ts';
import type { Settings } from '../model/settings.ts';
import { Z80 } from './chance.ts';
import { factorRange, logAt, oddAmong, POINTS, weigh } from './learn-grid.ts';
import { type LearnedLoss, learnLoss } from './learn-loss.ts';
import { densityBPerMl, type Flocculation } from './slurry.ts';
import { beerLossPerDay, generationAgeing, storageLossPerDay, strongAgeing } from './viability.ts';

/** A cell count of settled slurry, with what the default says of it. */
export type DensityCount = {
  billionPerMl: number;
  /** Standard error of the count as a share of it. */
  errorShare: number;
  /** Billion per mL by the default settings, for this flocculation and these days of settling. */
  expected: number;
};

/** How many times the default density a strain settles to in this house. */
export type LearnedDensity = {
  /** 80 % interval for the next jar; the default before any count is around 1. */
  times: Range;
  /** The interval for the next jar as one factor either way, as the settings state it. */
  spread: number;
  counts: number;
};

/** How many times the default density this strain settles to in this house, from cell counts. */
export function learnDensity(counts: readonly DensityCount[], s: Settings): LearnedDensity {
  const sd = Math.max(Math.log(s.densitySpread) / Z80, 1e-3);
  const said = counts.map(({ billionPerMl, expected, errorShare }) => {
    const jar = Float64Array.from({ length: POINTS }, (_, point) => {
      const off = (Math.log(billionPerMl / expected) - logAt(point, sd)) / errorShare;
      return Math.exp(-0.5 * off * off);
    });
    return { jar, odd: oddAmong(jar) };
  });
  const times = factorRange(weigh(said, s.oddCountShare, 0).next, sd);
  return { times, spread: Math.sqrt(times.high / times.low), counts: counts.length };
}

/**
 * The settings that hold for one strain once its counts are in: crop, rates, density and their spreads
 * replaced by what was learnt. Without counts the settings come back as they are.
 */
export function learnedSettings(
  s: Settings,
  learned: { loss?: LearnedLoss | undefined; density?: LearnedDensity | undefined },
): Settings {
  const { loss, density } = learned;
  const own: Record<string, number> = {};
  if (loss && loss.counts > 0) {
    own.storageLossAt1C = s.storageLossAt1C * loss.times.likely;
    own.storageLossAt5C = s.storageLossAt5C * loss.times.likely;
    own.storageLossAt25C = s.storageLossAt25C * loss.times.likely;
    // counts of jars say nothing of the beer: what is lost there stays what it was
    own.beerLossShare = s.beerLossShare / loss.times.likely;
    own.storageSpread = loss.spread;
    own.storageMisfit = loss.misfit;
    own.cropViability = loss.crop.likely;
    own.cropDeadSpread = loss.cropSpread;
  }
  if (density && density.counts > 0) {
    own.densityHigh = s.densityHigh * density.times.likely;
    own.densityMedium = s.densityMedium * density.times.likely;
    own.densityLow = s.densityLow * density.times.likely;
    own.densitySpread = density.spread;
  }
  return Object.keys(own).length === 0 ? s : { ...s, ...own };
}

/** One jar looked at under the microscope, as the house writes it down. */
export type SlurryCount = {
  /** Living and all cells seen; null where only the density was counted. */
  stain: { alive: number; total: number } | null;
  /** Cells per mL with its error; null where only the stain was counted. */
  cells: { billionPerMl: number; errorShare: number; settleDays: number } | null;
  flocculation: Flocculation;
  /** Stretches on the beer after fermentation, then days in the cold and their temperature. */
  beer: readonly { days: number; tempC: number }[];
  storeDays: number;
  storeC: number;
  /** Alcohol of the beer it came from, % by volume, and the generation of this slurry. */
  abvPercent: number;
  generation: number;
};

/** Everything the counts of one strain in one house teach, and the settings that follow for it. */
export function learnStrain(
  counts: readonly SlurryCount[],
  s: Settings,
): { loss: LearnedLoss; density: LearnedDensity; settings: Settings } {
  const loss = learnLoss(
    counts.flatMap((c) => {
      if (!c.stain) return [];
      const ageing = strongAgeing(c.abvPercent, s) * generationAgeing(c.generation, s);
      const onBeer = c.beer.reduce((sum, b) => sum + b.days * beerLossPerDay(b.tempC, s), 0);
      const cold = c.storeDays * storageLossPerDay(c.storeC, s);
      return [{ ...c.stain, loss: cold * ageing, beerLoss: onBeer * ageing }];
    }),
    s,
  );
  const density = learnDensity(
    counts.flatMap((c) => {
      if (!c.cells) return [];
      const { billionPerMl, errorShare, settleDays } = c.cells;
      const expected = densityBPerMl(c.flocculation, settleDays, s).likely;
      return [{ billionPerMl, errorShare, expected }];
    }),
    s,
  );
  return { loss, density, settings: learnedSettings(s, { loss, density }) };
}
