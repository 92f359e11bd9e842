// A season of two brews, worked out on paper from published formulas, against the plan that comes out.
//
// Sources of the formulas and figures, beside each step:
// [440] °P of a gravity: sucrose table of Bates et al., NBS Circular 440, 1942 (1.04837 is 12.00, 1.06111 is 15.00 °P)
// [Fix] 0.75 million living cells per mL per °P for fresh ale yeast: G. Fix, quoted by Terrill 2010
// [Crooks] 1.0 for harvested ale yeast: J. Crooks (Firestone Walker) via Fahrendorf; Colorado Brewers Guild
// [pack] 0.0018 a day: manufacturer's figures over six months, second-hand
// [M&B] 0.0121 a day at 1 °C (7 % in 6 days): McCaig & Bendiak, MBAA Technical Quarterly 1985; 0.0175 at 5 °C at home:
//     200 to about 180 billion in a week, common practice; 0.19 at 25 °C: up to 68 % in 6 days, McCaig & Bendiak
// [beer] yeast under its beer loses 15 % of that: common practice, no source
// [B&Q] growth 4 times, at most 80 billion a litre: Briggs et al. 2004, Boulton & Quain 2001 (from memory)
// [crop] 65 % of it reaches the jar: common practice; 97 % alive at the end of fermentation: Murphy & Son, above 95 %
// [2.1] 2.1 billion per mL settled for 48 h, 0.8 of it after a day: common practice, and 2.0 from 10 % dry matter (Murphy & Son)
// [40 %] settled slurry is 60 % beer: Quain; Boulton & Quain 2001, Fig. 7.9
// Prices, minutes and the sizes of hazards are the house's own choices and guesses (docs/planner.md).
import { expect, test } from 'vitest';
import { plan } from '../../planner/index.ts';
import { FIRST_ON, SECOND_ON, twoBrews } from '../builders/two-brews.ts';

const found = plan({
  house: twoBrews(),
  today: '2027-02-01',
  pins: [
    { brew: 'First', tank: 'Keg A', source: { kind: 'fresh' } },
    { brew: 'Second', tank: 'Keg B', source: { kind: 'harvest', brew: 'First' } },
  ],
  steps: 500,
});
const [first, second] = found.brews;
const [harvest] = found.harvests;

test('nothing is broken or left out', () => {
  expect(found.status).toBe('whole');
  expect(found.brews.map((b) => [b.brew, b.day])).toEqual([
    ['First', FIRST_ON],
    ['Second', SECOND_ON],
  ]);
});

test('First: need, packs and days', () => {
  // need [440, Fix]: 0.75 × 20 L × 12.00 °P = 180 B
  expect(first?.needB).toBeCloseTo(180, 1);
  // a pack of 200 B, 30 days old [pack]: 200 × exp(−0.0018 × 30) = 200 × 0.947432 = 189.486 B: one is enough
  expect(first?.source).toMatchObject({ kind: 'fresh', packs: 1, packsFromHand: 0 });
  expect(first?.pitchedB).toBeCloseTo(189.486, 3);
  expect(first?.viability.likely).toBeCloseTo(0.947432, 6);
  // Saturday 6 March + 14 days = Saturday the 20th, a work day; a day of turnaround; + 10 days
  expect(first).toMatchObject({
    emptiedOn: '2027-03-20',
    tankFreeOn: '2027-03-21',
    readyOn: '2027-03-30',
    daysLate: 0,
    generation: 0,
  });
  // ordered seven days ahead, arriving on the brew day
  expect(first?.source).toMatchObject({ orderOn: '2027-02-27', arrivesOn: FIRST_ON });
});

