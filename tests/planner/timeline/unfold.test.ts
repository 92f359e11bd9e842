// What follows from decisions: days, crops, starters, packs, draws, shelf. Amounts worked out beside each check.
import { expect, test } from 'vitest';
import { isoDay } from '../../../planner/timeline/calendar.ts';
import { fillKettle } from '../../../planner/timeline/room.ts';
import {
  aBrew,
  aJar,
  aSeason,
  aTank,
  aYeast,
  lay,
  MONDAY,
  TWELVE_P,
  UNDYING,
} from '../../builders/season.ts';
import { FIRST_ON, SECOND_ON, twoBrews } from '../../builders/two-brews.ts';

// The season of two brews; tests/outside/two-brews-by-hand.test.ts works the same figures out from their sources.
const two = lay(twoBrews(), {
  First: { on: FIRST_ON },
  Second: { on: SECOND_ON, tank: 'Keg B', from: { harvest: 'First' } },
});
const [A, B] = [two.brew('First'), two.brew('Second')];

test('two brews: days', () => {
  const days = (list: Int32Array) => [A, B].map((b) => isoDay(list[b] ?? 0));
  expect(days(two.t.emptied)).toEqual(['2027-03-20', '2027-04-10']);
  expect(days(two.t.free)).toEqual(['2027-03-21', '2027-04-11']);
  expect(days(two.t.ready)).toEqual(['2027-03-30', '2027-04-20']);
  expect(days(two.t.harvestDay)).toEqual(['2027-03-20', '2027-04-10']);
  expect(days(two.t.usableFrom)).toEqual(['2027-03-21', '2027-04-11']);
  expect([two.t.late[A], two.t.late[B]]).toEqual([0, 2]);
});

test('two brews: cells', () => {
  const { t } = two;
  expect(t.needB[A]).toBeCloseTo(180, 1); // 0.75 × 20 × 12
  expect(t.pitchedB[A]).toBeCloseTo(200 * Math.exp(-0.0018 * 30), 9); // one pack of 30 days
  expect(t.cropMl[A]).toBeCloseTo(293.253, 3); // 4 × 189.486 × 0.65 / 1.68
  expect(t.crashed[A]).toBe(1);
  expect(t.beerLoss[A]).toBeCloseTo(0.0905658, 7); // 7 days at 18 °C, 2 at 2 °C, 15 % of storage
  expect(t.needB[B]).toBeCloseTo(300, 0); // 1.0 × 20 × 15
  expect(t.viability[B]).toBeCloseTo(0.800206, 6); // and 7 days at 3 °C
  expect((t.drawMl[B] ?? 0) / 223.157).toBeCloseTo(1, 3); // 300 / (1.68 × 0.800206)
  expect([t.drawJars[B], t.generation[B], t.ageDays[B], t.drawnEarly[B]]).toEqual([1, 1, 7, -1]);
  expect(t.drawnMl[two.problem.jars.length + A]).toBe(t.drawMl[B]);
  expect([t.packs[A], t.packs[B], t.deliveryCount]).toEqual([1, 0, 1]);
});

/** Days after the pitch of 1 March on which one beer in the cone is cropped. */
const cropped = (crop: number, brew = {}, yeast = {}, house = {}) => {
  const season = lay(
    aSeason({
      tanks: [aTank({ tank: 'Cone', bottomOutlet: true })],
      yeasts: [aYeast(yeast)],
      brews: [aBrew({ tankDays: 20, ...brew })],
      ...house,
    }),
    { Millrace: { on: '2027-03-01', tank: 'Cone', crop } },
  );
  return (season.t.harvestDay[0] ?? 0) - (season.t.day[0] ?? 0);
};

test.each([
  // ale 5 (Berkeley Yeast: subsided after 3–5 days), lager 10 (Verbelen et al. 2009: 7–14), 2 more above 15 °P
  // or for a low flocculator (common practice)
  [{}, {}, 5],
  [{}, { kind: 'wheat' }, 5],
  [{}, { kind: 'lager' }, 10],
  [{ og: 1.061 }, {}, 5],
  [{ og: 1.062 }, {}, 7],
  [{}, { flocculation: 'low' }, 7],
  [{ og: 1.062 }, { kind: 'lager', flocculation: 'low' }, 12],
  [{ harvestDay: 3 }, { kind: 'lager' }, 3],
  [{ tankDays: 4 }, {}, 4],
] as const)(
  'a beer of %j with yeast of %j is cropped on day %i at the earliest',
  (brew, yeast, day) => {
    expect(cropped(0, brew, yeast)).toBe(day);
  },
);

