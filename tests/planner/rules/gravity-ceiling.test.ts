// Gravity ceiling: at or above it is too strong. 1.070 by default (suppliers: harvest at most at 18 °P; common practice).
import { expect, test } from 'vitest';
import { aBrew, aJar, aSeason, lay } from '../../builders/season.ts';

const season = (og: number, part = {}) =>
  lay(aSeason({ brews: [aBrew({ brew: 'Source', og, fg: 1.012 }), aBrew()], ...part }), {
    Source: { on: '2027-03-01' },
    Millrace: { on: '2027-03-20', tank: 'Keg B', from: { harvest: 'Source' } },
  });

test.each([
  // how far above in points of gravity, the ceiling itself being one too many
  [1.069, 0],
  [1.0699, 0],
  [1.07, 1],
  [1.0705, 1],
  [1.071, 2],
  [1.1, 31],
])('slurry out of a beer of %f: %i', (og, points) => {
  expect(season(og).sum('gravity-ceiling')).toBe(points);
});

test('a house sets its own ceiling', () => {
  expect(season(1.06, { rules: { gravityCeiling: 1.06 } }).sum('gravity-ceiling')).toBe(1);
  expect(season(1.075, { rules: { gravityCeiling: 1.08 } }).sum('gravity-ceiling')).toBe(0);
});

test('jars of the shelf are judged too; one whose beer is not known is taken as sound', () => {
  const jar = (sourceOg: number | null) =>
    lay(aSeason({ jars: [aJar({ sourceOg, harvestedOn: '2027-02-20' })] }), {
      Millrace: { on: '2027-03-01', from: { jar: 'J1' } },
    }).sum('gravity-ceiling');
  expect(jar(1.098)).toBe(29);
  expect(jar(1.044)).toBe(0);
  expect(jar(null)).toBe(0);
});

test('a strong beer may be pitched; only what comes out of it may not', () => {
  const strong = lay(aSeason({ brews: [aBrew({ og: 1.1 })] }), { Millrace: { on: '2027-03-01' } });
  expect(strong.found('gravity-ceiling')).toEqual([]);
});

test('the sentence names the gravity and the ceiling', () => {
  const [said] = season(1.098).found('gravity-ceiling');
  expect(said?.subject).toBe('Millrace');
  expect(said?.says).toBe('Millrace would get yeast out of a beer of 1.098; the ceiling is 1.070.');
  expect(said?.remedy).toContain('lighter beer');
});

test('relaxed it forbids nothing and is a hazard of its own weight, once, however far above', () => {
  const relaxed = { relaxed: ['gravity-ceiling'] };
  const hard = season(1.1);
  const soft = season(1.1, relaxed);
  expect(hard.judge.score(hard.t).hard).toBeGreaterThan(0);
  expect(soft.judge.score(soft.t).hard).toBe(0);
  // home 0.10, nano 0.15, or what the house sets; everything else stands as before
  expect(soft.hazard('Millrace') - hard.hazard('Millrace')).toBeCloseTo(0.1, 12);
  const own = season(1.1, { ...relaxed, weights: { 'gravity-ceiling': 0.4 } });
  expect(own.hazard('Millrace') - hard.hazard('Millrace')).toBeCloseTo(0.4, 12);
});
