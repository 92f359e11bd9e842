// Nothing out of fruit, spice or smoke. Fruit: strong negative, harvest first (Woodland Brewing); the rest common practice.
import { expect, test } from 'vitest';
import { aBrew, aJar, aSeason, lay } from '../../builders/season.ts';

const season = (list: string[], part = {}) =>
  lay(aSeason({ brews: [aBrew({ brew: 'Source', additions: list }), aBrew()], ...part }), {
    Source: { on: '2027-03-01' },
    Millrace: { on: '2027-03-20', tank: 'Keg B', from: { harvest: 'Source' } },
  });

test.each([
  [[], 0],
  [['fruit'], 1],
  // one pitch, however many things were in the beer
  [['fruit', 'spice'], 1],
  [['oak chips'], 1],
])('slurry out of a beer with %j: %i', (list, count) => {
  expect(season(list).sum('additions')).toBe(count);
});

test('a jar of the shelf is judged too', () => {
  const jar = aJar({ sourceAdditions: ['smoke'], harvestedOn: '2027-02-20' });
  const laid = lay(aSeason({ jars: [jar] }), {
    Millrace: { on: '2027-03-01', from: { jar: 'J1' } },
  });
  expect(laid.sum('additions')).toBe(1);
});

test('the sentence names the beer and what was in it', () => {
  const [said] = season(['fruit', 'spice']).found('additions');
  expect(said?.says).toBe('Millrace would get yeast out of Source, brewed with fruit, spice.');
  expect(said?.remedy).toContain('plain beer');
});

test('relaxed it is a hazard of 0.08 at home', () => {
  const hard = season(['fruit']);
  const soft = season(['fruit'], { relaxed: ['additions'] });
  expect(soft.judge.score(soft.t).hard).toBe(hard.judge.score(hard.t).hard - 1);
  expect(soft.hazard('Millrace') - hard.hazard('Millrace')).toBeCloseTo(0.08, 12);
});
