// The reserve: what is left of a harvest that feeds a brew, at most a jar, until the first of its beers is passed.
// Expected: issue text 'keep a jar of the previous generation until a beer pitched from the next has been tasted and
// passed'; a fifth of a jar as the least is common practice, no source.
import { describe, expect, it } from 'vitest';
import { publishHarvests } from '../../../planner/report/stock.ts';
import { type Around, aBrew, aSeason, lay, TWELVE_P, UNDYING } from '../../builders/season.ts';

const brews = ['First', 'A', 'B'].map((brew) => aBrew({ brew, og: TWELVE_P }));
const from = { harvest: 'First' };
const First = { on: '2027-03-01' };
const A = { on: '2027-03-20', tank: 'Keg B', from };
const B = { on: '2027-03-16', tank: 'Cone', from };

type Way = {
  rules?: Record<string, number>;
  jarMl?: number;
  maxJars?: number;
  laid?: Parameters<typeof lay>[1];
  around?: Around;
};

/**
 * First of 1 March (200 B from a pack, so 4 × 200 × 0.65 = 520 B, at 1.68 B/mL 309.5 mL) is harvested on the 15th; A of
 * 20 March draws 240 B, 142.9 mL, and is ready 14 + 13 days on, on 16 April; B of the 16th on 12 April.
 */
function season({ rules = {}, jarMl = 500, maxJars = 12, laid = { First, A }, around = {} }: Way) {
  const house = aSeason({
    rules: { ...UNDYING, reserve: 1, ...rules },
    store: { tempC: 3, maxJars, jarMl, settleDays: 1 },
    brews,
  });
  const laidOut = lay(house, laid, around);
  const jars = publishHarvests(laidOut.t).flatMap((harvest) => harvest.jars);
  return { ...laidOut, reserve: jars.filter((jar) => jar.untilPassed !== undefined) };
}

const fact = (brew: string, day: string, source = {}) => ({
  brew,
  day,
  tank: brew === 'A' ? 'Keg B' : 'Keg A',
  yeast: 'Mill Lane Ale',
  source: { kind: 'fresh' as const, packs: 1, ...source },
  generation: brew === 'A' ? 1 : 0,
  pitchedB: 200,
  emptiedOn: brew === 'A' ? '2027-04-03' : '2027-03-15',
});

const brewed = {
  brewed: [
    fact('First', '2027-03-01'),
    {
      ...fact('A', '2027-03-20'),
      source: { kind: 'harvest' as const, brew: 'First', drawMl: 143 },
    },
  ],
  harvested: [{ brew: 'First', day: '2027-03-15', settledMl: 310 }],
};

describe('what is kept', () => {
  it.each([
    ['what is left, less than a jar', {}, 166.7],
    ['at most a jar', { jarMl: 160 }, 160],
    ['the rest of two draws is less than a fifth of a jar', { laid: { First, A, B } }, null],
    ['and more than a fifth of a small one', { jarMl: 100, laid: { First, A, B } }, 23.8],
    ['nothing where nobody asked', { rules: { reserve: 0 } }, null],
    ['nothing of a harvest that feeds nobody', { laid: { First } }, null],
    [
      'nothing of a harvest that is only kept for the next season',
      { laid: { First }, around: { keep: { 'Mill Lane Ale': from } } },
      null,
    ],
    ['nothing where nothing may be stored', { rules: { maxStorageDays: 0 } }, null],
  ])('%s', (_what, way: Way, ml) => {
    const { reserve } = season(way);
    expect(reserve).toHaveLength(ml === null ? 0 : 1);
    if (ml !== null) expect(reserve[0]?.ml).toBeCloseTo(ml, 0);
  });
});

describe('until when', () => {
  it.each([
    ['the day on which its beer is ready', {}, '2027-04-16', 'A'],
    ['or its own last day', { rules: { maxStorageDays: 30 } }, '2027-04-14', 'A'],
    ['the first of two beers', { jarMl: 100, laid: { First, A, B } }, '2027-04-12', 'B'],
    ['not passed yet', { around: { today: '2027-04-17', facts: brewed } }, '2027-04-18', 'A'],
  ])('%s', (_what, way: Way, leavesOn, untilPassed) => {
    expect(season(way).reserve[0]).toMatchObject({ leavesOn, untilPassed, for: null });
  });

  it('goes with the news that the beer was passed', () => {
    const passed = [{ brew: 'A', day: '2027-04-17' }];
    const today = '2027-04-17';
    expect(season({ around: { today, facts: brewed } }).reserve).toHaveLength(1);
    expect(season({ around: { today, facts: { ...brewed, passed } } }).reserve).toEqual([]);
  });

  it('is no reserve where the harvest itself is suspect, and one where it is on watch', () => {
    const told = (state: 'suspect' | 'watch') => ({
      ...brewed,
      harvested: brewed.harvested.map((one) => ({ ...one, state })),
    });
    const today = '2027-04-10';
    expect(season({ around: { today, facts: told('suspect') } }).reserve).toEqual([]);
    expect(season({ around: { today, facts: told('watch') } }).reserve).toHaveLength(1);
  });
});

describe('what it counts for', () => {
  it('is a jar on the shelf', () => {
    // the draw of A and the reserve from 15 March on
    expect(season({ maxJars: 1 }).sum('shelf-space')).toBe(1);
    expect(season({ maxJars: 2 }).sum('shelf-space')).toBe(0);
    expect(season({ maxJars: 1, rules: { reserve: 0 } }).sum('shelf-space')).toBe(0);
  });

  it('is named where the shelf is too full for it', () => {
    const says = (rules = {}) => season({ maxJars: 1, rules }).found('shelf-space')[0]?.says ?? '';
    expect(says()).toContain('1 jar more than the 1');
    expect(says()).toContain('In reserve then: yeast of First.');
    // without one there is room
    expect(says({ reserve: 0 })).toBe('');
  });

  it('is a jar to fill, 5 minutes at 0.08, until the harvest is taken', () => {
    expect(season({}).sum('jar-work')).toBe(80);
    expect(season({ rules: { reserve: 0 } }).sum('jar-work')).toBe(40);
    expect(season({ around: { today: '2027-04-10', facts: brewed } }).sum('jar-work')).toBe(0);
  });

  it('takes nothing from a draw and is no draw', () => {
    const { t, source, sum } = season({});
    expect(t.draws[source(from)]).toBe(1);
    expect(sum('draw-limit')).toBe(0);
  });
});