test('the harvest of First: cells, mL and days', () => {
  // a keg has no bottom outlet: harvested when it is emptied; a day of settling
  expect(harvest).toMatchObject({ brew: 'First', day: '2027-03-20', usableFrom: '2027-03-21' });
  // fermented on 6 March + 5 days (ale) = the 11th; crashed from the 18th: the tank holds 2 °C
  expect(harvest?.crashed).toBe(true);
  // grown [B&Q]: 4 × 189.486 = 757.945 B, below 80 × 20 = 1,600; in the jars [crop] × 0.65 = 492.664 B
  expect(harvest?.cellsB).toBeCloseTo(492.664, 2);
  // at 2.1 × 0.8 = 1.68 B/mL [2.1]: 293.253 mL
  expect(harvest?.settledMl.likely).toBeCloseTo(293.253, 2);
  // on the beer from the 11th to the 20th, 7 days at 18 °C and 2 at 2 °C [M&B, log-linear between the points]:
  // k(18) = 0.0175 × (0.19 / 0.0175)^(13/20) = 0.0175 × 4.71211 = 0.0824619 a day
  // k(2)  = 0.0121 × (0.0175 / 0.0121)^(1/4) = 0.0121 × 1.09664 = 0.0132693 a day
  // × 0.15 [beer]: 0.15 × (7 × 0.0824619 + 2 × 0.0132693) = 0.0905658
  // 4.8 % alcohol, below the 5 % from which it would age faster: 0.97 × exp(−0.0905658) = 0.886012
  expect(harvest?.cropViability.likely).toBeCloseTo(0.886012, 6);
});

test('Second: need, share alive, draw', () => {
  // need [440, Crooks]: 1.0 × 20 L × 15.00 °P = 300 B
  expect(second?.needB).toBeCloseTo(300, 0);
  // a week in the cold at 3 °C [M&B]: k(3) = 0.0121 × (0.0175 / 0.0121)^(2/4) = 0.0145516; × 7 = 0.101861
  // 0.886012 × exp(−0.101861) = 0.800206
  expect(second?.viability.likely).toBeCloseTo(0.800206, 6);
  // 300 / (1.68 × 0.800206) = 223.157 mL, one jar of 500, 0.02 % less for 14.997 instead of 15 °P
  expect(second?.source).toMatchObject({
    kind: 'harvest',
    brew: 'First',
    harvestedOn: '2027-03-20',
    ageDays: 7,
    jars: 1,
  });
  const drawMl = second?.source.kind === 'harvest' ? second.source.drawMl : Number.NaN;
  expect(Math.abs(drawMl / 223.157 - 1)).toBeLessThan(5e-4);
  expect(second?.generation).toBe(1);
  // 27 March + 14 = Saturday 10 April; + 10 = the 20th; wanted by the 18th
  expect(second).toMatchObject({ emptiedOn: '2027-04-10', readyOn: '2027-04-20', daysLate: 2 });
});

test('what Second risks', () => {
  const amount = new Map(second?.hazards.map((h) => [h.says, h.hazard]));
  const sum = [...amount.values()].reduce((a, b) => a + b, 0);
  // generation 1: 0.006. Weak: 0.2 × (0.9 − 0.800206) = 0.019959. A week old: 0.004.
  // Darker source [40 %]: 0.223157 × 0.6 = 0.133894 L; (40 − 10) × 0.133894 / 20.133894 = 0.199505 EBC, noticed
  // at 1 EBC: 0.02 × 0.199505 = 0.003990. Less bitter, weaker and cooler sources are no hazard.
  expect(second?.hazards).toHaveLength(4);
  expect(sum).toBeCloseTo(0.006 + 0.019959 + 0.004 + 0.00399, 5);
  // 60.00 × (1 − exp(−0.033949)) = 60.00 × 0.033379 = 2.00
  expect(second?.riskMinor).toBe(200);
  expect(first?.hazards).toEqual([]);
});

test('the whole sum', () => {
  // cash: a pack 10.50, a delivery 6.00
  expect(found.totals.cashMinor).toBe(1650);
  // work at 0.08 a minute: a harvest of 20 minutes 1.60, a jar of 5 0.40, a check of 10 0.80
  expect(found.totals.workMinor).toBe(280);
  // risk and regret: 2.00, and 2 days late × 0.40 = 0.80
  expect(found.totals.riskMinor).toBe(280);
  expect(found.totals.costMinor).toBe(2210);
  expect(found.costs.reduce((sum, line) => sum + line.amountMinor, 0)).toBe(2210);
});
