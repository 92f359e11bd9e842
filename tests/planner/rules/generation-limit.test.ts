// Generation limit: a pack is 0, slurry of its first beer 1. Home 5 (common practice), nano 10 (Quain), and 5 after
// beer above 15 °P (Eastern-European Journal of Enterprise Technologies 2021, doi 10.15587/1729-4061.2021.248126).
import { expect, test } from 'vitest';
import { aBrew, aJar, aSeason, aYeast, lay } from '../../builders/season.ts';

type Part = {
  kind?: 'home' | 'nano';
  sourceOg?: number;
  maxGeneration?: number | null;
  rules?: object;
  relaxed?: string[];
};

/** Millrace pitched from a jar of this generation. */
const jarOf = (generation: number, part: Part = {}) =>
  lay(
    aSeason({
      kind: part.kind ?? 'home',
      rules: part.rules ?? {},
      relaxed: part.relaxed ?? [],
      yeasts: [aYeast({ maxGeneration: part.maxGeneration ?? null })],
      jars: [aJar({ generation, harvestedOn: '2027-02-25', sourceOg: part.sourceOg ?? 1.044 })],
    }),
    { Millrace: { on: '2027-03-01', from: { jar: 'J1' } } },
  );

test.each([
  [4, {}, 0, 'below'],
  [5, {}, 0, 'at the limit of 5'],
  [6, {}, 1, 'one above'],
  [9, {}, 4, 'four above'],
  [10, { kind: 'nano' }, 0, 'at the limit of 10'],
  [11, { kind: 'nano' }, 1, 'one above'],
  // 1.061 is 14.97 °P, 1.062 is 15.2 °P (NBS Circular 440)
  [6, { kind: 'nano', sourceOg: 1.061 }, 0, 'not out of strong beer'],
  [6, { kind: 'nano', sourceOg: 1.062 }, 1, 'out of strong beer the limit is 5'],
  [5, { kind: 'nano', sourceOg: 1.062 }, 0, 'at that limit'],
  // the smallest of the house's, the strain's and the strong-beer limit holds
  [4, { maxGeneration: 3 }, 1, 'a strain with a limit of 3'],
  [6, { maxGeneration: 8 }, 1, 'a strain does not raise the limit of the house'],
  [3, { rules: { maxGeneration: 2 } }, 1, 'a house with a limit of 2'],
  [3, { rules: { maxGeneration: 2 }, sourceOg: 1.062 }, 1, 'strong beer does not raise it'],
] as const)('a jar of generation %i, %j: %i past (%s)', (generation, part, past, _why) => {
  expect(jarOf(generation, part).sum('generation-limit')).toBe(past);
});

test('generations count up along a chain, and a starter adds none', () => {
  const house = aSeason({
    rules: { maxGeneration: 1 },
    brews: ['A', 'B', 'C'].map((brew) => aBrew({ brew })),
  });
  const season = lay(house, {
    A: { on: '2027-03-01' },
    B: { on: '2027-03-20', tank: 'Keg B', from: { harvest: 'A' }, starter: 2 },
    C: { on: '2027-04-10', tank: 'Cone', from: { harvest: 'B' } },
  });
  expect(['A', 'B', 'C'].map((name) => season.t.generation[season.brew(name)])).toEqual([0, 1, 2]);
  expect(season.found('generation-limit').map((f) => [f.subject, f.amount])).toEqual([['C', 1]]);
});

test('the sentence names the generation, how far past and the limit', () => {
  const [said] = jarOf(7).found('generation-limit');
  expect(said?.says).toBe('Millrace would get generation 7, 2 generations past the limit of 5.');
  expect(said?.remedy).toContain('fresh packs');
});

test('relaxed it is a hazard of 0.03 at home', () => {
  const hard = jarOf(7);
  const soft = jarOf(7, { relaxed: ['generation-limit'] });
  expect(soft.judge.score(soft.t).hard).toBe(hard.judge.score(hard.t).hard - 2);
  expect(soft.hazard('Millrace') - hard.hazard('Millrace')).toBeCloseTo(0.03, 12);
});
