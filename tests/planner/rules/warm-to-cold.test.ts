// Warm beer before cold: a hazard for each °C beyond two. Guessed; common practice, no source.
import { expect, test } from 'vitest';
import { aBrew, aJar, aSeason, lay } from '../../builders/season.ts';

const from = (warm: number, cold: number, kind: 'home' | 'nano' = 'home') =>
  lay(
    aSeason({
      kind,
      brews: [aBrew({ brew: 'Source', fermentC: warm }), aBrew({ fermentC: cold })],
    }),
    {
      Source: { on: '2027-03-01' },
      Millrace: { on: '2027-03-20', tank: 'Keg B', from: { harvest: 'Source' } },
    },
  );

test.each([
  // 0.003 a °C beyond two at home, 0.004 in a nano
  [18, 20, 'home', 0],
  [20, 18, 'home', 0],
  [21, 18, 'home', 0.003],
  [22, 17, 'home', 0.009],
  [22, 17, 'nano', 0.012],
] as const)('from %i °C to %i °C in a %s: %f', (warm, cold, kind, hazard) => {
  expect(from(warm, cold, kind).sum('warm-to-cold')).toBeCloseTo(hazard, 12);
});

test('jars of the shelf say nothing of their temperature and are no hazard here', () => {
  const season = lay(aSeason({ jars: [aJar({ harvestedOn: '2027-02-25' })] }), {
    Millrace: { on: '2027-03-01', from: { jar: 'J1' } },
  });
  expect(season.found('warm-to-cold')).toEqual([]);
});

test('the sentence names the whole difference and the source', () => {
  const [said] = from(22, 17).found('warm-to-cold');
  expect(said?.says).toBe('Millrace ferments 5 °C colder than slurry from Source did.');
  expect(said?.remedy).toContain('colder one first');
});
