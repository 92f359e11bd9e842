// Viability floor for a pitch without a starter: home 0.70, nano 0.85 (below 85 % discarded: common practice, no source).
import { expect, test } from 'vitest';
import { aBrew, aJar, aSeason, aYeast, lay } from '../../builders/season.ts';

/** A jar whose share alive was counted on the day of the pitch, so that nothing more is lost. */
const jarOf = (measuredViability: number, part = {}, starter: 0 | 2 = 0) =>
  lay(
    aSeason({
      jars: [
        aJar({
          harvestedOn: '2027-02-20',
          settledMl: 2000,
          measuredViability,
          measuredOn: '2027-03-01',
        }),
      ],
      ...part,
    }),
    { Millrace: { on: '2027-03-01', from: { jar: 'J1' }, starter } },
  );

test.each([
  [0.71, 'home', 0],
  [0.7, 'home', 0],
  // a thousandth short is counted as a whole percent point
  [0.699, 'home', 1],
  [0.69, 'home', 1],
  [0.5, 'home', 20],
  [0.85, 'nano', 0],
  [0.84, 'nano', 1],
] as const)('%f alive in a %s: %i percent points short', (viability, kind, short) => {
  expect(jarOf(viability, { kind }).sum('viability-floor')).toBe(short);
});

test('a starter lifts it; a house sets its own', () => {
  expect(jarOf(0.5, {}, 2).sum('viability-floor')).toBe(0);
  expect(jarOf(0.5, { rules: { viabilityFloor: 0.5 } }).sum('viability-floor')).toBe(0);
});

test('packs are held to it as well', () => {
  // 0.0018 a day (manufacturer's figures, second-hand): exp(−0.0018 × 90) = 0.8504, × 91 = 0.8489
  const madeOn = (packsMadeOn: string) =>
    lay(aSeason({ kind: 'nano', yeasts: [aYeast({ packsOnHand: 2, packsMadeOn })] }), {
      Millrace: { on: '2027-03-01' },
    }).sum('viability-floor');
  expect(madeOn('2026-12-01')).toBe(0);
  expect(madeOn('2026-11-30')).toBe(1);
});

test('the sentence names the source, the share alive and the floor', () => {
  const [said] = jarOf(0.5).found('viability-floor');
  expect(said?.says).toBe(
    'jar J1 would be 50 % alive for Millrace; without a starter the floor is 70 %.',
  );
  expect(said?.remedy).toContain('starter');
});

test('regression: a source that is not there was said to be 0 % alive', () => {
  const season = lay(aSeason({ brews: [aBrew(), aBrew({ brew: 'Quill' })] }), {
    Quill: { on: '2027-03-20', from: { harvest: 'Millrace' } },
  });
  expect(season.found('viability-floor')).toEqual([]);
  expect(season.sum('yeast-forward')).toBe(1000);
});

test('relaxed it is a hazard of 0.08 at home', () => {
  const hard = jarOf(0.5);
  const soft = jarOf(0.5, { relaxed: ['viability-floor'] });
  expect(soft.judge.score(soft.t).hard).toBe(hard.judge.score(hard.t).hard - 20);
  expect(soft.hazard('Millrace') - hard.hazard('Millrace')).toBeCloseTo(0.08, 12);
});
