// Nothing out of a mixed culture, ever: a house cannot relax it (common practice, no source).
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
  ['kettle', 0],
  ['mixed', 1],
] as const)('slurry out of a beer soured %s: %i', (souring, count) => {
  expect(season(souring).sum('mixed-culture')).toBe(count);
});

test('a jar of the shelf is judged too', () => {
  const jar = aJar({ sourceSouring: 'mixed', harvestedOn: '2027-02-20' });
  const laid = lay(aSeason({ jars: [jar] }), {
    Millrace: { on: '2027-03-01', from: { jar: 'J1' } },
  });
  expect(laid.sum('mixed-culture')).toBe(1);
});

test('a house that lists it as relaxed is still held to it', () => {
  const soft = season('mixed', { relaxed: ['mixed-culture'] });
  expect(soft.judge.score(soft.t).hard).toBe(1);
});

test('the sentence names the brew and the mixed beer', () => {
  const [said] = season('mixed').found('mixed-culture');
  expect(said?.says).toBe('Millrace would get the mixed culture of Source.');
  expect(said?.remedy).toContain('clean beer');
});
