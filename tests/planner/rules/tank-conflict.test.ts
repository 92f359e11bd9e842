// One brew at a time in a tank: from the brew day to the end of the turnaround, doubled after diastatic or wild yeast.
import { expect, test } from 'vitest';
import { aBrew, aSeason, aTank, aYeast, lay } from '../../builders/season.ts';

const two = [aBrew(), aBrew({ brew: 'Quill' })];
const house = aSeason({ brews: two });

// Millrace: 1 March + 14 days in the tank = 15 March, + 1 of turnaround = free on the 16th.
test.each([
  ['2027-03-14', 'Keg A', 2],
  ['2027-03-15', 'Keg A', 1],
  ['2027-03-16', 'Keg A', 0],
  ['2027-03-14', 'Keg B', 0],
  ['2027-03-01', 'Keg A', 15],
])('the next brew on %s in %s: %i days too early', (on, tank, days) => {
  const season = lay(house, { Millrace: { on: '2027-03-01' }, Quill: { on, tank } });
  expect(season.sum('tank-conflict')).toBe(days);
});

test('the tank stays occupied until the next work day', () => {
  // 1 March + 14 = Monday the 15th; the next work day is Saturday the 20th; free on the 21st.
  const saturdays = aSeason({ brews: two, workDays: ['sat'] });
  const on = (day: string) =>
    lay(saturdays, { Millrace: { on: '2027-03-01' }, Quill: { on: day } }).sum('tank-conflict');
  expect(on('2027-03-20')).toBe(1);
  expect(on('2027-03-21')).toBe(0);
});

test.each([
  // turnaround 3 days: free on 18 March; doubled: on the 21st. Cleaning advice: common practice, no source
  ['clean', '2027-03-18', 0],
  ['clean', '2027-03-17', 1],
  ['diastatic', '2027-03-20', 1],
  ['diastatic', '2027-03-21', 0],
  ['wild', '2027-03-20', 1],
] as const)('after a %s yeast the next brew on %s is %i days early', (nature, on, days) => {
  const season = aSeason({
    tanks: [aTank({ turnaroundDays: 3 })],
    yeasts: [aYeast({ nature })],
    brews: two,
  });
  const laid = lay(season, { Millrace: { on: '2027-03-01' }, Quill: { on } });
  expect(laid.sum('tank-conflict')).toBe(days);
});

test.each([
  // out of use from the 10th to the 12th, both included; the beer stands from 1 March to the 15th
  ['2027-03-10', '2027-03-12', 3],
  ['2027-02-20', '2027-02-28', 0],
  ['2027-02-20', '2027-03-01', 1],
  ['2027-03-15', '2027-03-20', 1],
  ['2027-03-16', '2027-03-20', 0],
])('a tank out of use %s to %s holds no beer then: %i days', (from, to, days) => {
  const season = aSeason({ tanks: [aTank({ outOfUse: [{ from, to }] })] });
  const [said] = lay(season, { Millrace: { on: '2027-03-01' } }).found('tank-conflict');
  expect(said?.amount ?? 0).toBe(days);
  if (days > 0) expect(said?.says).toContain('Keg A is out of use for');
});

test('a tank that was emptied early is free early', () => {
  const facts = {
    brewed: [
      {
        brew: 'Millrace',
        day: '2027-03-01',
        tank: 'Keg A',
        yeast: 'Mill Lane Ale',
        source: { kind: 'fresh' as const, packs: 1 },
        generation: 0,
        pitchedB: 180,
        emptiedOn: '2027-03-10',
      },
    ],
  };
  const next = lay(house, { Quill: { on: '2027-03-11' } }, { today: '2027-03-10', facts });
  expect(next.sum('tank-conflict')).toBe(0);
});

test('the sentence names the tank, who stands there, until when, and for how long', () => {
  const [said] = lay(house, {
    Millrace: { on: '2027-03-01' },
    Quill: { on: '2027-03-14' },
  }).found('tank-conflict');
  expect(said?.subject).toBe('Quill');
  expect(said?.says).toBe('Keg A holds Millrace until 2027-03-16, 2 days into Quill.');
  expect(said?.remedy).toBe('Move Quill to another day or tank.');
});
