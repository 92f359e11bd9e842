// Not too late to matter: 28 days at home, 14 in a nano (common practice, no source).
import { expect, test } from 'vitest';
import { aBrew, aSeason, lay } from '../../builders/season.ts';

// 14 days in the tank and 13 of conditioning: brewed on 1 March it is ready on 28 March.
const wanted = (readyBy: string, kind: 'home' | 'nano' = 'home', rules = {}) =>
  lay(aSeason({ kind, rules, brews: [aBrew({ readyBy })] }), { Millrace: { on: '2027-03-01' } });

test.each([
  ['2027-03-28', 'home', 0, 'on time'],
  ['2027-03-01', 'home', 0, '27 days late of 28'],
  ['2027-02-28', 'home', 0, '28 of 28'],
  ['2027-02-27', 'home', 1, '29 of 28'],
  ['2027-03-14', 'nano', 0, '14 of 14'],
  ['2027-03-13', 'nano', 1, '15 of 14'],
] as const)('wanted %s in a %s: %s over', (readyBy, kind, over, _why) => {
  expect(wanted(readyBy, kind).sum('late-limit')).toBe(over);
});

test('a house sets its own limit; a beer that nobody waits for is never late', () => {
  expect(wanted('2027-03-25', 'home', { maxLateDays: 2 }).sum('late-limit')).toBe(1);
  const season = lay(aSeason(), { Millrace: { on: '2027-06-30' } });
  expect(season.found('late-limit')).toEqual([]);
});

test('the sentence names the ready day, the days over, the limit and the day wanted', () => {
  const [said] = wanted('2027-02-26').found('late-limit');
  expect(said?.says).toBe(
    'Millrace would be ready on 2027-03-28, 2 days past the limit of 28 days after 2027-02-26.',
  );
  expect(said?.remedy).toContain('limit of late days');
});
