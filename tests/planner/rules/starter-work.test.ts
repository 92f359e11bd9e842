// Work on starters: 45 minutes at 0.08 at home, 60 at 0.35 in a nano (common practice and a house choice).
import { expect, test } from 'vitest';
import { aSeason, lay } from '../../builders/season.ts';

const season = (starter: 0 | 1 | 4, part = {}) =>
  lay(aSeason(part), { Millrace: { on: '2027-03-10', starter } });

test.each([
  [0, {}, 0],
  [1, {}, 360],
  [4, {}, 360],
  [4, { kind: 'nano' }, 2100],
  [4, { rules: { pricePerMinute: 0 } }, 0],
] as const)('%i quarters, %j: %i minor units', (starter, part, minor) => {
  expect(season(starter, part).sum('starter-work')).toBe(minor);
});

test('the sentence names the minutes', () => {
  const [said] = season(1).found('starter-work');
  expect(said?.says).toBe('45 minutes for the starter of Millrace.');
  expect(said?.remedy).toContain('more slurry');
});
