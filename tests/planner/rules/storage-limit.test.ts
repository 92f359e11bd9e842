// Storage limit: days from the harvest to the draw. Home 35 (common practice), nano 14 (supplier guidance, 10–14 days).
import { expect, test } from 'vitest';
import { aBrew, aJar, aSeason, lay } from '../../builders/season.ts';

const jarOn = (on: string, part = {}, starter: 0 | 2 = 0) =>
  lay(aSeason({ jars: [aJar({ harvestedOn: '2027-02-01' })], ...part }), {
    Millrace: { on, from: { jar: 'J1' }, starter },
  });

test.each([
  // 1 February + 35 days = 8 March
  ['2027-03-07', 'home', 0],
  ['2027-03-08', 'home', 0],
  ['2027-03-09', 'home', 1],
  ['2027-03-31', 'home', 23],
  // + 14 days = 15 February
  ['2027-02-15', 'nano', 0],
  ['2027-02-16', 'nano', 1],
] as const)('a jar of 1 February on %s in a %s: %i days over', (on, kind, days) => {
  expect(jarOn(on, { kind }).sum('storage-limit')).toBe(days);
});

test('a starter does not lift it, but it draws earlier', () => {
  // 1.5 L: one day to grow, one to chill: drawn on the 9th for the 11th, which is 36 days
  expect(jarOn('2027-03-11', {}, 2).sum('storage-limit')).toBe(1);
  expect(jarOn('2027-03-10', {}, 2).sum('storage-limit')).toBe(0);
});

test('the age of slurry of this season counts from its harvest, settling included', () => {
  const house = aSeason({
    rules: { maxStorageDays: 5 },
    brews: [aBrew(), aBrew({ brew: 'Quill' })],
  });
  const at = (on: string) =>
    lay(house, {
      Millrace: { on: '2027-03-01' },
      Quill: { on, tank: 'Keg B', from: { harvest: 'Millrace' } },
    }).sum('storage-limit');
  // harvested on the 15th
  expect(at('2027-03-20')).toBe(0);
  expect(at('2027-03-21')).toBe(1);
});

test('the sentence names the source, its age and the limit', () => {
  const [said] = jarOn('2027-03-10').found('storage-limit');
  expect(said?.amount).toBe(2);
  expect(said?.says).toBe('jar J1 would be 37 days old for Millrace; the limit is 35.');
  expect(said?.remedy).toContain('younger harvest');
});

test('relaxed it is a hazard of 0.08 at home', () => {
  const hard = jarOn('2027-03-10');
  const soft = jarOn('2027-03-10', { relaxed: ['storage-limit'] });
  expect(soft.judge.score(soft.t).hard).toBe(hard.judge.score(hard.t).hard - 2);
  expect(soft.hazard('Millrace') - hard.hazard('Millrace')).toBeCloseTo(0.08, 12);
});
