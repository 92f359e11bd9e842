// Packs bought. Need 0.75 M/mL/°P fresh in ales, 1.5 in lagers (G. Fix, quoted by Terrill 2010); liquid packs lose
// 0.0018 a day (manufacturer's figures, second-hand).
import { expect, test } from 'vitest';
import { aBrew, aJar, aSeason, aYeast, lay, TWELVE_P } from '../../builders/season.ts';

const FIFTEEN_P = 1.06111;

/** Packs of 200 B at 10.50; one that was ordered is 30 days old and holds 200 × exp(−0.054) = 189.5 B. */
const bought = (og: number, volumeL: number, hand = 0, madeOn = '2027-02-01') =>
  lay(
    aSeason({
      yeasts: [aYeast({ packPrice: 10.5, packsOnHand: hand, packsMadeOn: madeOn })],
      brews: [aBrew({ og, volumeL })],
    }),
    { Millrace: { on: '2027-03-01' } },
  );

test.each([
  [TWELVE_P, 20, 0, 1050, '0.75 × 20 × 12 = 180 B: one'],
  [TWELVE_P, 21, 0, 1050, '189 B: one just holds'],
  [FIFTEEN_P, 20, 0, 2100, '225 B: two'],
  [FIFTEEN_P, 20, 1, 1050, 'one in the cupboard of 28 days, 190 B, and one bought'],
  [FIFTEEN_P, 20, 2, 0, 'both in the cupboard'],
  [FIFTEEN_P, 20, 5, 0, 'more than enough in the cupboard'],
])('%f, %i L, %i on hand: %i minor units (%s)', (og, volumeL, hand, minor) => {
  expect(bought(og, volumeL, hand).sum('packs')).toBe(minor);
});

test('packs in the cupboard past their day are not used', () => {
  // made 120 days before 1 March: the last day. A day earlier: expired (White Labs FAQ: 4 months)
  expect(bought(TWELVE_P, 20, 2, '2026-11-01').sum('packs')).toBe(0);
  expect(bought(TWELVE_P, 20, 2, '2026-10-31').sum('packs')).toBe(1050);
});

test('lager wants twice the packs of an ale; slurry wants none', () => {
  const lager = aSeason({
    yeasts: [aYeast({ kind: 'lager', minC: 8, packsOnHand: 0, packPrice: 10.5 })],
    jars: [aJar({ harvestedOn: '2027-02-25' })],
    brews: [aBrew({ og: TWELVE_P, fermentC: 10 })],
  });
  // 1.5 × 20 × 12 = 360 B: two of 189.5 B
  expect(lay(lager, { Millrace: { on: '2027-03-01' } }).sum('packs')).toBe(2100);
  expect(lay(lager, { Millrace: { on: '2027-03-01', from: { jar: 'J1' } } }).sum('packs')).toBe(0);
});

test('a starter saves packs', () => {
  // 225 B from a stirred starter of 1.5 L (150 g): 1.4 B a gram grow 210 B (Troester, from memory), and at least
  // an eighth of 225 B must be in it, 28.1 B: one pack
  const season = lay(aSeason({ brews: [aBrew({ og: FIFTEEN_P })] }), {
    Millrace: { on: '2027-03-01', starter: 2 },
  });
  expect(season.sum('packs')).toBe(1050);
});

test('the sentence names packs, strain and brew', () => {
  const [said] = bought(FIFTEEN_P, 20).found('packs');
  expect(said?.says).toBe('2 packs of Mill Lane Ale for Millrace.');
  expect(said?.remedy).toContain('harvest');
});
