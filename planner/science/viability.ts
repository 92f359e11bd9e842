// How slurry dies: on the beer, then in the cold store.
//
// A first-order loss whose rate follows the temperature through three measured points (McCaig &
// Bendiak, MBAA Technical Quarterly 1985, at 1, 5 and up to 25 °C), log-linear between them: no single
// Q10 meets all three. Alcohol hastens it (Loveridge et al. 1999 in Boulton & Quain 2001: direction).
import type { Range } from '../model/common.ts';
import type { Settings } from '../model/settings.ts';

/** Temperatures of the three points, °C. */
const COLD_C = 1;
const COOL_C = 5;
const WARM_C = 25;
/** A rate of 0 has no logarithm; below this a loss cannot be told from none. */
const LEAST_RATE = 1e-9;

/**
 * First-order loss per day of slurry in storage at `tempC`. Log-linear through the settings' points at
 * 1, 5 and 25 °C; below 1 °C the line from 1 to 5 °C is carried on, above 25 °C the last point holds.
 */
export function storageLossPerDay(tempC: number, s: Settings): number {
  const cool = Math.max(LEAST_RATE, s.storageLossAt5C);
  if (tempC <= COOL_C) {
    const cold = Math.max(LEAST_RATE, s.storageLossAt1C);
    return cold * (cool / cold) ** ((tempC - COLD_C) / (COOL_C - COLD_C));
  }
  const warm = Math.max(LEAST_RATE, s.storageLossAt25C);
  if (tempC >= WARM_C) return warm;
  return cool * (warm / cool) ** ((tempC - COOL_C) / (WARM_C - COOL_C));
}

/** How many times faster slurry ages that came out of beer of this alcohol (% by volume); at least 1. */
export function strongAgeing(abvPercent: number, s: Settings): number {
  const above = abvPercent - s.strongAfterAbv;
  return above > 0 ? 1 + above * s.strongAgeingPerAbv : 1;
}

/** How many times faster slurry ages for its generation; at least 1. The default finds no effect. */
export function generationAgeing(generation: number, s: Settings): number {
  return 1 + Math.max(0, generation) * s.ageingPerGeneration;
}

/** First-order loss per day of yeast lying under its own beer at `tempC`. */
export function beerLossPerDay(tempC: number, s: Settings): number {
  return storageLossPerDay(tempC, s) * s.beerLossShare;
}

/** Share alive after `days` at a constant loss, from the share alive at the start. */
export function viabilityAfter(v: { start: number; lossPerDay: number; days: number }): number {
  return v.start * Math.exp(-v.lossPerDay * v.days);
}

/** Loss by which the misfit has grown to its full size: by then about a tenth has died. */
const MISFIT_FULL_AT = 0.1;

/** Share of the misfit that there is after this loss: no curve is off at its start. */
export function misfitGrown(loss: number): number {
  return loss < MISFIT_FULL_AT ? Math.max(0, loss) / MISFIT_FULL_AT : 1;
}

/**
 * Share alive as an 80 % interval. `beerLoss` and `storeLoss` are rate × days already summed. Three
 * uncertainties, of the starting share, of the rate (`storageSpread` times faster or slower) and of the
 * curve (`storageMisfit`), are independent: the squares of their logarithms add up.
 */
export function viabilityRange(
  v: { start: Range; beerLoss: number; storeLoss: number },
  s: Settings,
): Range {
  const loss = v.beerLoss + v.storeLoss;
  const likely = v.start.likely * Math.exp(-loss);
  if (!(likely > 0)) return { low: 0, likely: 0, high: 0 };
  const startDown = Math.log(v.start.likely / Math.max(v.start.low, 1e-12));
  const startUp = Math.log(v.start.high / v.start.likely);
  const lossDown = loss * (s.storageSpread - 1);
  const lossUp = loss * (1 - 1 / s.storageSpread);
  const off = (s.storageMisfit * misfitGrown(loss)) / likely;
  return {
    low: likely * Math.exp(-Math.sqrt(startDown ** 2 + lossDown ** 2 + off ** 2)),
    likely,
    // Stored slurry never gains.
    high: Math.min(
      v.start.high,
      likely * Math.exp(Math.sqrt(startUp ** 2 + lossUp ** 2 + off ** 2)),
    ),
  };
}

/**
 * Share alive at the end of a sound fermentation; likely = the setting. The interval takes in what
 * suppliers and breweries ask of yeast at pitching, above 90 % and at best 99 % (Murphy & Son;
 * Berkeley Yeast; Escarpment KB 274).
 */
export function cropViability(s: Settings): Range {
  const likely = s.cropViability;
  const dead = 1 - likely;
  return {
    low: Math.max(0, 1 - dead * s.cropDeadSpread),
    likely,
    high: 1 - dead / s.cropDeadSpread,
  };
}

/** Storage that no source covers: colder, warmer, longer or stronger than anything measured. */
const MEASURED_C = { from: 1, to: 25 };
const MEASURED_DAYS = 30;
const MEASURED_ABV = 8;

/** Where a prediction of stored slurry goes beyond what has been measured; a sentence each, or none. */
export function beyondData(v: { tempC: number; days: number; abvPercent: number }): string[] {
  const says: string[] = [];
  if (v.tempC < MEASURED_C.from)
    says.push(`${v.tempC} °C is colder than any measurement (from 1 °C): the line is carried on.`);
  if (v.tempC > MEASURED_C.to)
    says.push(`${v.tempC} °C is warmer than any measurement (to 25 °C): the 25 °C rate is used.`);
  if (v.days > MEASURED_DAYS)
    says.push(`${v.days} days is longer than any published band (30 days): count before pitching.`);
  if (v.abvPercent > MEASURED_ABV)
    says.push(
      `Beer of ${v.abvPercent.toFixed(1)} % alcohol is stronger than slurry is kept under (8 %).`,
    );
  return says;
}
