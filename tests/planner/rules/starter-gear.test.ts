// Starter vessels: how many at once, how large, and none for dry yeast.
import { expect, test } from 'vitest';
import { aBrew, aSeason, aYeast, lay } from '../../builders/season.ts';

const two = [aBrew(), aBrew({ brew: 'Quill' })];
const gear = (vessels: number) => ({ vessels, maxLitres: 3, stirred: true });

// A starter of 1.5 L grows a day and, above 5 % of 20 L, is chilled a day: for 10 March it stands from
// the 8th to the 10th, both included (24 h and decanting: common practice, no source).
test.each([
  [1, '2027-03-10', 1, 'both on the same days'],
  [1, '2027-03-12', 1, 'the second is begun on the 10th, when the first is decanted'],
  [1, '2027-03-13', 0, 'the second is begun on the 11th'],
  [2, '2027-03-10', 0, 'two vessels'],
  [0, '2027-03-13', 1, 'no vessel at all, one at a time'],
])('%i vessels, starters for 10 March and %s: %i too many (%s)', (vessels, on, over) => {
  const season = lay(aSeason({ starterGear: gear(vessels), brews: two }), {
    Millrace: { on: '2027-03-10', starter: 2 },
    Quill: { on, tank: 'Keg B', starter: 2 },
  });
  expect(season.sum('starter-gear')).toBe(over);
});

test('a starter above half the largest vessel grows two days and holds it that long', () => {
  // 3 L for 13 March: chilled on the 12th, begun on the 10th
  const season = (on: string) =>
    lay(aSeason({ starterGear: gear(1), brews: two }), {
      Millrace: { on, starter: 2 },
      Quill: { on: '2027-03-13', tank: 'Keg B', starter: 4 },
    }).sum('starter-gear');
  expect(season('2027-03-10')).toBe(1);
  expect(season('2027-03-09')).toBe(0);
});

test('dry yeast gets no starter', () => {
  const dry = aSeason({ yeasts: [aYeast({ form: 'dry' })], starterGear: gear(1) });
  expect(lay(dry, { Millrace: { on: '2027-03-10' } }).sum('starter-gear')).toBe(0);
  const [said] = lay(dry, { Millrace: { on: '2027-03-10', starter: 2 } }).found('starter-gear');
  expect(said?.amount).toBe(1);
  expect(said?.says).toBe('Millrace is pitched with dry yeast, which gets no starter.');
});

test('the sentence names the day, the starters and the vessels', () => {
  const [said] = lay(aSeason({ starterGear: gear(1), brews: two }), {
    Millrace: { on: '2027-03-10', starter: 2 },
    Quill: { on: '2027-03-10', tank: 'Keg B', starter: 2 },
  }).found('starter-gear');
  expect(said?.subject).toBe('2027-03-08');
  expect(said?.says).toBe('On 2027-03-08 there is 1 starter more than the 1 vessel.');
  expect(said?.remedy).toContain('another vessel');
});
