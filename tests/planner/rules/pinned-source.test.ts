// Pins hold: the tank and the source that a brewer holds fast.
import { expect, test } from 'vitest';
import { aBrew, aJar, aSeason, lay } from '../../builders/season.ts';

const house = aSeason({
  jars: [aJar({ harvestedOn: '2027-02-20' })],
  brews: [aBrew(), aBrew({ brew: 'Quill' })],
});
const on = '2027-03-05';

test.each([
  [{ tank: 'Keg B' }, { on, tank: 'Keg B' }, 0],
  [{ tank: 'Keg B' }, { on, tank: 'Keg A' }, 1],
  [{ source: { kind: 'jar', jar: 'J1' } }, { on, from: { jar: 'J1' } }, 0],
  [{ source: { kind: 'jar', jar: 'J1' } }, { on, from: 'packs' }, 1],
  [{ source: { kind: 'fresh' } }, { on, from: 'packs' }, 0],
  [{ source: { kind: 'fresh' } }, { on, from: { jar: 'J1' } }, 1],
  [{ source: { kind: 'harvest', brew: 'Quill' } }, { on, from: 'packs' }, 1],
  // both broken: two findings
  [{ tank: 'Keg B', source: { kind: 'jar', jar: 'J1' } }, { on }, 2],
  // a pinned day says nothing about tank and source
  [{ day: '2027-03-20' }, { on }, 0],
] as const)('pinned to %j, laid as %j: %i broken', (pin, laid, broken) => {
  const season = lay(house, { Millrace: laid }, { pins: [{ brew: 'Millrace', ...pin }] });
  expect(season.sum('pinned-source')).toBe(broken);
});

test('the sentences name what is pinned and what came instead', () => {
  const pins = [{ brew: 'Millrace', tank: 'Keg B', source: { kind: 'jar' as const, jar: 'J1' } }];
  const [tank, source] = lay(house, { Millrace: { on } }, { pins }).found('pinned-source');
  expect(tank?.says).toBe('Millrace is pinned to tank Keg B but stands in Keg A.');
  expect(source?.says).toBe('Millrace is pinned to jar J1 but is pitched otherwise.');
  expect(source?.remedy).toContain('Take the pin of Millrace out');
});
