// Published counts under the microscope, tastings and colours.
import * as science from '../../../planner/science/index.ts';
import { FAO_LEVELS, FAO_TRIANGLE } from '../science-triangle-table.ts';
import { CP, near, type OutsideValue } from './value.ts';

const MBAA = 'MBAA community reply on cell-count error, May 2022';
const MBAA_SQUARES = [35, 41, 37, 47, 43, 45, 70, 46, 40, 29];
const mbaa = () => science.countCells(MBAA_SQUARES, science.NEUBAUER_ML.corner, 1);
const percentOf = (hits: number, n: number, end: 'low' | 'high') => () =>
  100 * science.wilson(hits, n, 1.959964)[end];

export const counting: OutsideValue[] = [
  {
    model: 'counting',
    what: '150 cells in 5 of 25 central squares at a dilution of 200, billion per mL',
    source: 'an example in a brewers’ forum; the formula is standard',
    expected: near(1.5, 1e-12),
    got: () =>
      science.countCells([30, 30, 30, 30, 30], science.NEUBAUER_ML.central, 200).millionPerMl
        .likely / 1000,
    digits: 3,
  },
  {
    model: 'counting',
    what: 'ten corner squares (35 … 29), mean of a square',
    source: MBAA,
    expected: near(43.3, 0.001),
    got: () => mbaa().meanPerSquare,
    digits: 1,
  },
  {
    model: 'counting',
    what: 'the same, standard deviation',
    source: MBAA,
    expected: near(10.88, 0.01),
    got: () => mbaa().betweenSd ?? Number.NaN,
    digits: 2,
  },
  {
    model: 'counting',
    what: 'the same, million per mL',
    source: MBAA,
    expected: near(6.93, 0.01),
    got: () => mbaa().millionPerMl.likely,
    digits: 2,
  },
  {
    model: 'counting',
    what: 'the same, coefficient of variation between squares, %',
    source: `${MBAA}: 25`,
    expected: near(25, 0.5),
    got: () => 100 * (mbaa().betweenCv ?? Number.NaN),
    digits: 1,
  },
  {
    model: 'counting',
    what: 'the same, error of the mean, % (Poisson alone would say 4.8)',
    source: 'worked from the reply’s figures: 25.1 ÷ √10',
    expected: near(7.9, 0.1),
    got: () => 100 * mbaa().errorShare,
    digits: 1,
  },
  ...(
    [
      [180, 200, 85.1, 93.4],
      [190, 200, 91, 97.3],
      [380, 400, 92.4, 96.7],
      [95, 100, 88.8, 97.8],
    ] as const
  ).flatMap(([alive, all, low, high]) =>
    (['low', 'high'] as const).map((end) => ({
      model: 'counting',
      what: `${alive} of ${all} alive, ${end} end of Wilson’s 95 % interval, %`,
      source: 'worked by hand from Wilson 1927',
      expected: near(end === 'low' ? low : high, 0.06),
      got: percentOf(alive, all, end),
      digits: 1,
    })),
  ),
];

export const tasting: OutsideValue[] = [
  {
    model: 'tasting',
    what: 'right answers that 21 tasters must give at 5 %',
    source: CP,
    expected: near(12, 0),
    got: () => science.triangleNeeded(21, 0.05) ?? Number.NaN,
    digits: 0,
  },
  {
    model: 'tasting',
    what: `entries of the FAO table (${FAO_TRIANGLE.length * FAO_LEVELS.length}) that differ`,
    source: 'FAO Manual, Appendix A (V7180E)',
    expected: near(0, 0),
    got: () =>
      FAO_TRIANGLE.flatMap(([tasters, ...needed]) =>
        needed.filter((right, i) => science.triangleNeeded(tasters, FAO_LEVELS[i] ?? 0) !== right),
      ).length,
    digits: 0,
  },
  ...(
    [
      [9, 16, 0.04996],
      [8, 12, 0.0188],
      [10, 18, 0.0433],
      [12, 21, 0.0212],
      [15, 30, 0.0435],
      [20, 43, 0.0498],
    ] as const
  ).map(([right, tasters, p]) => ({
    model: 'tasting',
    what: `chance of ${right} of ${tasters} right by guessing`,
    source: 'exact binomial, worked elsewhere',
    expected: near(p, 0.00005),
    got: () => science.trianglePValue(right, tasters),
    digits: 5,
  })),
  ...(
    [
      [0, 0.3333],
      [0.5, 0.3558],
      [1, 0.418],
      [1.5, 0.5065],
      [2, 0.6048],
      [2.5, 0.6993],
      [3, 0.7814],
    ] as const
  ).map(([d, share]) => ({
    model: 'tasting',
    what: `share right at d′ ${d}`,
    source: 'Frijters, Kooistra & Vereijken 1980 (formula from memory, integrated elsewhere)',
    expected: near(share, 0.0005),
    got: () => science.rightShareAt(d),
    digits: 4,
  })),
];

const OXFORD = 'Oxford Companion to Beer, "SRM": 12.7 and 25 times the absorbance';

export const colour: OutsideValue[] = [
  {
    model: 'units',
    what: 'SRM at an absorbance of 2.0',
    source: OXFORD,
    expected: near(25.4, 1e-9),
    got: () => science.srmFromA430(2),
    digits: 1,
  },
  {
    model: 'units',
    what: 'EBC at an absorbance of 2.0',
    source: OXFORD,
    expected: near(50, 1e-9),
    got: () => science.ebcFromA430(2),
    digits: 1,
  },
  {
    model: 'units',
    what: 'EBC of 1 SRM',
    source: OXFORD,
    expected: near(1.9685, 0.0001),
    got: () => science.ebcFromSrm(1),
    digits: 4,
  },
  {
    model: 'units',
    what: 'EBC of 7 SRM',
    source: 'Brewers Association 2021, blonde ale: 3–7 SRM is 6–14 EBC',
    expected: near(14, 0.5),
    got: () => science.ebcFromSrm(7),
    digits: 1,
  },
  {
    model: 'units',
    what: 'litres of 5 US gal',
    source: 'BYO writes 18 927 mL; 231 cubic inches a gallon (NIST Handbook 44)',
    expected: near(18.927, 0.0005),
    got: () => science.litresFromUsGal(5),
    digits: 3,
  },
];
