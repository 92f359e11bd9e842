// A jar for the next season: 4.00 at home, 60.00 in a nano (a house choice), if it could still be pitched.
import { expect, test } from 'vitest';
import { aBrew, aJar, aSeason, aYeast, lay, TWELVE_P } from '../../builders/season.ts';

// The season ends on 30 June. A sound jar of the 20th, counted on the last day.
const kept = (jar = {}, part = {}) =>
  lay(
    aSeason({
      jars: [
        aJar({
          harvestedOn: '2027-06-20',
          measuredViability: 0.9,
          measuredOn: '2027-06-30',
          ...jar,
        }),
      ],
      brews: [aBrew({ og: TWELVE_P })],
      ...part,
    }),
    {},
    { today: '2027-06-30', keep: { 'Mill Lane Ale': { jar: 'J1' } } },
  );

test.each([
  [{}, -400, 'a sound jar'],
  [{ generation: 5 }, -400, 'at the generation limit'],
  [{ generation: 6 }, 0, 'past it'],
  [{ harvestedOn: '2027-05-26' }, -400, '35 days old on the last day'],
  [{ harvestedOn: '2027-05-25' }, 0, '36 days old'],
  [{ measuredViability: 0.7 }, -400, 'at the floor of 0.70'],
  [{ measuredViability: 0.69 }, 0, 'below it'],
  [{ sourceOg: 1.069 }, -400, 'below the gravity ceiling'],
  [{ sourceOg: 1.07 }, 0, 'at it'],
  [{ sourceSouring: 'kettle' as const }, 0, 'out of soured beer'],
  [{ sourceAdditions: ['fruit'] }, 0, 'out of fruit beer'],
  [{ sourceDryHopped: true }, 0, 'out of hopped beer'],
  [{ state: 'watch' as const }, 0, 'on watch'],
  [{ state: 'suspect' as const }, 0, 'suspect'],
  // half a pitch: 240 / 2 = 120 B; at 2.1 B/mL and 0.9 alive 63.5 mL
  [{ settledMl: 64 }, -400, 'just half a pitch'],
  [{ settledMl: 63 }, 0, 'less than half a pitch'],
])('a jar with %j is worth %i (%s)', (jar, minor, _why) => {
  expect(kept(jar).sum('season-end-jar')).toBe(minor);
});

test('a house sets the worth; each strain counts once', () => {
  expect(kept({}, { kind: 'nano' }).sum('season-end-jar')).toBe(-6000);
  expect(kept({}, { rules: { endJarValue: 0 } }).found('season-end-jar')).toEqual([]);
  const nothingKept = lay(aSeason({ jars: [aJar()] }), {}, { today: '2027-06-30' });
  expect(nothingKept.found('season-end-jar')).toEqual([]);
});

test('regression: a jar out of strong beer was worth something past the limit that holds after strong beer', () => {
  // 1.062 is 15.2 °P; a nano allows 10 generations, 5 after beer above 15 °P
  const jar = (generation: number) =>
    kept({ generation, sourceOg: 1.062 }, { kind: 'nano' }).sum('season-end-jar');
  expect(jar(5)).toBe(-6000);
  expect(jar(6)).toBe(0);
});

test('regression: a jar of the shelf was taken to be as thin as slurry read after a day', () => {
  // 70 mL × 2.1 × 0.9 = 132 B are half a pitch; at 2.1 × 0.8 B/mL it would be 106 B
  expect(kept({ settledMl: 70 }).sum('season-end-jar')).toBe(-400);
});

test('slurry of this season is judged by the beer it comes from', () => {
  const season = (brew = {}) =>
    lay(
      aSeason({ brews: [aBrew({ og: TWELVE_P, ...brew })], yeasts: [aYeast()] }),
      { Millrace: { on: '2027-06-10' } },
      { keep: { 'Mill Lane Ale': { harvest: 'Millrace' } } },
    ).sum('season-end-jar');
  expect(season()).toBe(-400);
  expect(season({ additions: ['spice'] })).toBe(0);
  expect(season({ dryHopDay: 5 })).toBe(0);
  // harvested after the season: 10 June + 21 days
  expect(season({ tankDays: 21 })).toBe(0);
});

test('the sentence names the strain and what is kept', () => {
  const [said] = kept().found('season-end-jar');
  expect(said?.subject).toBe('Mill Lane Ale');
  expect(said?.says).toBe('A jar of Mill Lane Ale is kept for the next season: jar J1.');
});
