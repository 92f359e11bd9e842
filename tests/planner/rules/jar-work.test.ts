// Work on jars: 5 minutes at 0.08 at home, 8 at 0.35 in a nano, for each jar that is cut (common practice).
import { expect, test } from 'vitest';
import { aBrew, aSeason, lay, TWELVE_P, UNDYING } from '../../builders/season.ts';

const brews = ['First', 'A', 'B'].map((brew) => aBrew({ brew, og: TWELVE_P }));
const from = { harvest: 'First' };
const First = { on: '2027-03-01' };
const A = { on: '2027-03-20', tank: 'Keg B', from };
const B = { on: '2027-03-22', tank: 'Cone', from };
const store = (jarMl: number) => ({ store: { tempC: 3, maxJars: 12, jarMl, settleDays: 1 } });

test.each([
  [{ First }, {}, 0, 'no draw'],
  // a draw: 240 B at 2.1 × 0.8 B/mL = 142.9 mL
  [{ First, A }, {}, 40, 'one jar'],
  [{ First, A, B }, {}, 80, 'a jar for each draw'],
  [{ First, A }, store(143), 40, 'it just fits'],
  [{ First, A }, store(142), 80, 'two, because one is too small'],
  [{ First, A }, store(50), 120, 'three'],
  // a nano reads 1.4 × 0.8 B/mL: 214 mL in a jar of 500
  [{ First, A }, { kind: 'nano' }, 280, 'one in a nano'],
] as const)('%j, %j: %i minor units (%s)', (laid, part, minor, _why) => {
  expect(lay(aSeason({ rules: UNDYING, brews, ...part }), laid).sum('jar-work')).toBe(minor);
});

test('jars are rounded together, not one by one', () => {
  // three jars of 5 minutes at 0.001: 0.015, 2 minor units and not 3 × 1
  const house = aSeason({ rules: { ...UNDYING, pricePerMinute: 0.001 }, brews, ...store(50) });
  expect(lay(house, { First, A }).sum('jar-work')).toBe(2);
});

test('the sentence names the jars and the beer', () => {
  const [said] = lay(aSeason({ rules: UNDYING, brews }), { First, A, B }).found('jar-work');
  expect(said?.says).toBe('2 jars out of First.');
  expect(said?.remedy).toBe('Use larger jars.');
});
