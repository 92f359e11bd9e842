// What a house of sound shape may still mean wrongly: each case changes one thing in a house that is right.
import { expect, test } from 'vitest';
import type { z } from 'zod';
import { checkHouse, defaultToday, type House, nearest } from '../../../planner/index.ts';
import { aBrew, aHouse, aJar, aTank, aYeast } from '../../builders/plan.ts';

type Part = Partial<z.input<typeof House>>;
type Case = [what: string, part: Part, code: string, path: string];

const lager = aYeast({
  yeast: 'Harbour Lager',
  minC: 8,
  maxC: 20,
  packsOnHand: 0,
  packsMadeOn: null,
});

test('a house that is right gives no problem', () => {
  expect(checkHouse(aHouse())).toEqual([]);
});

const ERRORS: Case[] = [
  ['an empty season', { brews: [] }, 'no-brews', 'brews'],
  ['no tank', { tanks: [] }, 'no-tanks', 'tanks'],
  ['no yeast', { yeasts: [], jars: [] }, 'no-yeasts', 'yeasts'],
  ['a season that ends before it begins', { to: '2027-01-08' }, 'days-out-of-order', 'to'],
  ['a season of a century', { to: '2127-01-08' }, 'season-too-long', 'to'],
  // 2027-01-09 and -10 are the only weekend of these days
  [
    'a season that is all closed',
    { to: '2027-01-12', closed: ['2027-01-09', '2027-01-10'] },
    'no-brew-day',
    'brewDays',
  ],
  ['no work day', { workDays: [] }, 'no-work-day', 'workDays'],
  ['two tanks of one name', { tanks: [aTank(), aTank()] }, 'doubled-name', 'tanks[1].tank'],
  [
    'two brews of one name',
    { brews: [aBrew(), aBrew({ og: 1.05 })] },
    'doubled-name',
    'brews[1].brew',
  ],
  [
    'a tank filled backwards',
    { tanks: [aTank({ minFillL: 22 })] },
    'bounds-reversed',
    'tanks[0].minFillL',
  ],
  ['a tank cooled backwards', { tanks: [aTank({ minC: 25 })] }, 'bounds-reversed', 'tanks[0].minC'],
  [
    'a tank out of use backwards',
    { tanks: [aTank({ outOfUse: [{ from: '2027-03-02', to: '2027-03-01' }] })] },
    'days-out-of-order',
    'tanks[0].outOfUse[0].to',
  ],
  [
    'a yeast that no row defines',
    { brews: [aBrew({ yeasts: ['Mill Lane'] })] },
    'unknown-yeast',
    'brews[0].yeasts[0]',
  ],
  [
    'a jar of an unknown yeast',
    { jars: [aJar({ yeast: 'Nobody' })] },
    'unknown-yeast',
    'jars[0].yeast',
  ],
  [
    'a measurement before its harvest',
    { jars: [aJar({ measuredViability: 0.9, measuredOn: '2026-12-19' })] },
    'days-out-of-order',
    'jars[0].measuredOn',
  ],
  [
    'a jar of next year',
    { jars: [aJar({ harvestedOn: '2027-06-28' })] },
    'day-after-season',
    'jars[0].harvestedOn',
  ],
  [
    'packs made after the season',
    { yeasts: [aYeast({ packsMadeOn: '2027-06-28' }), lager] },
    'day-after-season',
    'yeasts[0].packsMadeOn',
  ],
  [
    'gravities reversed',
    { brews: [aBrew({ og: 1.011, fg: 1.041 })] },
    'gravities-reversed',
    'brews[0].fg',
  ],
  [
    'gravities equal',
    { brews: [aBrew({ og: 1.041, fg: 1.041 })] },
    'gravities-reversed',
    'brews[0].fg',
  ],
  [
    'wort like water',
    { brews: [aBrew({ og: 1, fg: 0.99 })] },
    'gravity-without-extract',
    'brews[0].og',
  ],
  [
    '20 L where tanks take 10',
    { tanks: [aTank({ minFillL: 5, maxFillL: 10 })], brews: [aBrew()] },
    'fits-no-tank',
    'brews[0].volumeL',
  ],
  [
    'a volume between two tanks',
    {
      tanks: [aTank({ maxFillL: 15 }), aTank({ tank: 'B', minFillL: 22, maxFillL: 30 })],
      brews: [aBrew()],
    },
    'fits-no-tank',
    'brews[0].volumeL',
  ],
  // 14 tank days: day 13 is the last with the beer in the tank all day
  [
    'a dry hop after the tank',
    { brews: [aBrew({ dryHopDay: 14 })] },
    'day-after-the-tank',
    'brews[0].dryHopDay',
  ],
  [
    'a harvest after the tank',
    { brews: [aBrew({ harvestDay: 15 })] },
    'day-after-the-tank',
    'brews[0].harvestDay',
  ],
  [
    'not before after ready by',
    { brews: [aBrew({ notBefore: '2027-04-02', readyBy: '2027-04-01' })] },
    'days-out-of-order',
    'brews[0].notBefore',
  ],
  [
    'a fixed day before the season',
    { brews: [aBrew({ brewOn: '2027-01-08' })] },
    'days-out-of-order',
    'brews[0].brewOn',
  ],
  [
    'a fixed day after the season',
    { brews: [aBrew({ brewOn: '2027-06-28' })] },
    'days-out-of-order',
    'brews[0].brewOn',
  ],
  [
    'not before the season is over',
    { brews: [aBrew({ notBefore: '2027-06-28' })] },
    'days-out-of-order',
    'brews[0].notBefore',
  ],
  // Monday to Friday in a house that brews at weekends
  [
    'a window without a brew day',
    { brews: [aBrew({ notBefore: '2027-01-11', readyBy: '2027-01-15' })] },
    'no-brew-day',
    'brews[0].notBefore',
  ],
  [
    'a rule that cannot be relaxed',
    { relaxed: ['tank-conflict'] },
    'rule-not-relaxable',
    'relaxed[0]',
  ],
  ['a rule that does not exist', { relaxed: ['gravity-celing'] }, 'unknown-rule', 'relaxed[0]'],
  [
    'a weight of no rule',
    { weights: { 'dark-to-lite': 1 } },
    'unknown-weight',
    'weights.dark-to-lite',
  ],
];

