// The limits that the trade speaks of, as the two kinds of house keep them.
import * as science from '../../../planner/science/index.ts';
import { band, CP, HOME, NANO, near, type OutsideValue } from './value.ts';

export const limits: OutsideValue[] = [
  {
    model: 'limits',
    what: 'home: generation at which a chain ends',
    source: `near 5, ${CP}`,
    expected: near(5, 1),
    got: () => HOME.maxGeneration,
    digits: 0,
  },
  {
    model: 'limits',
    what: 'brewery: generation at which a chain ends',
    source: `10 and on, ${CP}; Quain: policy of at most 10`,
    expected: near(10, 0),
    got: () => NANO.maxGeneration,
    digits: 0,
  },
  {
    model: 'limits',
    what: 'generations after beer above 15 °P',
    source: 'Eastern-European J. of Enterprise Technologies 2021: at most 5 at 15 °P, 4 at 18 °P',
    expected: band(4, 5),
    got: () => NANO.maxGenerationAfterStrong,
    digits: 0,
  },
  {
    model: 'limits',
    what: 'gravity above which yeast is not used again',
    source: `comfortable below about 1.065–1.070, ${CP}`,
    expected: band(1.065, 1.07),
    got: () => HOME.gravityCeiling,
    digits: 3,
  },
  {
    model: 'limits',
    what: 'the same, °P',
    source: 'Berkeley Yeast: harvest up to 18 °P',
    expected: band(15, 18),
    got: () => science.platoFromSg(HOME.gravityCeiling),
    digits: 1,
  },
  {
    model: 'limits',
    what: 'brewery: days of storage',
    source: 'a supplier: 10–14 days at most; Murphy & Son: 7; Quain: 4',
    expected: band(7, 14),
    got: () => NANO.maxStorageDays,
    digits: 0,
  },
  {
    model: 'limits',
    what: 'home: days of storage',
    source: 'Escarpment blog: 3–6 weeks by strain',
    expected: band(21, 42),
    got: () => HOME.maxStorageDays,
    digits: 0,
  },
];
