// Conditioning room: litres between the emptying of the tank and the ready day, at their worst.
import { expect, test } from 'vitest';
import { aBrew, aSeason, lay } from '../../builders/season.ts';

// 20 L each: in the room from 15 March (1 March + 14) up to, not including, the 28th (+ 13).
const three = (conditioningRoomL: number | null, second: string, third: string) =>
  lay(
    aSeason({
      conditioningRoomL,
      brews: [aBrew(), aBrew({ brew: 'Quill' }), aBrew({ brew: 'Heron' })],
    }),
    {
      Millrace: { on: '2027-03-01' },
      Quill: { on: second, tank: 'Keg B' },
      Heron: { on: third, tank: 'Cone' },
    },
  );

test.each([
  [60, '2027-03-01', '2027-03-01', 0, '60 of 60 L'],
  [59, '2027-03-01', '2027-03-01', 1, '60 of 59 L'],
  [59.5, '2027-03-01', '2027-03-01', 1, 'half a litre is counted whole'],
  [40, '2027-03-01', '2027-03-01', 20, '60 of 40 L'],
  [40, '2027-03-01', '2027-03-14', 0, 'the third comes in on the 28th, when two are out'],
  [40, '2027-03-01', '2027-03-13', 20, 'the third comes in on the 27th: 60 L for a day'],
  [20, '2027-03-14', '2027-03-27', 0, 'one after the other'],
  [19, '2027-03-14', '2027-03-27', 1, 'one beer is more than the room'],
  [null, '2027-03-01', '2027-03-01', 0, 'no room given: any'],
])(
  'room %s L, brews on 1 March, %s and %s: %i L too much (%s)',
  (room, second, third, over, _why) => {
    expect(three(room, second, third).sum('conditioning-room')).toBe(over);
  },
);

test('the sentence names the day, the litres and the room', () => {
  const [said] = three(40, '2027-03-01', '2027-03-13').found('conditioning-room');
  expect(said?.subject).toBe('2027-03-27');
  expect(said?.says).toBe('On 2027-03-27 there are 20 L more to condition than the room of 40 L.');
  expect(said?.remedy).toContain('Spread the brews');
});
