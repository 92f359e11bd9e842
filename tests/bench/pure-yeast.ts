// Pure yeast: every date fixed, each harvest feeds one brew. The fewest packs are a minimum path cover of a graph without
// rings: brews less the largest matching of givers to takers (Fulkerson 1956). The matching is by `edmonds-blossom`.
import { createRequire } from 'node:module';
import { plan } from '../../planner/index.ts';
import { House } from '../../planner/model/index.ts';
import { dice } from '../outside/highs/small-season.ts';
import type { Row } from './measure.ts';

const blossom = createRequire(import.meta.url)('edmonds-blossom') as (
  edges: [number, number, number][],
) => number[];

const FIRST = Date.UTC(2027, 0, 4);
const iso = (day: number): string => new Date(FIRST + day * 86_400_000).toISOString().slice(0, 10);
const TODAY = iso(-30);
const EVERY_DAY = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'] as const;
const TANK_DAYS = 10;
const SETTLE = 1;
const STORAGE = 12;

/** Days on which the brews are brewed. */
export function daysOf(count: number, seed: number): number[] {
  const roll = dice(seed);
  return Array.from({ length: count }, () => Math.floor(roll() * count * 3)).sort((a, b) => a - b);
}

/** The fewest brews that must have packs of their own. */
export function fewestRoots(days: readonly number[]): number {
  const n = days.length;
  const edges: [number, number, number][] = [];
  for (let giver = 0; giver < n; giver++) {
    for (let taker = 0; taker < n; taker++) {
      const harvest = (days[giver] as number) + TANK_DAYS;
      const age = (days[taker] as number) - harvest;
      if (age >= SETTLE && age <= STORAGE) edges.push([giver, n + taker, 1]);
    }
  }
  if (edges.length === 0) return n;
  const mates = blossom(edges);
  return n - mates.slice(0, n).filter((mate) => mate >= 0).length;
}

/** One pack is one pitch; a crop is just one draw; nothing costs but packs. */
export function asSeason(days: readonly number[]): House {
  return House.parse({
    name: 'Dates fixed',
    kind: 'home',
    timeZone: 'Etc/UTC',
    currency: 'EUR',
    from: iso(0),
    to: iso(days.length * 3 + 1),
    brewDays: EVERY_DAY,
    workDays: EVERY_DAY,
    brewsPerDay: 100,
    orderLeadDays: 0,
    packAgeOnArrivalDays: 0,
    deliveryCost: 0,
    store: { tempC: 3, maxJars: 10_000, jarMl: 100_000, settleDays: SETTLE },
    starterGear: { vessels: 0, maxLitres: 0, stirred: false },
    rules: {
      maxStorageDays: STORAGE,
      maxGeneration: 100,
      maxGenerationAfterStrong: 100,
      harvestMinutes: 0,
      jarMinutes: 0,
      checkMinutes: 0,
      endJarValue: 0,
      viabilityFloor: 0,
      cropViability: 1,
      storageLossAt1C: 0,
      storageLossAt5C: 0,
      storageLossAt25C: 0,
      liquidLossPerDay: 0,
      freshShare: 1,
      growthFactor: 1,
      recoverHigh: 1,
      density24hShare: 1,
      crashDays: 0,
    },
    weights: { 'pitch-risk': 0, 'over-pitch': 0 },
    tanks: days.map((_, i) => ({
      tank: `T${i + 1}`,
      minFillL: 1,
      maxFillL: 30,
      minC: 0,
      maxC: 30,
      turnaroundDays: 0,
      bottomOutlet: false,
    })),
    yeasts: [
      {
        yeast: 'One',
        kind: 'ale',
        form: 'liquid',
        nature: 'clean',
        packCellsB: 250,
        packPrice: 10,
        packsOnHand: 0,
        minC: 10,
        maxC: 25,
        flocculation: 'high',
      },
    ],
    brews: days.map((day, i) => ({
      brew: `Brew ${i + 1}`,
      yeasts: ['One'],
      volumeL: 20,
      og: 1.04837,
      fg: 1.012,
      ebc: 10,
      ibu: 20,
      fermentC: 18,
      tankDays: TANK_DAYS,
      conditionDays: 0,
      brewOn: iso(day),
      value: 0,
    })),
  });
}

export function pureYeastRows(quick: boolean): Row[] {
  const sizes = quick ? [10] : [10, 20, 40];
  return sizes.map((count) => {
    const seasons = quick ? 3 : 10;
    let equal = 0;
    let over = 0;
    for (let seed = 1; seed <= seasons; seed++) {
      const days = daysOf(count, seed * 31 + count);
      const { totals } = plan({ house: asSeason(days), today: TODAY });
      const fewest = fewestRoots(days);
      if (totals.hard === 0 && totals.leftOut === 0 && totals.packs === fewest) equal++;
      over += totals.packs - fewest;
    }
    return {
      what: `dates fixed: ${count} brews with the fewest packs`,
      value: (100 * equal) / seasons,
      unit: '% of cases',
      target: 100,
      better: 'more',
      note: `${equal} of ${seasons}; ${over} packs too many in all; minimum path cover by edmonds-blossom`,
    };
  });
}
