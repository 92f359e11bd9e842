// Turns of the kettle: what a day can take, and brews that run on to the next brew day.
import { expect, test } from 'vitest';
import { aBrew, aSeason, aTank, lay } from '../../builders/season.ts';

const names = ['A', 'B', 'C', 'D'];

/** A house of so many turns a day, brews of so many litres, one tank each, a turn of 20 L. */
function turns(brewsPerDay: number, litres: readonly number[], days: readonly string[]) {
  const house = aSeason({
    brewsPerDay,
    brewLengthL: 20,
    tanks: litres.map((_, i) => aTank({ tank: names[i] ?? '', maxFillL: 500 })),
    brews: litres.map((volumeL, i) => aBrew({ brew: names[i] ?? '', volumeL })),
  });
  return lay(
    house,
    Object.fromEntries(
      days.map((on, i) => [names[i] ?? '', { on, tank: names[i] ?? '' }] as const),
    ),
  );
}

const mon = '2027-03-01';
const tue = '2027-03-02';
const wed = '2027-03-03';

test.each([
  // turns of a brew: ⌈litres / 20⌉
  [2, [20], [mon], 0, '1 of 2'],
  [2, [20, 20], [mon, mon], 0, '2 of 2'],
  [2, [20, 20, 20], [mon, mon, mon], 1, '3 of 2'],
  [2, [20, 20, 20, 20], [mon, mon, mon, mon], 2, '4 of 2'],
  [2, [50], [mon], 0, '3 turns: 2 on Monday, 1 on Tuesday'],
  [2, [50, 20], [mon, tue], 0, 'Tuesday takes the third turn and one more'],
  [2, [50, 40], [mon, tue], 0, 'Tuesday 1 + 1, the fourth turn on Wednesday'],
  [2, [50, 40, 40], [mon, tue, tue], 1, 'Tuesday has three brews under way and 2 turns'],
  [1, [40, 20], [mon, tue], 1, 'Tuesday is taken by the second turn of Monday'],
  [1, [40, 20], [mon, wed], 0, 'Wednesday is free again'],
  [1, [20.0, 20], [mon, tue], 0, 'exactly one turn each'],
  [1, [20.1, 20], [mon, tue], 1, 'a drop above 20 L is a second turn'],
])('%i a day, litres %j on %j: %i too many (%s)', (cap, litres, days, over) => {
  expect(turns(cap, litres, days).sum('kettle-turns')).toBe(over);
});

test('without a brew length every brew is one turn', () => {
  const house = aSeason({
    brewsPerDay: 1,
    brewLengthL: null,
    tanks: [aTank({ maxFillL: 500 })],
    brews: [aBrew({ volumeL: 400 })],
  });
  expect(lay(house, { Millrace: { on: mon } }).found('kettle-turns')).toEqual([]);
});

test('a large brew runs on over days that are no brew days', () => {
  // Two turns at one a day: Sunday 7 March and then Saturday 13 March, where C must wait.
  const house = aSeason({
    brewDays: ['sat', 'sun'],
    brewsPerDay: 1,
    brewLengthL: 20,
    tanks: [aTank({ tank: 'Keg A', maxFillL: 50 }), aTank({ tank: 'Keg B' })],
    brews: [aBrew({ brew: 'A', volumeL: 40 }), aBrew({ brew: 'B' })],
  });
  const at = (on: string) =>
    lay(house, { A: { on: '2027-03-07' }, B: { on, tank: 'Keg B' } }).sum('kettle-turns');
  expect(at('2027-03-13')).toBe(1);
  expect(at('2027-03-14')).toBe(0);
});

test('turns that run on past the last brew day of the season are too many', () => {
  // two turns at one a day: begun on 29 June the second falls on the 30th, begun on the 30th on 1 July
  const begun = (on: string) => turns(1, [40], [on]).sum('kettle-turns');
  expect(begun('2027-06-29')).toBe(0);
  expect(begun('2027-06-30')).toBe(1);
});

test('the sentence names the turns, what the house can and the day', () => {
  const [said] = turns(2, [20, 20, 20], [mon, mon, mon]).found('kettle-turns');
  expect(said?.subject).toBe(mon);
  expect(said?.says).toBe("1 turn more than the kettle's 2 a day, first on 2027-03-01.");
  expect(said?.remedy).toContain('turns a day');
});

const fact = (brew: string, tank: string) => ({
  brew,
  day: mon,
  tank,
  yeast: 'Mill Lane Ale',
  source: { kind: 'fresh' as const, packs: 1 },
  generation: 0,
  pitchedB: 180,
});

test('regression: two brews really brewed on a day of one turn were held against every later plan', () => {
  const house = aSeason({
    brewsPerDay: 1,
    tanks: names.map((tank) => aTank({ tank })),
    brews: [aBrew({ brew: 'A' }), aBrew({ brew: 'B' }), aBrew({ brew: 'C' })],
  });
  const facts = { brewed: [fact('A', 'A'), fact('B', 'B')] };
  const around = { today: mon, facts };
  expect(lay(house, {}, around).sum('kettle-turns')).toBe(0);
  // a third one on the same day is a choice, and the only one that counts
  expect(lay(house, { C: { on: mon, tank: 'C' } }, around).sum('kettle-turns')).toBe(1);
});
