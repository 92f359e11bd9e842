// Brews left out: each counts with its priority, then each counts one.
import { expect, test } from 'vitest';
import { aBrew, aSeason, lay } from '../../builders/season.ts';

const house = aSeason({
  brews: [
    aBrew({ brew: 'A', priority: 1 }),
    aBrew({ brew: 'B', priority: 3 }),
    aBrew({ brew: 'C', priority: 2 }),
  ],
});
const on = '2027-03-01';

test.each([
  [['A', 'B', 'C'], 0, 0],
  [['B', 'C'], 1, 1],
  [['A', 'C'], 3, 1],
  [[], 6, 3],
])('brewed %j: priority %i, %i brews', (brewed, priority, count) => {
  const tanks = ['Keg A', 'Keg B', 'Cone'];
  const season = lay(
    house,
    Object.fromEntries(brewed.map((name, i) => [name, { on, tank: tanks[i] ?? '' }])),
  );
  expect(season.sum('left-out')).toBe(priority);
  const score = season.judge.score(season.t);
  expect([score.leftOut, score.leftOutCount]).toEqual([priority, count]);
});

test('the sentence names the brew', () => {
  const [said] = lay(house, {}).found('left-out');
  expect(said?.says).toBe('A finds no place in this season.');
  expect(said?.remedy).toBe('Give A more time, a tank or a brew day.');
});
