// Harvest before the hops. Hop matter goes with the crop and its viability falls: Young, MBAA Technical
// Quarterly 58(2), 2021; crop first: Berkeley Yeast, Escarpment KB 83.
import { expect, test } from 'vitest';
import { aBrew, aJar, aSeason, lay } from '../../builders/season.ts';

/** Source of 1 March, 14 days in the tank; Millrace is pitched from it on the 20th. */
const season = (tank: string, dryHopDay: number | null, crop = -1, part = {}) =>
  lay(aSeason({ brews: [aBrew({ brew: 'Source', dryHopDay }), aBrew()], ...part }), {
    Source: { on: '2027-03-01', tank, crop },
    Millrace: { on: '2027-03-20', tank: 'Keg B', from: { harvest: 'Source' } },
  });

test.each([
  // no bottom outlet: harvested when emptied, on day 14
  ['Keg A', null, -1, 0, 'not dry-hopped'],
  ['Keg A', 8, -1, 6, 'hopped on day 8, harvested on day 14'],
  ['Keg A', 13, -1, 1, 'hopped the day before'],
  ['Keg A', 14, -1, 0, 'hopped on the day of the harvest, harvest first'],
  // with one: from the earliest crop on day 5 (ale; Berkeley Yeast: subsided after 3–5 days)
  ['Cone', 8, -1, 6, 'harvested late all the same'],
  ['Cone', 8, 0, 0, 'harvested on day 5'],
  ['Cone', 8, 3, 0, 'harvested on day 8, before the hops go in'],
  ['Cone', 8, 4, 1, 'harvested on day 9'],
])(
  'in %s, dry hop on day %s, crop %i: %i days after the hops (%s)',
  (tank, hop, crop, days, _why) => {
    expect(season(tank, hop, crop).sum('dry-hopped')).toBe(days);
  },
);

test('a jar of the shelf out of hopped beer is judged too', () => {
  const jar = aJar({ sourceDryHopped: true, harvestedOn: '2027-02-20' });
  const laid = lay(aSeason({ jars: [jar] }), {
    Millrace: { on: '2027-03-01', from: { jar: 'J1' } },
  });
  expect(laid.sum('dry-hopped')).toBe(1);
});

test('the sentence names the source and the days', () => {
  const [said] = season('Keg A', 8).found('dry-hopped');
  expect(said?.says).toBe(
    'Millrace would get slurry from Source, harvested 6 days after the dry hop.',
  );
  expect(said?.remedy).toContain('before the dry hop');
});

test('relaxed it is a hazard of 0.06 at home, however many days', () => {
  const hard = season('Keg A', 8);
  const soft = season('Keg A', 8, -1, { relaxed: ['dry-hopped'] });
  expect(soft.judge.score(soft.t).hard).toBe(hard.judge.score(hard.t).hard - 6);
  expect(soft.hazard('Millrace') - hard.hazard('Millrace')).toBeCloseTo(0.06, 12);
});
