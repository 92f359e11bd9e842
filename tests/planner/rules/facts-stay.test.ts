// What happened stays: a brewed brew keeps its day, tank, source and strain.
import { expect, test } from 'vitest';
import { dayNumber } from '../../../planner/timeline/calendar.ts';
import { unfold } from '../../../planner/timeline/unfold.ts';
import { aBrew, aJar, aSeason, lay } from '../../builders/season.ts';

const brewed = () =>
  lay(
    aSeason({
      jars: [aJar({ harvestedOn: '2027-02-20' })],
      brews: [aBrew({ yeasts: ['Mill Lane Ale', 'Harbour Lager'] })],
    }),
    {},
    {
      today: '2027-03-10',
      facts: {
        brewed: [
          {
            brew: 'Millrace',
            day: '2027-03-06',
            tank: 'Keg B',
            yeast: 'Mill Lane Ale',
            source: { kind: 'jar', jar: 'J1', drawMl: 120 },
            generation: 3,
            pitchedB: 200,
          },
        ],
      },
    },
  );

test('a plan takes the facts over as they are', () => {
  const { t, found } = brewed();
  expect([t.placed[0], t.day[0], t.tank[0], t.source[0]]).toEqual([
    1,
    dayNumber('2027-03-06'),
    1,
    0,
  ]);
  expect([t.drawMl[0], t.pitchedB[0], t.generation[0]]).toEqual([120, 200, 3]);
  expect(found('facts-stay')).toEqual([]);
});

test.each([
  ['left out', 'placed', 0],
  ['on another day', 'day', dayNumber('2027-03-07')],
  ['in another tank', 'tank', 0],
  ['from packs', 'source', -1],
  ['with another strain', 'yeast', 1],
] as const)('a brewed brew %s breaks it', (_what, field, value) => {
  const season = brewed();
  season.t[field][0] = value;
  unfold(season.t);
  const [said] = season.found('facts-stay');
  expect(said?.amount).toBe(1);
  expect(said?.says).toContain('Millrace has been brewed');
  expect(said?.remedy).toContain('take back the news about Millrace');
});
