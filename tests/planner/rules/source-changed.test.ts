// Sources changed against the plan in force: dearer the closer to today, ten times inside the freeze (common practice).
import { expect, test } from 'vitest';
import { aJar, aPlan, aPlannedBrew, aSeason, lay, type Source } from '../../builders/season.ts';

const house = (part = {}) =>
  aSeason({
    jars: [aJar({ harvestedOn: '2027-02-25' }), aJar({ jar: 'J2', harvestedOn: '2027-02-25' })],
    ...part,
  });

const jarSource = {
  kind: 'jar' as const,
  jar: 'J1',
  harvestedOn: '2027-02-25',
  drawMl: 120,
  ageDays: 13,
};

const change = (was: 'packs' | 'jar', from: Source, today: string, part = {}) =>
  lay(
    house(part),
    { Millrace: { on: '2027-03-10', from } },
    {
      today,
      inForce: aPlan({
        brews: [
          aPlannedBrew({ day: '2027-03-10', ...(was === 'jar' ? { source: jarSource } : {}) }),
        ],
      }),
    },
  );

test.each([
  // 37 days ahead: 1 + 28/44 = 1.6364; × 1
  ['packs', 'packs', '2027-02-01', 0],
  ['jar', { jar: 'J1' }, '2027-02-01', 0],
  ['packs', { jar: 'J1' }, '2027-02-01', 164],
  ['jar', 'packs', '2027-02-01', 164],
  ['jar', { jar: 'J2' }, '2027-02-01', 164],
  // 8 days ahead: 1 × 2.8667; 7 days: 1 × 3 × 10
  ['jar', 'packs', '2027-03-02', 287],
  ['jar', 'packs', '2027-03-03', 3000],
] as const)('was %s, is %j, today %s: %i minor units', (was, is, today, minor) => {
  expect(change(was, is, today).sum('source-changed')).toBe(minor);
});

test('a nano weighs it 12', () => {
  expect(change('jar', 'packs', '2027-02-01', { kind: 'nano' }).sum('source-changed')).toBe(1964);
});

test('the sentence names both sources', () => {
  const [said] = change('jar', 'packs', '2027-02-01').found('source-changed');
  expect(said?.says).toBe('Millrace is pitched from fresh packs instead of jar J1.');
  expect(said?.remedy).toBe('Pin the source of Millrace.');
});
