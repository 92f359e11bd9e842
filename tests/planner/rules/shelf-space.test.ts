// Room on the shelf: from the harvest up to, not including, the day of the draw.
import { expect, test } from 'vitest';
import { aBrew, aJar, aSeason, lay, TWELVE_P, UNDYING } from '../../builders/season.ts';

const beer = (brew: string) => aBrew({ brew, og: TWELVE_P });
const brews = [beer('First'), beer('A'), beer('B')];
const from = { harvest: 'First' };

/** First of 1 March is harvested on the 15th; A and B draw 142.9 mL each, one jar each of `jarMl`. */
function season(
  maxJars: number,
  a: string,
  b: string,
  more: { jarMl?: number; jars?: number } = {},
) {
  const house = aSeason({
    rules: UNDYING,
    store: { tempC: 3, maxJars, jarMl: more.jarMl ?? 500, settleDays: 1 },
    jars: Array.from({ length: more.jars ?? 0 }, (_, i) =>
      aJar({ jar: `J${i}`, harvestedOn: '2027-02-20' }),
    ),
    brews,
  });
  return lay(house, {
    First: { on: '2027-03-01' },
    A: { on: a, tank: 'Keg A', from },
    B: { on: b, tank: 'Keg B', from },
  });
}

test.each([
  [2, {}, 0, 'two jars from the 15th on'],
  [1, {}, 1, 'two jars where one has room'],
  [0, {}, 2, 'no shelf at all'],
  // 142.9 mL in jars of 100 mL: two a draw
  [4, { jarMl: 100 }, 0, 'four small jars'],
  [3, { jarMl: 100 }, 1, 'four small jars, room for three'],
  // jars that nobody uses stand until 20 February + 35 days = 27 March
  [3, { jars: 1 }, 0, 'two and one of the shelf'],
  [2, { jars: 1 }, 1, 'two and one of the shelf, room for two'],
])('room for %i, %j: %i too many (%s)', (maxJars, more, over, _why) => {
  expect(season(maxJars, '2027-03-20', '2027-03-22', more).sum('shelf-space')).toBe(over);
});

test('a jar leaves on the day of its draw: another may come in that day', () => {
  const house = aSeason({
    rules: UNDYING,
    store: { tempC: 3, maxJars: 1, jarMl: 500, settleDays: 1 },
    brews: [...brews, beer('Second')],
  });
  // First is harvested on the 15th for A, Second (2 March) on the 16th for B
  const at = (a: string) =>
    lay(house, {
      First: { on: '2027-03-01' },
      Second: { on: '2027-03-02', tank: 'Keg B' },
      A: { on: a, tank: 'Cone', from },
      B: { on: '2027-03-20', tank: 'Keg A', from: { harvest: 'Second' } },
    }).sum('shelf-space');
  expect(at('2027-03-16')).toBe(0);
  expect(at('2027-03-17')).toBe(1);
});

test('a starter takes its jar out when it begins', () => {
  // half of 3 L: a day of growing and, above 5 % of 20 L, a day to chill; drawn on the 18th for the 20th
  const house = aSeason({
    rules: UNDYING,
    store: { tempC: 3, maxJars: 1, jarMl: 500, settleDays: 1 },
    brews: [...brews, beer('Second')],
  });
  const with2 = (starter: 0 | 2) =>
    lay(house, {
      First: { on: '2027-03-01' },
      Second: { on: '2027-03-04', tank: 'Keg B' },
      A: { on: '2027-03-20', tank: 'Cone', from, starter },
      B: { on: '2027-03-24', tank: 'Keg A', from: { harvest: 'Second' } },
    }).sum('shelf-space');
  expect(with2(0)).toBe(1);
  expect(with2(2)).toBe(0);
});

test('regression: a kept jar of the shelf counted for as many jars as its mL would fill', () => {
  const house = aSeason({
    store: { tempC: 3, maxJars: 1, jarMl: 100, settleDays: 1 },
    jars: [aJar({ settledMl: 220, harvestedOn: '2027-06-20' })],
  });
  const season = lay(house, {}, { today: '2027-06-25', keep: { 'Mill Lane Ale': { jar: 'J1' } } });
  expect(season.sum('shelf-space')).toBe(0);
});

test('the sentence names the day, the jars and the room', () => {
  const [said] = season(1, '2027-03-20', '2027-03-22').found('shelf-space');
  expect(said?.subject).toBe('2027-03-15');
  expect(said?.says).toBe(
    'On 2027-03-15 there is 1 jar more than the 1 that the cold store holds.',
  );
  expect(said?.remedy).toContain('make room in the cold store');
});
