// A strain the brew accepts, and slurry that is of that strain.
import { expect, test } from 'vitest';
import { aBrew, aJar, aSeason, lay } from '../../builders/season.ts';

const house = aSeason({
  jars: [aJar({ harvestedOn: '2027-02-20' })],
  brews: [aBrew(), aBrew({ brew: 'Foxglove', yeasts: ['Mill Lane Ale', 'Harbour Lager'] })],
});
const on = '2027-03-20';

test.each([
  ['Millrace', { on }, 0],
  ['Millrace', { on, yeast: 'Harbour Lager' }, 1],
  ['Foxglove', { on }, 0],
  ['Foxglove', { on, yeast: 'Harbour Lager' }, 0],
  // the jar holds Mill Lane Ale
  ['Foxglove', { on, from: { jar: 'J1' } }, 0],
  ['Foxglove', { on, yeast: 'Harbour Lager', from: { jar: 'J1' } }, 1],
  // neither accepted nor what the jar holds: two findings
  ['Millrace', { on, yeast: 'Harbour Lager', from: { jar: 'J1' } }, 2],
] as const)('%s as %j: %i', (brew, laid, count) => {
  expect(lay(house, { [brew]: laid }).sum('accepted-strain')).toBe(count);
});

test('the slurry of another beer is of the strain that beer was pitched with', () => {
  const from = (yeast: string) =>
    lay(house, {
      Foxglove: { on: '2027-03-01', yeast },
      Millrace: { on, tank: 'Keg B', from: { harvest: 'Foxglove' } },
    }).sum('accepted-strain');
  expect(from('Mill Lane Ale')).toBe(0);
  expect(from('Harbour Lager')).toBe(1);
});

test('the sentences name the brew, the strain and the source', () => {
  const [strain, jar] = lay(house, {
    Millrace: { on, yeast: 'Harbour Lager', from: { jar: 'J1' } },
  }).found('accepted-strain');
  expect(strain?.says).toBe('Millrace does not accept Harbour Lager.');
  expect(jar?.says).toBe('Millrace wants Harbour Lager, but J1 holds another strain.');
  expect(strain?.remedy).toContain('that Millrace accepts');
});
