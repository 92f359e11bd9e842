// How much of a pitch can be alive at most and at least, by first-order loss at the published rates.
import type { Case, Placed } from './case.ts';
import { num } from './days.ts';

/** % by volume from the two gravities: the trade's 131.25 times their difference. */
const ABV_PER_SG = 131.25;

/** Log-linear between the three rates of the house; beyond them the outer two go on. */
function lossAt(c: Case, celsius: number): number {
  const [low, high, lowC, highC] =
    celsius <= 5
      ? [c.S.storageLossAt1C, c.S.storageLossAt5C, 1, 5]
      : [c.S.storageLossAt5C, c.S.storageLossAt25C, 5, 25];
  if (low <= 0 || high <= 0) return Math.max(low, high);
  return low * (high / low) ** ((celsius - lowC) / (highC - lowC));
}

/** How much faster slurry out of beer of this strength ages. */
const faster = (c: Case, abv: number): number =>
  1 + Math.max(0, abv - c.S.strongAfterAbv) * c.S.strongAgeingPerAbv;

type Band = { low: number; high: number };

const after = (start: Band, rate: number, times: Band, days: number): Band => ({
  low: start.low * Math.exp(-rate * times.high * Math.max(0, days)),
  high: start.high * Math.exp(-rate * times.low * Math.max(0, days)),
});

function widen(band: Band): Band {
  // The model fixes first-order loss, not how the rates are joined up: a tenth of the loss either way.
  return { low: band.low ** 1.1, high: band.high ** 0.9 };
}

function ofHarvest(c: Case, p: Placed, from: string): Band | null {
  const source = c.placedOf.get(from);
  const harvest = c.harvestOf.get(from);
  if (source === undefined || harvest === undefined || harvest.done) return null;
  const { brew } = source;
  // what was kept of a starter has been in no strong beer
  const strength = harvest.ofStarter ? 1 : faster(c, (brew.og - brew.fg) * ABV_PER_SG);
  const times = { low: 1, high: strength };
  const older = 1 + c.S.ageingPerGeneration * harvest.generation;
  // The end of fermentation is not in the plan: between no day on the beer and all of them.
  const onBeer = lossAt(c, brew.fermentC) * c.S.beerLossShare * older;
  const crop = {
    low: after({ low: c.S.cropViability, high: 1 }, onBeer, times, num(harvest.day) - source.D).low,
    high: c.S.cropViability,
  };
  const likely = harvest.cropViability.likely;
  const wide = widen(crop);
  if (likely > wide.high + 0.005 || likely < wide.low - 0.005)
    c.report(
      'amounts crop-viability',
      from,
      Math.max(likely - wide.high, wide.low - likely),
      'share',
      `${likely} alive when ${from} is harvested is not between ${wide.low.toFixed(3)} and ${wide.high.toFixed(3)}.`,
    );
  const rate = lossAt(c, c.house.store.tempC) * older;
  return after(
    { low: likely, high: likely },
    rate,
    { low: strength, high: strength },
    p.draw - num(harvest.day),
  );
}

function ofJar(c: Case, p: Placed, name: string): Band | null {
  const jar = c.jarOf.get(name);
  if (jar === undefined) return null;
  const measured = jar.measuredViability !== null && jar.measuredOn !== null;
  const start =
    measured && jar.measuredViability !== null ? jar.measuredViability : c.S.cropViability;
  const from = measured && jar.measuredOn !== null ? jar.measuredOn : jar.harvestedOn;
  const abv = jar.sourceOg === null ? c.S.strongAfterAbv : (jar.sourceOg - 1) * ABV_PER_SG;
  const rate = lossAt(c, c.house.store.tempC) * (1 + c.S.ageingPerGeneration * jar.generation);
  // Nobody wrote down how long the yeast of a jar lay on its beer: some loss before the shelf is granted.
  const low = measured ? start : start * 0.85;
  return after({ low, high: start }, rate, { low: 1, high: faster(c, abv) }, p.draw - num(from));
}

function ofPacks(c: Case, p: Placed): Band {
  const rate = p.yeast?.form === 'dry' ? c.S.dryLossPerDay : c.S.liquidLossPerDay;
  const { source } = p.plan;
  if (source.kind !== 'fresh') return { low: 0, high: 1 };
  const at = (days: number) => Math.exp(-rate * Math.max(0, days));
  // The age is that of the oldest pack; where some are bought, the others may be younger.
  const mixed = source.packsFromHand > 0 && source.packsFromHand < source.packs;
  const hand = p.yeast?.packsMadeOn ?? null;
  const arrived = source.arrivesOn === null ? p.draw : num(source.arrivesOn);
  const bought = p.draw - arrived + c.house.packAgeOnArrivalDays;
  const youngest = hand === null ? 0 : Math.min(bought, p.draw - num(hand));
  return { low: at(source.packAgeDays), high: at(mixed ? youngest : source.packAgeDays) };
}

/** The band in which the likely share alive of a pitch lies; null where a count or a fact decides. */
export function storageLoss(c: Case, p: Placed): Band | null {
  const { source } = p.plan;
  const band =
    source.kind === 'fresh'
      ? ofPacks(c, p)
      : source.kind === 'jar'
        ? ofJar(c, p, source.jar)
        : ofHarvest(c, p, source.brew);
  return band === null ? null : widen(band);
}
