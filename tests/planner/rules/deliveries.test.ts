// Deliveries: packs wanted within the window (home 14 days, nano 7; common practice) come together where that is cheaper.
import { expect, test } from 'vitest';
import { aBrew, aSeason, aYeast, lay, TWELVE_P } from '../../builders/season.ts';

/** Two brews of 12 °P from packs, 6.00 a delivery. */
function two(
  second: string,
  more: { kind?: 'home' | 'nano'; volumeL?: number; hand?: number } = {},
) {
  const house = aSeason({
    kind: more.kind ?? 'home',
    deliveryCost: 6,
    yeasts: [aYeast({ packsOnHand: more.hand ?? 0, packsMadeOn: '2027-02-20' })],
    brews: [
      aBrew({ brew: 'A', og: TWELVE_P, volumeL: more.volumeL ?? 20 }),
      aBrew({ brew: 'B', og: TWELVE_P, volumeL: more.volumeL ?? 20 }),
    ],
  });
  return lay(house, { A: { on: '2027-03-10' }, B: { on: second, tank: 'Keg B' } });
}

test.each([
  ['2027-03-10', {}, 600, 'the same day'],
  ['2027-03-24', {}, 600, '14 days apart'],
  ['2027-03-25', {}, 1200, '15 days apart'],
  ['2027-03-17', { kind: 'nano' }, 600, '7 days apart in a nano'],
  ['2027-03-18', { kind: 'nano' }, 1200, '8 days apart in a nano'],
  // 0.75 × 20.9 × 12 = 188.1 B: a pack of 30 days holds 189.5, one of 44 days 184.8: a second pack of 10.50
  // would be dearer than the delivery of 6.00
  ['2027-03-24', { volumeL: 20.9 }, 1200, 'sharing would cost a pack more'],
  ['2027-03-10', { volumeL: 20.9 }, 600, 'on the same day nothing ages'],
  ['2027-03-24', { hand: 1 }, 600, 'the first pack is in the cupboard'],
  ['2027-03-24', { hand: 2 }, 0, 'both packs are in the cupboard'],
] as const)('the second on %s, %j: %i minor units (%s)', (second, more, minor, _why) => {
  expect(two(second, more).sum('deliveries')).toBe(minor);
});

test('the window counts from the delivery, not from the last pitch that shares it', () => {
  const house = aSeason({
    brews: ['A', 'B', 'C'].map((brew) => aBrew({ brew, og: TWELVE_P })),
  });
  const season = lay(house, {
    A: { on: '2027-03-10' },
    B: { on: '2027-03-20', tank: 'Keg B' },
    C: { on: '2027-03-30', tank: 'Cone' },
  });
  // C is 10 days after B but 20 after the delivery of the 10th
  expect(season.sum('deliveries')).toBe(1200);
});

test('the sentence names the day by which it arrives', () => {
  const [said] = two('2027-03-12').found('deliveries');
  expect(said?.subject).toBe('2027-03-10');
  expect(said?.says).toBe('A delivery that arrives by 2027-03-10.');
  expect(said?.remedy).toContain('share a delivery');
});
