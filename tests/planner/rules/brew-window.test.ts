// Inside the brew's window: its own first day, the season, today, and news that it slipped.
import { expect, test } from 'vitest';
import { aBrew, aSeason, lay } from '../../builders/season.ts';

const house = aSeason({ brews: [aBrew({ notBefore: '2027-03-10' })] });

test.each([
  ['2027-03-09', 1, 'a day before its first possible day'],
  ['2027-03-10', 0, 'on its first possible day'],
  ['2027-06-30', 0, "on the season's last brew day"],
  ['2027-07-01', 1, 'a day after the season'],
  ['2027-07-10', 10, 'ten days after the season'],
  ['2027-02-25', 13, '3 days to 28 February, 10 to 10 March'],
])('%s: %i days off (%s)', (on, off) => {
  expect(lay(house, { Millrace: { on } }).sum('brew-window')).toBe(off);
});

test.each([
  // the latest of season, today, its own first day and the news
  ['2027-03-20', [], '2027-03-19', 1],
  ['2027-03-20', [], '2027-03-20', 0],
  ['2027-03-01', [{ brew: 'Millrace', day: '2027-04-03' }], '2027-04-02', 1],
  ['2027-03-01', [{ brew: 'Millrace', day: '2027-04-03' }], '2027-04-03', 0],
])('today %s, slipped %j: on %s it is %i days off', (today, notBefore, on, off) => {
  const season = lay(house, { Millrace: { on } }, { today, facts: { notBefore } });
  expect(season.sum('brew-window')).toBe(off);
});

test('the sentences name the day and the bound, before and after', () => {
  const [early] = lay(house, { Millrace: { on: '2027-03-09' } }).found('brew-window');
  expect(early?.says).toBe(
    'Millrace on 2027-03-09 is 1 day before 2027-03-10, its first possible day.',
  );
  expect(early?.remedy).toContain('earlier first day');
  const [late] = lay(house, { Millrace: { on: '2027-07-03' } }).found('brew-window');
  expect(late?.says).toBe("Millrace on 2027-07-03 is 3 days after the season's last brew day.");
  expect(late?.remedy).toContain('season end later');
});