test.each([
  [-1, 20, 'when it is emptied'],
  [0, 5, 'the earliest day'],
  [3, 8, 'the third work day after it'],
  [30, 20, 'never after it is emptied'],
])('crop %i falls on day %i (%s)', (crop, day) => {
  expect(cropped(crop)).toBe(day);
});

test('crops fall on work days', () => {
  // Wednesdays and Saturdays: day 5 is Saturday the 6th, then the 10th, the 13th
  const house = { workDays: ['wed' as const, 'sat' as const] };
  expect([0, 1, 2].map((k) => cropped(k, {}, {}, house))).toEqual([5, 9, 12]);
});

/** Recovery of a low flocculator: 0.45 crashed, half of that not (common practice). */
const recovered = (tank: object, brew: object, rules = {}) => {
  const season = lay(
    aSeason({
      rules: { ...UNDYING, ...rules },
      tanks: [aTank(tank)],
      yeasts: [aYeast({ flocculation: 'low' })],
      brews: [aBrew({ og: TWELVE_P, ...brew })],
    }),
    { Millrace: { on: '2027-03-01' } },
  );
  return (season.t.cropCellsB[0] ?? 0) / (4 * 200);
};

test.each([
  [{ minC: 2 }, {}, {}, 0.45, 'a tank that holds 2 °C'],
  [{ minC: 3 }, {}, {}, 0.225, 'a tank that does not'],
  [{ minC: 3 }, {}, { crashC: 3 }, 0.45, 'a house that crashes at 3 °C'],
  // fermented on day 7, two days of crash: emptied on day 9 at the earliest
  [{ minC: 2 }, { tankDays: 9 }, {}, 0.45, 'just time for it'],
  [{ minC: 2 }, { tankDays: 8 }, {}, 0.225, 'no time for it'],
  [
    { minC: 2 },
    {},
    { crashDays: 0 },
    0.225,
    'regression: a house that does not crash was said to have',
  ],
])('tank %j, brew %j, rules %j: %f of the crop (%s)', (tank, brew, rules, share, _why) => {
  expect(recovered(tank, brew, rules)).toBeCloseTo(share, 12);
});

test('a crop is no more than the beer holds', () => {
  // four packs' worth of slurry: 4 × 720 B are above 80 × 20 = 1,600 B; × 0.65
  const season = lay(
    aSeason({
      rules: { ...UNDYING, pitchMargin: 3 },
      jars: [aJar({ settledMl: 5000, harvestedOn: '2027-02-25' })],
      brews: [aBrew({ og: TWELVE_P })],
    }),
    { Millrace: { on: '2027-03-01', from: { jar: 'J1' } } },
  );
  expect(season.t.pitchedB[0]).toBeCloseTo(720, 0);
  expect(season.t.cropCellsB[0]).toBeCloseTo(1040, 9);
});

test.each([
  // 3 L at most. A quarter grows a day; above 5 % of 20 L a day to chill; above half of 3 L two days to grow
  [1, 0.75, '2027-03-09', null],
  [2, 1.5, '2027-03-08', '2027-03-09'],
  [3, 2.25, '2027-03-07', '2027-03-09'],
  [4, 3, '2027-03-07', '2027-03-09'],
] as const)(
  'a starter of %i quarters for 10 March: %f L, begun %s, chilled %s',
  (size, litres, begun, chilled) => {
    const { t } = lay(aSeason(), { Millrace: { on: '2027-03-10', starter: size } });
    expect(t.starterLitres[0]).toBe(litres);
    expect(isoDay(t.starterStart[0] ?? 0)).toBe(begun);
    const chill = t.starterChill[0] ?? -1;
    expect(chill < 0 ? null : isoDay(chill)).toBe(chilled);
    expect(t.useDay[0]).toBe(t.starterStart[0]);
  },
);

test('a starter of a low flocculator stands cold for two days before it is decanted', () => {
  const low = aSeason({
    yeasts: [aYeast({ flocculation: 'low', packsOnHand: 0, packsMadeOn: null })],
  });
  const { t } = lay(low, { Millrace: { on: '2027-03-10', starter: 2 } });
  expect(isoDay(t.starterChill[0] ?? 0)).toBe('2027-03-08');
  expect(isoDay(t.starterStart[0] ?? 0)).toBe('2027-03-07');
});

