// Inside the strain's temperatures, both ends allowed.
import { expect, test } from 'vitest';
import { aBrew, aSeason, aYeast, lay } from '../../builders/season.ts';

const ferment = (fermentC: number) =>
  lay(aSeason({ yeasts: [aYeast({ minC: 16, maxC: 22 })], brews: [aBrew({ fermentC })] }), {
    Millrace: { on: '2027-03-01' },
  });

test.each([
  [15.5, 1, 'half a degree is counted whole'],
  [12, 4, '4 °C colder'],
  [16, 0, 'the coldest'],
  [22, 0, 'the warmest'],
  [24, 2, '2 °C warmer'],
])('%f °C for a strain of 16 to 22 °C: %i off (%s)', (fermentC, off) => {
  expect(ferment(fermentC).sum('strain-temperature')).toBe(off);
});

test('the sentence names the temperature, the strain and both bounds', () => {
  const [said] = ferment(24).found('strain-temperature');
  expect(said?.says).toBe('Millrace ferments at 24 °C; Mill Lane Ale works from 16 to 22 °C.');
  expect(said?.remedy).toContain('another strain');
});
