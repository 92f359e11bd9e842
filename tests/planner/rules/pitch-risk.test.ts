// Risk of a pitch: value × (1 − exp(−Σ hazard)), so that many small hazards never cost more than the beer.
import { expect, test } from 'vitest';
import { aBrew, aJar, aSeason, lay } from '../../builders/season.ts';

/** A jar of the same beer and a week old: only its generation (0.006 each) and its week (0.004) are hazards. */
const jarOf = (generation: number, part = {}, jar = {}) =>
  lay(
    aSeason({
      jars: [
        aJar({
          generation,
          harvestedOn: '2027-02-22',
          measuredViability: 0.95,
          measuredOn: '2027-03-01',
          sourceOg: 1.041,
          sourceEbc: 17,
          sourceIbu: 28,
          ...jar,
        }),
      ],
      brews: [aBrew({ value: 100 })],
      ...part,
    }),
    { Millrace: { on: '2027-03-01', from: { jar: 'J1' } } },
  );

test.each([
  // 100 × (1 − exp(−(0.006 g + 0.004)))
  [1, 100],
  [4, 276],
  [5, 334],
])('generation %i: %i minor units', (generation, minor) => {
  expect(jarOf(generation).sum('pitch-risk')).toBe(minor);
});

test('hazards are joined, not added up as money', () => {
  // 0.024 + 0.004 + a relaxed ceiling at 0.10 + 20.6 − 10.2 °P stronger: one exponent of the sum
  const season = jarOf(4, { relaxed: ['gravity-ceiling'] }, { sourceOg: 1.0831 });
  const hazard = season.hazard('Millrace');
  const parts = ['later-generation', 'old-slurry', 'strong-to-light'].map((id) => season.sum(id));
  expect(hazard).toBeCloseTo(
    parts.reduce((a, b) => a + b, 0.1),
    12,
  );
  expect(season.sum('pitch-risk')).toBe(Math.round(10_000 * (1 - Math.exp(-hazard))));
});

test('it never costs more than the beer is worth, and turns down to nothing', () => {
  const sure = { weights: { 'later-generation': 1000 } };
  expect(jarOf(4, sure).sum('pitch-risk')).toBe(10_000);
  expect(jarOf(4, { weights: { 'pitch-risk': 0 } }).sum('pitch-risk')).toBe(0);
  // half of 276.1
  expect(jarOf(4, { weights: { 'pitch-risk': 0.5 } }).sum('pitch-risk')).toBe(138);
});

test('a fresh pack into ordinary wort risks nothing', () => {
  expect(lay(aSeason(), { Millrace: { on: '2027-03-01' } }).found('pitch-risk')).toEqual([]);
});

test('the sentence calls it a guess and gives the chance', () => {
  const [said] = jarOf(4).found('pitch-risk');
  expect(said?.says).toBe('Millrace: a guessed chance of 2.8 % that the pitch spoils it.');
  expect(said?.remedy).toContain('younger');
});