test('a starter makes up what slurry lacks', () => {
  // 240 B out of 1.5 L, 150 g, stirred (Troester, from memory: 1.4 B a gram up to 1.4 at the start): 240 − 210 = 30 B,
  // an eighth of 240 as well; at 2.1 B/mL, all alive, 14.3 mL
  const season = lay(
    aSeason({
      rules: UNDYING,
      jars: [aJar({ harvestedOn: '2027-02-25' })],
      brews: [aBrew({ og: TWELVE_P })],
    }),
    { Millrace: { on: '2027-03-10', from: { jar: 'J1' }, starter: 2 } },
  );
  expect(season.t.seedB[0]).toBeCloseTo(30, 1);
  expect(season.t.pitchedB[0]).toBeCloseTo(240, 1);
  expect(season.t.drawMl[0]).toBeCloseTo(14.28, 1);
});

test('a jar that was counted starts from the count, another from the crop', () => {
  // 10 days at 3 °C lose 10 × 0.0145516 (McCaig & Bendiak 1985 and common practice, between 1 and 5 °C)
  const alive = (jar: object) =>
    lay(aSeason({ jars: [aJar({ harvestedOn: '2027-02-19', ...jar })] }), {
      Millrace: { on: '2027-03-01', from: { jar: 'J1' } },
    }).t.viability[0];
  expect(alive({})).toBeCloseTo(0.97 * Math.exp(-0.145516), 6);
  expect(alive({ measuredViability: 0.9 })).toBeCloseTo(0.9 * Math.exp(-0.145516), 6);
  expect(alive({ measuredViability: 0.9, measuredOn: '2027-02-24' })).toBeCloseTo(
    0.9 * Math.exp(-0.072758),
    6,
  );
});

const brewed = (tank: string, emptiedOn: string | null) => ({
  brewed: [
    {
      brew: 'Millrace',
      day: '2027-03-01',
      tank,
      yeast: 'Mill Lane Ale',
      source: { kind: 'fresh' as const, packs: 1 },
      generation: 0,
      pitchedB: 190,
      emptiedOn,
    },
  ],
});

test.each([
  // 14 days in the tank: 15 March; today is Thursday the 18th, worked are Wednesdays and Saturdays
  ['Keg A', '2027-03-10', '2027-03-17', '2027-03-17', 'not due yet on the 10th'],
  ['Keg A', '2027-03-18', '2027-03-20', '2027-03-20', 'still in the tank on the 18th'],
  // the cone could have been cropped from 6 March on
  ['Cone', '2027-03-10', '2027-03-17', '2027-03-10', 'cropped today at the earliest'],
])(
  'a brewed beer in %s on %s is emptied on %s and harvested on %s (%s)',
  (tank, today, emptied, harvest) => {
    const house = aSeason({ workDays: ['wed', 'sat'] });
    const { t } = lay(
      house,
      { Millrace: { on: MONDAY, crop: 0 } },
      { today, facts: brewed(tank, null) },
    );
    expect([isoDay(t.emptied[0] ?? 0), isoDay(t.harvestDay[0] ?? 0)]).toEqual([emptied, harvest]);
  },
);

test('nothing comes any more from a tank that was told to be empty', () => {
  const facts = brewed('Keg A', '2027-03-15');
  const there = lay(aSeason(), {}, { today: '2027-03-15', facts });
  expect(there.t.cropMl[0]).toBeGreaterThan(200);
  const gone = lay(aSeason(), {}, { today: '2027-03-16', facts });
  expect(gone.t.cropMl[0]).toBe(0);
});

test('kettle turns are laid day by day', () => {
  // 2 a day, turns of 20 L: A of 50 L on Monday, B of 40 L on Tuesday
  const season = lay(
    aSeason({
      brewsPerDay: 2,
      brewLengthL: 20,
      tanks: [aTank({ maxFillL: 100 }), aTank({ tank: 'Keg B', maxFillL: 100 })],
      brews: [aBrew({ brew: 'A', volumeL: 50 }), aBrew({ brew: 'B', volumeL: 40 })],
    }),
    { A: { on: '2027-03-01' }, B: { on: '2027-03-02', tank: 'Keg B' } },
  );
  const laid: string[] = [];
  fillKettle(season.problem, season.t, (b, day, turns) =>
    laid.push(`${season.problem.brews[b]?.name} ${isoDay(day)} ${turns}`),
  );
  expect(laid).toEqual(['A 2027-03-01 2', 'A 2027-03-02 1', 'B 2027-03-02 1', 'B 2027-03-03 1']);
});

test('brews in no order of their list are unfolded in order of their days', () => {
  // the source stands after the brew that it feeds
  const season = lay(aSeason({ brews: [aBrew({ brew: 'Late' }), aBrew({ brew: 'Early' })] }), {
    Late: { on: '2027-03-20', tank: 'Keg B', from: { harvest: 'Early' } },
    Early: { on: '2027-03-01' },
  });
  expect(season.t.generation[season.brew('Late')]).toBe(1);
  expect(season.found('yeast-forward')).toEqual([]);
});