test.each(ERRORS)('%s is an error', (_what, part, code, path) => {
  const problems = checkHouse(aHouse(part));
  const found = problems.find((problem) => problem.code === code && problem.path === path);
  expect(found, JSON.stringify(problems)).toMatchObject({ level: 'error' });
  expect(found?.message).toMatch(/\.$/);
  expect(found?.remedy).toMatch(/\.$/);
  // one change, one error: nothing is said that only follows from it
  expect(problems.filter((problem) => problem.level === 'error')).toHaveLength(1);
});

const WARNINGS: Case[] = [
  ['names alike', { tanks: [aTank(), aTank({ tank: 'keg  a' })] }, 'names-alike', 'tanks[1].tank'],
  [
    'packs of unknown age',
    { yeasts: [aYeast({ packsMadeOn: null }), lager] },
    'pack-age-unknown',
    'yeasts[0].packsMadeOn',
  ],
  // liquid packs keep 120 days: 2026-09-11 is 120 days before 2027-01-09
  [
    'packs a day too old',
    { yeasts: [aYeast({ packsMadeOn: '2026-09-10' }), lager] },
    'packs-expired',
    'yeasts[0].packsMadeOn',
  ],
  [
    'a jar of the running season',
    { jars: [aJar({ harvestedOn: '2027-01-10' })] },
    'jar-from-the-season',
    'jars[0].harvestedOn',
  ],
  [
    'a share without its day',
    { jars: [aJar({ measuredViability: 0.9 })] },
    'half-a-measurement',
    'jars[0].measuredOn',
  ],
  [
    'a day without its share',
    { jars: [aJar({ measuredOn: '2026-12-21' })] },
    'half-a-measurement',
    'jars[0].measuredViability',
  ],
  [
    'a fixed day on a Monday',
    { brews: [aBrew({ brewOn: '2027-01-11' })] },
    'fixed-day-no-brew-day',
    'brews[0].brewOn',
  ],
  // first brew day 9 January + 14 in the tank + 13 of conditioning = 5 February; 28 late is 8 January
  [
    'a beer wanted too early',
    {
      from: '2027-01-03',
      brews: [aBrew({ notBefore: '2027-01-09', readyBy: '2027-01-09', conditionDays: 15 })],
    },
    'ready-too-late',
    'brews[0].readyBy',
  ],
  [
    'a beer too warm for the tanks',
    { brews: [aBrew({ fermentC: 25 })], yeasts: [aYeast({ maxC: 30 })] },
    'no-tank-holds-temperature',
    'brews[0].fermentC',
  ],
  [
    'a beer too cold for its yeasts',
    { brews: [aBrew({ fermentC: 15 })] },
    'outside-yeasts-temperature',
    'brews[0].fermentC',
  ],
  [
    'one yeast named twice',
    { brews: [aBrew({ yeasts: ['Mill Lane Ale', 'Mill Lane Ale'] })] },
    'doubled-yeast',
    'brews[0].yeasts[1]',
  ],
];

