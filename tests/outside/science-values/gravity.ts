// Published gravities, extracts and strengths of beer.
import * as science from '../../../planner/science/index.ts';
import { band, near, type OutsideValue } from './value.ts';

const USDA = '°Brix against SG 20/20, table printed with USDA File Code 135-A-50';
const BA = 'Brewers Association style guidelines 2020/2021, SG and °P side by side';
const CHEN =
  'C. S. Chen, Brix and Pounds Solids Tables, University of Florida (pounds a US gallon, from NBS C440)';

export const gravity: OutsideValue[] = [
  ...(
    [
      [1.00039, 0.1],
      [1.00078, 0.2],
      [1.00117, 0.3],
      [1.0149, 3.8],
      [1.01529, 3.9],
      [1.01569, 4],
      [1.01609, 4.1],
      [1.03017, 7.6],
      [1.03058, 7.7],
      [1.03098, 7.8],
      [1.03139, 7.9],
    ] as const
  ).map(([sg, p]) => ({
    model: 'gravity',
    what: `°P of SG ${sg.toFixed(5)}`,
    source: USDA,
    // Rows below 0.5 °P test the cubic where it is weakest: within 0.005.
    expected: near(p, p < 0.5 ? 0.005 : 0.002),
    got: () => science.platoFromSg(sg),
    digits: 3,
  })),
  ...(
    [
      [10, 1.04003],
      [12, 1.04837],
      [15, 1.06111],
      [20, 1.08297],
    ] as const
  ).map(([p, sg]) => ({
    model: 'gravity',
    what: `SG of ${p} °P`,
    source: 'two independent cubics agree to 1e-5; 1.04003 is the ASBC table entry (from memory)',
    expected: near(sg, 0.00002),
    got: () => science.sgFromPlato(p),
    digits: 5,
  })),
  ...(
    [
      [1.008, 2.1],
      [1.016, 4.1],
      [1.02, 5.1],
      [1.03, 7.6],
      [1.038, 9.5],
      [1.045, 11.2],
      [1.054, 13.3],
      [1.08, 19.3],
      [1.1, 23.7],
    ] as const
  ).map(([sg, p]) => ({
    model: 'gravity',
    what: `°P of SG ${sg.toFixed(3)}`,
    source: BA,
    expected: near(p, 0.1),
    got: () => science.platoFromSg(sg),
    digits: 2,
  })),
  ...(
    [
      [1, 8.354],
      [2, 8.387],
      [3, 8.419],
      [4, 8.452],
      [5, 8.486],
    ] as const
  ).map(([p, pounds]) => ({
    model: 'gravity',
    what: `SG of ${p} °P`,
    source: CHEN,
    expected: near(pounds / 8.322, 0.0001),
    got: () => science.sgFromPlato(p),
    digits: 5,
  })),
  {
    model: 'gravity',
    what: '°P of SG 1.17874, the end of the fit',
    source: 'NBS Circular 440: 40 °Bx (from memory)',
    expected: near(40, 0.002),
    got: () => science.platoFromSg(1.17874),
    digits: 3,
  },
];

// Density of ethanol in water at 20 °C by weight, g/mL: CRC Handbook (from memory). Water 0.99821.
// Tabarié: the gravity of beer is that of its extract plus that of its alcohol less one.
const CRC: readonly (readonly [percent: number, density: number])[] = [
  [3, 0.9928],
  [4, 0.991],
  [5, 0.9893],
  [6, 0.9877],
  [7, 0.9861],
];
function ethanolSg(percent: number): number {
  const at = CRC.findIndex(([w]) => w >= percent);
  const above = CRC[at];
  const below = CRC[at - 1];
  if (!above || !below) throw new Error(`no ethanol density at ${percent} %`);
  const d = below[1] + ((above[1] - below[1]) * (percent - below[0])) / (above[0] - below[0]);
  return d / 0.99821;
}

export const alcohol: OutsideValue[] = [
  ...(
    [
      [1.04, 1.008],
      [1.05, 1.01],
      [1.06, 1.013],
      [1.075, 1.016],
    ] as const
  ).map(([og, fg]) => ({
    model: 'alcohol',
    what: `final gravity put together again from extract and alcohol, ${og.toFixed(3)} → ${fg.toFixed(3)}`,
    source: "Tabarié's relation with ethanol densities of the CRC Handbook (from memory)",
    expected: near(fg, 0.001),
    got: () =>
      science.sgFromPlato(science.realExtract(og, fg)) + ethanolSg(science.abwPercent(og, fg)) - 1,
    digits: 4,
  })),
  {
    model: 'alcohol',
    what: 'ABV of a middling Munich Helles, 1.046 → 1.009, %',
    source: 'BJCP 2021 style 4A: 4.7–5.4 % (from memory)',
    expected: band(4.7, 5.4),
    got: () => science.abvPercent(1.046, 1.009),
    digits: 2,
  },
  {
    model: 'alcohol',
    what: 'ABV of a middling barleywine, 1.100 → 1.024, %',
    source: 'BJCP 2021 style 17D: 8–12 % (from memory)',
    expected: band(8, 12),
    got: () => science.abvPercent(1.1, 1.024),
    digits: 2,
  },
];
