// What was told of slurry is what the plan reckons with: counts instead of predictions, states of beers.
import { describe, expect, test } from 'vitest';
import { aBrew, aJar, aSeason, lay, TWELVE_P, UNDYING } from '../../builders/season.ts';

const house = aSeason({
  rules: UNDYING,
  jars: [aJar({ harvestedOn: '2027-02-20', settledMl: 900 })],
  brews: [aBrew({ og: TWELVE_P }), aBrew({ brew: 'Quill', og: TWELVE_P })],
});
const fact = {
  brew: 'Millrace',
  day: '2027-03-01',
  tank: 'Keg A',
  yeast: 'Mill Lane Ale',
  source: { kind: 'fresh' as const, packs: 1 },
  generation: 0,
  pitchedB: 200,
};
const harvested = { brew: 'Millrace', day: '2027-03-15', settledMl: 300 };
const JAR = { kind: 'jar' as const, jar: 'J1' };
const CROP = { kind: 'harvest' as const, brew: 'Millrace' };

/** mL drawn for Quill on 20 March, from the jar or from the harvest of Millrace. */
function drawn(from: 'jar' | 'harvest', measured: object[]): number {
  const season = lay(
    house,
    {
      Quill: {
        on: '2027-03-20',
        tank: 'Keg B',
        from: from === 'jar' ? { jar: 'J1' } : { harvest: 'Millrace' },
      },
    },
    {
      today: '2027-03-16',
      facts: { brewed: [fact], harvested: [harvested], measured: measured as never },
    },
  );
  return season.t.drawMl[season.brew('Quill')] ?? 0;
}

describe('a count', () => {
  // 240 billion are needed; at 2 billion per mL and 60 % alive that is 240 / 1.2 = 200 mL
  test.each(['jar', 'harvest'] as const)(
    'of cells per mL decides what is drawn of a %s',
    (from) => {
      const of = from === 'jar' ? JAR : CROP;
      const day = '2027-03-16';
      const full = drawn(from, [
        { of, day, viability: from === 'jar' ? null : 1, densityBPerMl: 2 },
      ]);
      const margin = full / 120;
      // whatever margin the house adds, half as thick is twice as much
      expect(drawn(from, [{ of, day, viability: null, densityBPerMl: 1 }])).toBeCloseTo(
        240 * margin,
        4,
      );
    },
  );

  test('of the living decides what is drawn of a harvest', () => {
    const day = '2027-03-16';
    const all = drawn('harvest', [{ of: CROP, day, viability: 1, densityBPerMl: 2 }]);
    const some = drawn('harvest', [{ of: CROP, day, viability: 0.6, densityBPerMl: 2 }]);
    expect(some / all).toBeCloseTo(1 / 0.6, 9);
  });
});

describe('a beer that is suspect or on watch', () => {
  const pitched = (state: 'sound' | 'watch' | 'suspect', withHarvest: boolean) =>
    lay(
      house,
      { Quill: { on: '2027-03-20', tank: 'Keg B', from: { harvest: 'Millrace' } } },
      {
        today: '2027-03-10',
        facts: {
          brewed: [{ ...fact, state }],
          harvested: withHarvest ? [harvested] : [],
        },
      },
    ).sum('suspect');

  test.each([
    ['sound', 0],
    ['watch', 1],
    ['suspect', 1],
  ] as const)('%s: %i pitches barred, harvested already or not', (state, barred) => {
    expect(pitched(state, false)).toBe(barred);
    expect(pitched(state, true)).toBe(barred);
  });
});
