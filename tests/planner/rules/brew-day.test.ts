// Brew days only: how many days the nearest brew day is away. Meaning: the house's own calendar, no source needed.
import { expect, test } from 'vitest';
import { aSeason, lay } from '../../builders/season.ts';

const weekends = aSeason({ brewDays: ['sat', 'sun'], closed: ['2027-03-20'] });

test.each([
  ['2027-03-06', 0, 'a Saturday'],
  ['2027-03-07', 0, 'a Sunday'],
  ['2027-03-08', 1, 'a Monday: the Sunday before is 1 away, the Saturday after 5'],
  ['2027-03-10', 3, 'a Wednesday: 3 back to the Sunday, 3 on to the Saturday'],
  ['2027-03-11', 2, 'a Thursday: 2 on to the Saturday'],
  ['2027-03-20', 1, 'a closed Saturday: the Sunday after is 1 away'],
])('%s is off by %i (%s)', (on, off) => {
  const season = lay(weekends, { Millrace: { on } });
  expect(season.sum('brew-day')).toBe(off);
});

test('the sentence names the brew, the day and how far it is off; the remedy says what to do', () => {
  const [said] = lay(weekends, { Millrace: { on: '2027-03-10' } }).found('brew-day');
  expect(said?.subject).toBe('Millrace');
  expect(said?.says).toContain('Millrace stands on 2027-03-10');
  expect(said?.says).toContain('3 days');
  expect(said?.remedy).toContain('make 2027-03-10 a brew day');
});

test('a brew that was brewed on no brew day is a fact and not a fault', () => {
  const season = lay(
    weekends,
    {},
    {
      today: '2027-03-15',
      facts: {
        brewed: [
          {
            brew: 'Millrace',
            day: '2027-03-10',
            tank: 'Keg A',
            yeast: 'Mill Lane Ale',
            source: { kind: 'fresh', packs: 1 },
            generation: 0,
            pitchedB: 180,
          },
        ],
      },
    },
  );
  expect(season.found('brew-day')).toEqual([]);
});
