// A source ruled out for a brew is not used for it; for others it is.
import { expect, test } from 'vitest';
import { aBrew, aJar, aSeason, lay } from '../../builders/season.ts';

const house = aSeason({
  jars: [aJar({ harvestedOn: '2027-02-20' })],
  brews: [aBrew(), aBrew({ brew: 'Quill' })],
});
const millrace = { on: '2027-03-05' };
const quill = { on: '2027-03-25', tank: 'Keg B' };
const JAR = { kind: 'jar', jar: 'J1' } as const;
const FRESH = { kind: 'fresh' } as const;
const CROP = { kind: 'harvest', brew: 'Millrace' } as const;

test.each([
  [[JAR], { jar: 'J1' }, 1],
  [[JAR], 'packs', 0],
  [[FRESH], 'packs', 1],
  [[FRESH, JAR], { harvest: 'Millrace' }, 0],
  [[FRESH, CROP], { harvest: 'Millrace' }, 1],
  [[], { jar: 'J1' }, 0],
] as const)('ruled out %j, pitched from %j: %i', (forbidden, from, broken) => {
  const pins = [{ brew: 'Quill', forbidden: [...forbidden] }];
  const season = lay(house, { Millrace: millrace, Quill: { ...quill, from } }, { pins });
  expect(season.sum('forbidden-source')).toBe(broken);
});

test('what is ruled out for one brew is none of the others business', () => {
  const pins = [{ brew: 'Quill', forbidden: [JAR] }];
  const season = lay(house, { Millrace: { ...millrace, from: { jar: 'J1' } } }, { pins });
  expect(season.sum('forbidden-source')).toBe(0);
});

test('the sentence names the source, the remedy the ways out', () => {
  const pins = [{ brew: 'Millrace', forbidden: [JAR] }];
  const season = lay(house, { Millrace: { ...millrace, from: { jar: 'J1' } } }, { pins });
  const [found] = season.found('forbidden-source');
  expect(found?.says).toBe('Millrace would get jar J1, which was ruled out for it.');
  expect(found?.remedy).toBe('Allow that source for Millrace again, or give it another one.');
});
