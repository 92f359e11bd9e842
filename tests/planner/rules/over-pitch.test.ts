// Too much yeast: what is pitched above one and a half times the need × 1.00 at home, 10.00 in a nano (a house
// choice; Verbelen et al., Appl. Microbiol. Biotechnol. 82, 2009: more pitch, less new growth).
import { expect, test } from 'vitest';
import { aBrew, aJar, aSeason, lay, TWELVE_P, UNDYING } from '../../builders/season.ts';

/** One pack of 200 B into `volumeL` of 12 °P: the need is 0.75 × 12 = 9 B a litre. */
const packInto = (volumeL: number, kind: 'home' | 'nano' = 'home') =>
  lay(aSeason({ kind, rules: UNDYING, brews: [aBrew({ og: TWELVE_P, volumeL })] }), {
    Millrace: { on: '2027-03-01' },
  });

test.each([
  [20, 'home', 0, '180 B: 1.11 times'],
  [15, 'home', 0, '135 B: 1.48 times'],
  [14, 'home', 9, '126 B: 1.587 times, 0.087 above'],
  [12, 'home', 35, '108 B: 1.852 times, 0.352 above'],
  [12, 'nano', 352, 'the same in a nano'],
] as const)('%i L in a %s: %i minor units (%s)', (volumeL, kind, minor, _why) => {
  expect(packInto(volumeL, kind).sum('over-pitch')).toBe(minor);
});

test.each([
  [1, 0],
  [1.5, 0],
  [2, 50],
])('a house that draws %f times the need: %i minor units', (pitchMargin, minor) => {
  const house = aSeason({
    rules: { ...UNDYING, pitchMargin },
    jars: [aJar({ harvestedOn: '2027-02-25' })],
  });
  const season = lay(house, { Millrace: { on: '2027-03-01', from: { jar: 'J1' } } });
  expect(season.sum('over-pitch')).toBe(minor);
});

test('the sentence names how many times the need', () => {
  const [said] = packInto(12).found('over-pitch');
  expect(said?.says).toBe('Millrace gets 1.9 times the cells it needs.');
  expect(said?.remedy).toContain('smaller packs');
});
