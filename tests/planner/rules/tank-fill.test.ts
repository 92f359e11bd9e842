// The tank fits the brew: litres of wort between the smallest and the largest fill, both allowed.
import { expect, test } from 'vitest';
import { aBrew, aSeason, aTank, lay } from '../../builders/season.ts';

const fill = (volumeL: number) =>
  lay(aSeason({ tanks: [aTank({ minFillL: 12, maxFillL: 21 })], brews: [aBrew({ volumeL })] }), {
    Millrace: { on: '2027-03-01' },
  });

test.each([
  [11.9, 1, '0.1 L short, in whole litres'],
  [10, 2, '2 L short'],
  [12, 0, 'the smallest fill'],
  [21, 0, 'the largest fill'],
  [21.1, 1, '0.1 L over'],
  [25.5, 5, '4.5 L over'],
])('%f L in a tank of 12 to 21 L: %i off (%s)', (volumeL, off) => {
  expect(fill(volumeL).sum('tank-fill')).toBe(off);
});

test('the sentence names the litres and both bounds', () => {
  const [said] = fill(25.5).found('tank-fill');
  expect(said?.says).toBe('Millrace is 25.5 L; Keg A takes 12 to 21 L.');
  expect(said?.remedy).toContain('another batch size');
});
