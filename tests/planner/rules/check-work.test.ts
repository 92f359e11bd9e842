// Work on checks: 10 minutes at 0.08 at home, 20 at 0.35 in a nano, for each pitch of slurry (common practice).
import { expect, test } from 'vitest';
import { aJar, aSeason, lay } from '../../builders/season.ts';

const season = (from: 'packs' | { jar: string }, part = {}) =>
  lay(aSeason({ jars: [aJar({ harvestedOn: '2027-02-25' })], ...part }), {
    Millrace: { on: '2027-03-10', from },
  });
const jar = { jar: 'J1' };

test.each([
  ['packs', {}, 0],
  [jar, {}, 80],
  [jar, { kind: 'nano' }, 700],
  [jar, { rules: { checkMinutes: 0 } }, 0],
] as const)('from %j, %j: %i minor units', (from, part, minor) => {
  expect(season(from, part).sum('check-work')).toBe(minor);
});

test('the sentence names the minutes and the brew', () => {
  const [said] = season(jar).found('check-work');
  expect(said?.says).toBe('10 minutes to check the slurry for Millrace.');
  expect(said?.remedy).toContain('a check is what keeps a bad culture out');
});
