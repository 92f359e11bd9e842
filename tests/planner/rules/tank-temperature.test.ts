// The tank holds the temperature: °C between the coldest and the warmest, both allowed.
import { expect, test } from 'vitest';
import { aBrew, aSeason, aTank, lay } from '../../builders/season.ts';

const ferment = (fermentC: number) =>
  lay(aSeason({ tanks: [aTank({ minC: 14, maxC: 20 })], brews: [aBrew({ fermentC })] }), {
    Millrace: { on: '2027-03-01' },
  });

test.each([
  [13.9, 1],
  [11, 3],
  [14, 0],
  [20, 0],
  [20.5, 1],
  [23, 3],
])('%f °C in a tank of 14 to 20 °C: %i off', (fermentC, off) => {
  expect(ferment(fermentC).sum('tank-temperature')).toBe(off);
});

test('the sentence names the temperature and both bounds', () => {
  const [said] = ferment(23).found('tank-temperature');
  expect(said?.says).toBe('Millrace ferments at 23 °C; Keg A holds 14 to 20 °C.');
  expect(said?.remedy).toContain('another fermentation temperature');
});
