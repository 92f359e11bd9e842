// No room for a slip: 6.00 at home, 72.00 in a nano, times the share of the slack days that is missing (a house choice).
import { describe, expect, test } from 'vitest';
import { aBrew, aSeason, lay } from '../../builders/season.ts';

// Millrace, 14 days in the tank, is harvested on 15 March; after a day of settling its slurry is drawn from the 16th on.
const heronOn = (on: string, slackDays: number, part = {}) =>
  lay(
    aSeason({
      brews: [aBrew(), aBrew({ brew: 'Heron' })],
      rules: { slackDays },
      ...part,
    }),
    {
      Millrace: { on: '2027-03-01' },
      Heron: { on, tank: 'Keg B', from: { harvest: 'Millrace' } },
    },
  );

test.each([
  // ready on the 16th: spare days, of 5 wanted
  ['2027-03-16', 5, 'home', 600], // 0 spare: 6.00 × 5 ÷ 5
  ['2027-03-18', 5, 'home', 360], // 2 spare: 6.00 × 3 ÷ 5
  ['2027-03-20', 5, 'home', 120], // 4 spare
  ['2027-03-21', 5, 'home', 0], // 5 spare
  ['2027-03-25', 5, 'home', 0],
  ['2027-03-18', 5, 'nano', 4320], // 72.00 × 3 ÷ 5
  ['2027-03-16', 0, 'home', 0], // no slack is asked for
] as const)('drawn on %s with %i slack days in a %s: %i', (on, slackDays, kind, minor) => {
  expect(heronOn(on, slackDays, { kind }).sum('no-slack')).toBe(minor);
});

describe('is not asked of', () => {
  test('packs', () => {
    const season = lay(aSeason({ rules: { slackDays: 5 } }), { Millrace: { on: '2027-03-01' } });
    expect(season.sum('no-slack')).toBe(0);
  });
});

test('the sentence names the days, and the day itself where there are none', () => {
  expect(heronOn('2027-03-18', 5).found('no-slack')[0]?.says).toBe(
    'slurry from Millrace is ready only 2 days before Heron needs it.',
  );
  const [tight] = heronOn('2027-03-16', 5).found('no-slack');
  expect(tight?.says).toContain('on the very day that Heron needs it');
  expect(tight?.remedy).toContain('later');
});
