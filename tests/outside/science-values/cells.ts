// Published needs, packs and densities of slurry.
import * as science from '../../../planner/science/index.ts';
import { band, CP, HOME, NANO, near, type OutsideValue, perMl } from './value.ts';

export const need: OutsideValue[] = [
  {
    model: 'need',
    what: '19 L at 12 °P, 1.0 M/mL/°P, billion cells',
    source: 'worked example, HomeBrewTalk wiki "Yeast Pitching"',
    expected: near(228, 1e-9),
    got: () => perMl(1, 19, 12),
    digits: 1,
  },
  {
    model: 'need',
    what: '5.5 US gal at 15 °P, 0.75 M/mL/°P, billion cells',
    source: 'Madison Beer Review, 30 April 2012',
    expected: near(234, 0.5),
    got: () => perMl(0.75, 20.8197, 15),
    digits: 1,
  },
  {
    model: 'need',
    what: '18 927 mL at 6 M/mL, billion cells',
    source: 'BYO, "Homebrew Yeast Pitching Rates"',
    expected: near(113.5, 0.1),
    got: () => perMl(0.5, 18.927, 12),
    digits: 1,
  },
  ...(
    [
      [1.05, 0.75, 185.8],
      [1.05, 1, 247.8],
      [1.05, 1.5, 371.6],
      [1.08, 1, 386.6],
      [1.04, 0.75, 149.9],
    ] as const
  ).map(([sg, rate, cells]) => ({
    model: 'need',
    what: `20 L at SG ${sg.toFixed(3)}, ${rate} M/mL/°P, billion cells`,
    source: 'worked from the ASBC cubic (from memory), not the one used here',
    expected: near(cells, 0.1),
    got: () => perMl(rate, 20, science.platoFromSg(sg)),
    digits: 1,
  })),
];

export const packs: OutsideValue[] = [
  ...(
    [
      [1, 0.9921],
      [2, 0.9805],
      [3, 0.9026],
      [4, 0.8428],
      [5, 0.7935],
      [6, 0.7159],
    ] as const
  ).map(([months, alive]) => ({
    model: 'packs',
    what: `liquid pack after ${months} months, share alive`,
    source: "manufacturer's figures for a sealed pack, quoted second-hand",
    // The maker's curve has a shoulder of two months that a first-order loss has not.
    expected: near(alive, 0.09),
    got: () => science.packViability('liquid', months * 30.4, HOME).likely,
    digits: 3,
  })),
  {
    model: 'packs',
    what: 'liquid pack after 30 days, low end of the interval',
    source: 'White Labs FAQ, older vials: 75–85 %',
    expected: band(0.75, 0.86),
    got: () => science.packViability('liquid', 30, HOME).low,
    digits: 3,
  },
  {
    model: 'packs',
    what: 'liquid pack after 30 days, likely',
    source: 'retail blog: 20–25 % lost in a month',
    expected: band(0.75, 0.8),
    got: () => science.packViability('liquid', 30, HOME).likely,
    digits: 3,
    differs: "a weak source; the maker's own figures for today's packs are four times better",
  },
  {
    model: 'packs',
    what: 'dry pack after a year at 4 °C, share alive',
    source: 'about 4 % lost a year (from memory)',
    expected: near(0.96, 0.002),
    got: () => science.packViability('dry', 365, HOME).likely,
    digits: 3,
  },
];

export const slurry: OutsideValue[] = [
  {
    model: 'slurry',
    what: '100 mL of settled slurry at home, billion cells',
    source: CP,
    expected: near(200, 10),
    got: () => 100 * science.densityBPerMl('medium', 2, HOME).likely,
    digits: 0,
  },
  {
    model: 'slurry',
    what: 'home interval at 48 h, low end, billion per mL',
    source:
      '1.2 at 40–60 % settled solids, a supplier’s re-pitch guide: must lie inside, so low at most this',
    expected: band(0, 1.2),
    got: () => science.densityBPerMl('medium', 2, HOME).low,
    digits: 2,
  },
  {
    model: 'slurry',
    what: 'brewery density at 48 h, low flocculator, billion per mL',
    source: 'Escarpment Labs KB 90: sold at 1 trillion a litre',
    expected: near(1, 1e-9),
    got: () => science.densityBPerMl('low', 2, NANO).likely,
    digits: 2,
  },
  {
    model: 'slurry',
    what: 'brewery density at 48 h, medium flocculator, billion per mL',
    source: 'Woodland Brewing, 11 January 2013: 1.109 counted in homogenised slurry',
    expected: near(1.109, 0.15),
    got: () => science.densityBPerMl('medium', 2, NANO).likely,
    digits: 2,
  },
  {
    model: 'slurry',
    what: 'brewery interval at 48 h, high end, billion per mL',
    source: 'Murphy & Son 10 % dry matter × Troester 20 billion a gram = 2.0: must lie inside',
    expected: band(2, 4),
    got: () => science.densityBPerMl('medium', 2, NANO).high,
    digits: 2,
  },
  {
    model: 'slurry',
    what: 'densest that an interval can reach, billion per mL',
    source: '60 % packing of 150–220 µm³ cells: 2.7–4 (cell size from memory)',
    expected: band(2.7, 4),
    got: () => science.densityBPerMl('high', 1, HOME).high,
    digits: 2,
  },
];
