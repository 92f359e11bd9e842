// Published viabilities of stored slurry.
import * as science from '../../../planner/science/index.ts';
import { band, CP, HOME, NANO, near, type OutsideValue } from './value.ts';

/** Share alive of sound slurry after `days` in the cold at `tempC`. */
function stored(tempC: number, days: number, s = HOME) {
  return science.viabilityRange(
    {
      start: science.cropViability(s),
      beerLoss: 0,
      storeLoss: days * science.storageLossPerDay(tempC, s),
    },
    s,
  );
}

/** Share of what was alive at the start that is still alive. */
function kept(tempC: number, days: number, s = HOME) {
  return science.viabilityAfter({
    start: 1,
    lossPerDay: science.storageLossPerDay(tempC, s),
    days,
  });
}

const ESCARPMENT = 'Escarpment KB 274, brewery brink at 1–4 °C';
const bands = [
  [0, 0.9, 0.99],
  [3, 0.9, 0.99],
  [4, 0.8, 0.95],
  [7, 0.8, 0.95],
  [8, 0.6, 0.9],
  [14, 0.6, 0.9],
  [15, 0.5, 0.85],
  [30, 0.5, 0.85],
] as const;

export const viability: OutsideValue[] = [
  {
    model: 'viability',
    what: 'kept after 6 days at 1 °C, share of the start',
    source: 'McCaig & Bendiak, MBAA TQ 1985: 7 % lost (the default is fitted to it)',
    expected: near(0.93, 0.001),
    got: () => kept(1, 6),
    digits: 3,
  },
  {
    model: 'viability',
    what: 'kept after 6 days at 5 °C, brewery, share of the start',
    source: 'McCaig & Bendiak 1985: 14 % lost (the default is fitted to it)',
    expected: near(0.86, 0.001),
    got: () => kept(5, 6, NANO),
    digits: 3,
  },
  {
    model: 'viability',
    what: 'kept after 6 days at 5 °C, home, share of the start',
    source: 'McCaig & Bendiak 1985: 14 % lost',
    expected: near(0.86, 0.01),
    got: () => kept(5, 6),
    digits: 3,
    differs: 'the home default follows the refrigerator rule of 200 to 180 in a week',
  },
  {
    model: 'viability',
    what: 'the same at twice the loss, the low end of the home interval',
    source: 'McCaig & Bendiak 1985: 0.86 must lie above',
    expected: band(0, 0.86),
    got: () => kept(5, 12),
    digits: 3,
  },
  {
    model: 'viability',
    what: 'kept after 6 days at 25 °C, share of the start',
    source: 'McCaig & Bendiak 1985: up to 68 % lost (the default is fitted to it)',
    expected: near(0.32, 0.005),
    got: () => kept(25, 6),
    digits: 3,
  },
  ...[1, 2, 3].map((days) => ({
    model: 'viability',
    what: `after ${days} days at 1.6 °C, share alive`,
    source: 'Sall et al. 1988 in Boulton & Quain 2001: 90–96 % throughout three days',
    expected: band(0.9, 0.96),
    got: () => stored(1.6, days).likely,
    digits: 3,
  })),
  ...(['home', 'nano'] as const).flatMap((kind) =>
    [1, 4].flatMap((tempC) =>
      bands.map(([days, low, high]) => ({
        model: 'viability',
        what: `${kind}: after ${days} days at ${tempC} °C, share alive`,
        source: ESCARPMENT,
        expected: band(low, high),
        got: () => stored(tempC, days, kind === 'home' ? HOME : NANO).likely,
        digits: 3,
      })),
    ),
  ),
  {
    model: 'viability',
    what: '200 billion after a week in the refrigerator at 4 °C, billion',
    source: CP,
    expected: near(180, 5),
    got: () => 200 * kept(4, 7),
    digits: 1,
  },
  {
    model: 'viability',
    what: 'kept overnight at 4 °C, share of the start',
    source: `practically all, ${CP}`,
    expected: band(0.98, 1),
    got: () => kept(4, 1),
    digits: 3,
  },
  {
    model: 'viability',
    what: 'home: low end after 30 days at 4 °C, share alive',
    source: 'White Labs FAQ: below 50 %, which must lie inside the interval',
    expected: band(0, 0.5),
    got: () => stored(4, 30).low,
    digits: 3,
  },
  {
    model: 'viability',
    what: 'home: high end after 30 days at 4 °C, share alive',
    source:
      'Woodland Brewing, 25 December 2012: 0.2 percentage points lost a day, so 0.91 from 0.97',
    expected: band(0.91, 1),
    got: () => stored(4, 30).high,
    digits: 3,
    differs: 'rinsed slurry of two strains in one kitchen; every professional source loses faster',
  },
  {
    model: 'viability',
    what: 'home: low end after 60 days at 4 °C, share alive',
    source: 'Eureka Brewing on one strain under beer: below 10 %',
    expected: band(0, 0.1),
    got: () => stored(4, 60).low,
    digits: 3,
    differs:
      'one jar by methylene blue, beyond every storage limit; no one rate meets this and Woodland',
  },
  {
    model: 'viability',
    what: 'at the end of fermentation, low end, share alive',
    source: 'Murphy & Son: above 90 % is required at pitching',
    expected: band(0.9, 0.95),
    got: () => science.cropViability(HOME).low,
    digits: 3,
  },
];
