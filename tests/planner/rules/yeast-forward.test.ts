// Yeast flows forward: slurry after its harvest and settling, packs after they can have come.
import { expect, test } from 'vitest';
import { aBrew, aJar, aSeason, aYeast, lay } from '../../builders/season.ts';

const house = aSeason({
  jars: [aJar({ harvestedOn: '2027-02-27' })],
  brews: [aBrew(), aBrew({ brew: 'Quill' })],
});
const early = (season: ReturnType<typeof lay>) => season.sum('yeast-forward');

// Millrace of 1 March is emptied and harvested on the 15th; a day of settling: drawn from the 16th on.
test.each([
  ['2027-03-14', 2],
  ['2027-03-15', 1],
  ['2027-03-16', 0],
  ['2027-03-20', 0],
])(
  'slurry of a harvest of the 15th that settles a day, pitched on %s: %i days early',
  (on, days) => {
    const season = lay(house, {
      Millrace: { on: '2027-03-01' },
      Quill: { on, tank: 'Keg B', from: { harvest: 'Millrace' } },
    });
    expect(early(season)).toBe(days);
  },
);

test('with settle days 0 it is pitched on the day of the harvest, harvest first', () => {
  const store = { tempC: 3, maxJars: 12, jarMl: 500, settleDays: 0 };
  const at = (on: string) =>
    early(
      lay(aSeason({ store, brews: [aBrew(), aBrew({ brew: 'Quill' })] }), {
        Millrace: { on: '2027-03-01' },
        Quill: { on, tank: 'Keg B', from: { harvest: 'Millrace' } },
      }),
    );
  expect(at('2027-03-14')).toBe(1);
  expect(at('2027-03-15')).toBe(0);
});

test('a starter draws days before the brew day, and that is the day that counts', () => {
  // 0.75 L, a quarter of 3 L, grows for a day; it is less than 5 % of 20 L, so it is pitched whole.
  const at = (on: string) =>
    early(
      lay(house, {
        Millrace: { on: '2027-03-01' },
        Quill: { on, tank: 'Keg B', from: { harvest: 'Millrace' }, starter: 1 },
      }),
    );
  expect(at('2027-03-16')).toBe(1);
  expect(at('2027-03-17')).toBe(0);
});

test.each([
  // harvested on 27 February, a day of settling, but never before today
  ['2027-02-01', '2027-02-27', 1],
  ['2027-02-01', '2027-02-28', 0],
  ['2027-03-05', '2027-03-04', 1],
  ['2027-03-05', '2027-03-05', 0],
])('today %s: a jar of 27 February on %s is %i days early', (today, on, days) => {
  expect(early(lay(house, { Millrace: { on, from: { jar: 'J1' } } }, { today }))).toBe(days);
});

test.each([
  // ordered today, seven days of delivery
  ['2027-03-07', 0, 1],
  ['2027-03-08', 0, 0],
  ['2027-03-02', 0, 6],
  ['2027-03-02', 1, 0],
])('today 1 March: packs for %s with %i in the cupboard are %i days early', (on, hand, days) => {
  const season = aSeason({
    yeasts: [aYeast({ packsOnHand: hand, packsMadeOn: '2027-02-20' })],
  });
  expect(early(lay(season, { Millrace: { on } }, { today: '2027-03-01' }))).toBe(days);
});

test('what is not there at all counts a thousand days and says so', () => {
  const before = lay(house, {
    Millrace: { on: '2027-03-10' },
    Quill: { on: '2027-03-10', tank: 'Keg B', from: { harvest: 'Millrace' } },
  });
  expect(before.sum('yeast-forward')).toBe(1000);
  const missing = lay(house, { Quill: { on: '2027-03-20', from: { harvest: 'Millrace' } } });
  expect(missing.sum('yeast-forward')).toBe(1000);
  const gone = lay(
    house,
    { Quill: { on: '2027-03-20', from: { jar: 'J1' } } },
    { facts: { begun: [], bought: [], goneJars: ['J1'] } },
  );
  expect(gone.found('yeast-forward')[0]?.says).toBe(
    'Quill has no yeast: jar J1 cannot be had or cannot give enough.',
  );
});

test('regression: a harvest missed for good was said to come in a thousand days', () => {
  // First was emptied on 15 March and nothing was taken from it
  const facts = {
    brewed: [
      {
        brew: 'Millrace',
        day: '2027-03-01',
        tank: 'Keg A',
        yeast: 'Mill Lane Ale',
        source: { kind: 'fresh' as const, packs: 1 },
        generation: 0,
        pitchedB: 190,
        emptiedOn: '2027-03-15',
      },
    ],
  };
  const [said] = lay(
    house,
    { Quill: { on: '2027-03-25', tank: 'Keg B', from: { harvest: 'Millrace' } } },
    { today: '2027-03-20', facts },
  ).found('yeast-forward');
  expect(said?.amount).toBe(1000);
  expect(said?.says).toBe(
    'Quill has no yeast: slurry from Millrace cannot be had or cannot give enough.',
  );
});

test('the sentences name the day, the source and how early', () => {
  const [slurry] = lay(house, {
    Millrace: { on: '2027-03-01' },
    Quill: { on: '2027-03-14', tank: 'Keg B', from: { harvest: 'Millrace' } },
  }).found('yeast-forward');
  expect(slurry?.says).toBe(
    'Quill wants slurry from Millrace on 2027-03-14, 2 days before it can be drawn.',
  );
  const [packs] = lay(house, { Quill: { on: '2027-03-05' } }, { today: '2027-03-01' }).found(
    'yeast-forward',
  );
  expect(packs?.says).toBe(
    'Packs for Quill are needed on 2027-03-05, 3 days before an order could arrive.',
  );
  expect(packs?.remedy).toContain('Brew Quill later');
});
