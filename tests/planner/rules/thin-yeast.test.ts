// Yeast that may prove too weak: 3.00 at home, 36.00 in a nano, for each ten percent points of the low value below the floor.
import { expect, test } from 'vitest';
import { slurryAlive } from '../../../planner/timeline/alive.ts';
import { aBrew, aSeason, lay } from '../../builders/season.ts';

const heron = (slackDays: number, viabilityFloor: number, part = {}, starter: 0 | 2 = 0) =>
  lay(
    aSeason({
      brews: [aBrew(), aBrew({ brew: 'Heron' })],
      rules: { slackDays, viabilityFloor },
      ...part,
    }),
    {
      Millrace: { on: '2027-03-01' },
      Heron: { on: '2027-04-05', tank: 'Keg B', from: { harvest: 'Millrace' }, starter },
    },
  );

/** The low value that the plan states for Heron, in percent. */
function lowOf(season: ReturnType<typeof heron>): number {
  const { t } = season;
  const heronAt = season.brew('Heron');
  return slurryAlive(t.problem, t, t.source[heronAt] as number, t.useDay[heronAt] as number).low;
}

test.each([
  ['home', 3],
  ['nano', 36],
] as const)(
  'in a %s it costs %f for ten points, and nothing at or above the floor',
  (kind, price) => {
    const low = lowOf(heron(5, 0.5, { kind }));
    for (const above of [0, -0.02]) {
      expect(heron(5, low + above, { kind }).sum('thin-yeast')).toBe(0);
    }
    // 8 points below the floor: price × 8 ÷ 10
    expect(heron(5, low + 0.08, { kind }).sum('thin-yeast')).toBe(Math.round(price * 80));
  },
);

test('is not asked where no slack is, nor where a starter wakes it', () => {
  const low = lowOf(heron(5, 0.5));
  expect(heron(0, low + 0.08).sum('thin-yeast')).toBe(0);
  expect(heron(5, low + 0.08, {}, 2).sum('thin-yeast')).toBe(0);
});

test('the sentence names the low value and the floor', () => {
  const low = lowOf(heron(5, 0.5));
  const [said] = heron(5, 0.99).found('thin-yeast');
  expect(said?.says).toBe(
    `slurry from Millrace may be only ${Math.round(low * 100)} % alive for Heron; the floor is 99 %.`,
  );
  expect(said?.remedy).toContain('starter');
});