test.each(WARNINGS)('%s is a warning', (_what, part, code, path) => {
  const problems = checkHouse(aHouse({ ...part }));
  expect(problems).toEqual([expect.objectContaining({ code, path, level: 'warning' })]);
});

const SOUND: [string, Part][] = [
  ['a dry hop on the last day in the tank', { brews: [aBrew({ dryHopDay: 13 })] }],
  ['a harvest as the tank is emptied', { brews: [aBrew({ harvestDay: 14 })] }],
  ['a fixed day on the first day', { brews: [aBrew({ brewOn: '2027-01-09' })] }],
  ['packs on their last day', { yeasts: [aYeast({ packsMadeOn: '2026-09-11' }), lager] }],
  ['a batch that just fills a tank', { brews: [aBrew({ volumeL: 30 })] }],
  ['a batch that just covers the bottom', { brews: [aBrew({ volumeL: 12 })] }],
  ['the same name in two lists', { tanks: [aTank({ tank: 'Millrace' })], brews: [aBrew()] }],
  // 9 January + 14 + 13 = 5 February, 28 days after 8 January
  [
    'a beer as late as allowed',
    {
      from: '2027-01-03',
      to: '2027-06-27',
      closed: ['2027-01-03'],
      brews: [aBrew({ notBefore: '2027-01-04', readyBy: '2027-01-09', conditionDays: 14 })],
    },
  ],
];

test.each(SOUND)('%s is no problem', (_what, part) => {
  expect(checkHouse(aHouse(part))).toEqual([]);
});

// from 2027-01-09, 7 days of lead: 2027-01-02
test.each([
  ['the lead time before the season', {}, '2027-01-02'],
  ['not before a jar was harvested', { jars: [aJar({ harvestedOn: '2027-01-04' })] }, '2027-01-04'],
  [
    'not before a jar was measured',
    { jars: [aJar({ measuredOn: '2027-01-05', measuredViability: 0.9 })] },
    '2027-01-05',
  ],
  [
    'not before packs were made',
    { yeasts: [aYeast({ packsMadeOn: '2027-01-06' }), lager] },
    '2027-01-06',
  ],
  ['never after the first day', { jars: [aJar({ harvestedOn: '2027-02-01' })] }, '2027-01-09'],
] satisfies [string, Part, string][])('the planning day is %s', (_what, part, day) => {
  expect(defaultToday(aHouse(part))).toBe(day);
});

test.each([
  ['Harbour Large', 'Harbour Lager'],
  ['gravityCeilng', 'gravityCeiling'],
  ['Volume_L', 'volume_l'],
  ['completely different', null],
])('%s was most likely meant as %s', (word, meant) => {
  expect(nearest(word, ['Harbour Lager', 'Mill Lane Ale', 'gravityCeiling', 'volume_l'])).toBe(
    meant,
  );
});
