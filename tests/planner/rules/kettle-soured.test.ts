// Nothing out of soured beer: kettle-soured wort stresses the yeast that went through it (common practice, no source).
import { expect, test } from 'vitest';
import { aBrew, aJar, aSeason, lay } from '../../builders/season.ts';

type Souring = 'kettle' | 'mixed' | null;

const season = (souring: Souring, part = {}) =>
  lay(aSeason({ brews: [aBrew({ brew: 'Source', souring }), aBrew()], ...part }), {
    Source: { on: '2027-03-01' },
    Millrace: { on: '2027-03-20', tank: 'Keg B', from: { harvest: 'Source' } },
  });

test.each([
  [null, 0],
  ['kettle', 1],
  // a mixed culture is forbidden by a rule of its own, which cannot be relaxed
  ['mixed', 0],
] as const)('slurry out of a beer soured %s: %i', (souring, count) => {
  expect(season(souring).sum('kettle-soured')).toBe(count);
});

test.each([
  [null, 0],
  ['kettle', 1],
] as const)('a jar of the shelf out of a beer soured %s: %i', (sourceSouring, count) => {
  const house = aSeason({ jars: [aJar({ sourceSouring, harvestedOn: '2027-02-20' })] });
  const laid = lay(house, { Millrace: { on: '2027-03-01', from: { jar: 'J1' } } });
  expect(laid.sum('kettle-soured')).toBe(count);
});

test('a kettle-soured beer may be pitched itself', () => {
  const sour = lay(aSeason({ brews: [aBrew({ souring: 'kettle' })] }), {
    Millrace: { on: '2027-03-01' },
  });
  expect(sour.found('kettle-soured')).toEqual([]);
});

test('the sentence names the brew and the soured beer', () => {
  const [said] = season('kettle').found('kettle-soured');
  expect(said?.says).toBe('Millrace would get yeast that has been through soured wort (Source).');
  expect(said?.remedy).toContain('fresh packs');
});

test('relaxed it is a hazard of 0.15 at home', () => {
  const hard = season('kettle');
  const soft = season('kettle', { relaxed: ['kettle-soured'] });
  expect(soft.judge.score(soft.t).hard).toBe(hard.judge.score(hard.t).hard - 1);
  expect(soft.hazard('Millrace') - hard.hazard('Millrace')).toBeCloseTo(0.15, 12);
});
