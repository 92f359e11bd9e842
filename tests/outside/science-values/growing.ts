// Published harvests and starters, and what slurry carries along.
import * as science from '../../../planner/science/index.ts';
import { band, CP, HOME, near, type OutsideValue, perMl } from './value.ts';

export const harvest: OutsideValue[] = [
  {
    model: 'harvest',
    what: 'cells grown for each one pitched',
    source: `about four, ${CP}; 3–5 in Briggs et al. 2004 and Boulton & Quain 2001 (from memory)`,
    expected: near(4, 1),
    got: () => science.grownCellsB(200, 20, HOME) / 200,
    digits: 1,
  },
  ...[10, 15].map((pitch) => ({
    model: 'harvest',
    what: `final cells from ${pitch} M/mL pitched, M/mL`,
    source: '40–80 typical (from memory)',
    expected: band(40, 80),
    got: () => science.grownCellsB(pitch * 20, 20, HOME) / 20,
    digits: 0,
  })),
  {
    model: 'harvest',
    what: 'pitches of the same beer that one ale harvest covers',
    source: 'Balter Beerworks in BYO: 2–3',
    expected: band(2, 3),
    got: () => {
      const pitched = perMl(1, 20, 12);
      const jars =
        science.grownCellsB(pitched, 20, HOME) * science.recoverableShare('medium', true, HOME);
      return (jars * science.cropViability(HOME).likely) / pitched;
    },
    digits: 2,
  },
];

const nineP = { ...HOME, starterGramsPerL: 93.23 };
const WZ = 'White & Zainasheff, Yeast, Brewers Publications 2010';

export const starters: OutsideValue[] = [
  {
    model: 'starters',
    what: 'still, 100 billion in 1 L of 9 °P, yield factor in M/mL per °P (9 → 2 °P)',
    source: `${WZ}, citing Nielsen 2005: prints 7.4 for 152 billion`,
    expected: near(7.43, 0.05),
    got: () => (science.starterGivesB(100, 1, false, nineP) - 100) / 7,
    digits: 2,
  },
  ...(
    [
      [0.5, 112],
      [0.8, 138],
      [1, 152],
      [1.5, 181],
      [2, 205],
      [4, 276],
      [8, 369],
      [20, 600],
    ] as const
  ).map(([litres, cells]) => ({
    model: 'starters',
    what: `still, 100 billion in ${litres} L of 9 °P, billion`,
    source: `${WZ}${litres === 1 ? '' : ' (from memory; the model interpolates this table)'}`,
    expected: near(cells, 0.5),
    got: () => science.starterGivesB(100, litres, false, nineP),
    digits: 1,
  })),
  ...(
    [
      [59.8, 177.1],
      [51.2, 199.1],
    ] as const
  ).map(([start, end]) => ({
    model: 'starters',
    what: `moved, ${start} billion in 1 L of 9.42 °P, billion after two days`,
    source: 'Woodland Brewing, 25 February 2013, counted',
    expected: near(end, end * 0.15),
    got: () => science.starterGivesB(start, 1, true, { ...HOME, starterGramsPerL: 97.7 }),
    digits: 0,
  })),
  {
    model: 'starters',
    what: 'stirred, 100 billion in 1 L, billion after one day',
    source: 'an anonymous microbiologist in a forum: about 180',
    expected: near(180, 20),
    got: () => science.starterGivesB(100, 1, true, HOME),
    digits: 0,
    differs:
      'a weak source, counted after one day; Woodland and Troester find 1.2–1.5 billion a gram',
  },
];

export const carryOver: OutsideValue[] = [
  {
    model: 'carry-over',
    what: '0.3 L of slurry in 20 L: most that can be carried over, share of the batch',
    source: 'ratio of the volumes, 1.5 %: what is carried must lie below',
    expected: band(0, 0.015),
    got: () => science.carriedBeerL(300) / 20,
    digits: 4,
  },
];

export const wakeUp: OutsideValue[] = [
  {
    model: 'starters',
    what: 'vitality start for 20 L, litres',
    source: `about a litre, ${CP}`,
    expected: near(1, 0.25),
    got: () => science.vitalityStart(20, HOME).litres,
    digits: 2,
  },
  {
    model: 'starters',
    what: 'vitality start, hours before pitching',
    source: `about four, ${CP}`,
    expected: near(4, 1),
    got: () => science.vitalityStart(20, HOME).hoursBefore,
    digits: 0,
  },
];
