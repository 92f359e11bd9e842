// The house's page: every rule and setting stands in one line, days are put together, styles are hints.
import { describe, expect, it } from 'vitest';
import { STYLE_RANGES } from '../../../app/pages/brews/guideline.ts';
import { rangeOf, styleHints } from '../../../app/pages/brews/style-hints.ts';
import { ruleGroups } from '../../../app/pages/house/rule-lines.ts';
import { daysOf, stretchesOf } from '../../../app/pages/house/stretches.ts';
import { currencyFor, emptyHouse } from '../../../app/pages/welcome/empty-house.ts';
import { seasonFileOf } from '../../../app/parts/book/import/files.ts';
import { placeOf } from '../../../app/parts/book/import/placed.ts';
import { parseHouse, RULES, SETTING_KEYS } from '../../../planner/index.ts';

const METRIC = { volume: 'metric', gravity: 'sg', colour: 'ebc' } as const;

describe('rules', () => {
  it('stand in one line each, with their own sentence', () => {
    const lines = ruleGroups('home').flatMap((group) => group.lines);
    expect(lines.map(({ id }) => id).sort()).toEqual(
      [...RULES.map(({ id }) => id), ...SETTING_KEYS].sort(),
    );
    for (const rule of RULES) expect(lines.find(({ id }) => id === rule.id)?.says).toBe(rule.says);
  });

  it('turn to what the kind of house takes as normal', () => {
    const normal = (kind: 'home' | 'nano') =>
      ruleGroups(kind)
        .flatMap((group) => group.lines)
        .find(({ id }) => id === 'maxGeneration')?.dial?.normal;
    expect([normal('home'), normal('nano')]).toEqual([5, 10]);
  });
});

describe('closed days', () => {
  it('are put together and taken apart', () => {
    const days = ['2027-02-28', '2027-03-01', '2027-03-05'];
    expect(stretchesOf(days)).toEqual([
      { from: '2027-02-28', to: '2027-03-01' },
      { from: '2027-03-05', to: '2027-03-05' },
    ]);
    expect(stretchesOf(days).flatMap((stretch) => daysOf(stretch) ?? [])).toEqual(days);
  });

  it.each([
    ['', ''],
    ['2027-03-02', '2027-03-01'],
    ['2027-03-02', '2037-03-02'],
  ])('from %j to %j are none', (from, to) => expect(daysOf({ from, to })).toBeNull());
});

describe('styles', () => {
  it('have ranges in order, and names of their own', () => {
    for (const { og, ibu, srm, style } of STYLE_RANGES)
      for (const [low, high] of [og, ibu, srm]) expect(low, style).toBeLessThan(high);
    expect(new Set(STYLE_RANGES.map(({ style }) => style)).size).toBe(STYLE_RANGES.length);
  });

  it('are known without accents and capitals, and hint only outside', () => {
    expect(rangeOf('KOLSCH')?.style).toBe('Kölsch');
    expect(rangeOf('Something of my own')).toBeNull();
    // BJCP 2021, 5B Kölsch: OG 1.044–1.050, IBU 18–30, SRM 3.5–5 (6.9–9.8 EBC), from memory
    const inside = { style: 'Kölsch', og: 1.047, ibu: 24, ebc: 8 };
    expect(styleHints(inside, METRIC)).toEqual([]);
    const [hint] = styleHints({ ...inside, og: 1.052 }, METRIC);
    expect(hint?.says).toMatch(/its OG is above 1\.044 to 1\.050 \(BJCP 2021/);
  });
});

describe('an empty house', () => {
  it('lacks nothing but tanks, yeasts and brews', () => {
    const { problems } = parseHouse(emptyHouse('2027-01-02', 'Europe/Dublin', 'en-IE'));
    expect(problems.map(({ code }) => code).sort()).toEqual(['no-brews', 'no-tanks', 'no-yeasts']);
    expect([currencyFor('en-GB'), currencyFor('de'), currencyFor('en-US')]).toEqual([
      'GBP',
      'EUR',
      'USD',
    ]);
  });
});

describe('files', () => {
  it('are known by what their names speak of', () => {
    expect(seasonFileOf('My Tanks (2).csv', 'brews.csv')).toBe('tanks.csv');
    expect(seasonFileOf('../x/BREWS.CSV', 'jars.csv')).toBe('brews.csv');
    expect(seasonFileOf('list.csv', 'jars.csv')).toBe('jars.csv');
    expect(seasonFileOf('mine.json', 'jars.csv')).toBe('house.json');
  });

  it('have their problems placed, whatever a column is called', () => {
    expect(placeOf('brews.csv:7:og')).toEqual({ file: 'brews.csv', line: 7, column: 'og' });
    expect(placeOf('brews.csv:1:a:b')).toEqual({ file: 'brews.csv', line: 1, column: 'a:b' });
    expect(placeOf('brews.csv')).toEqual({ file: 'brews.csv', line: null, column: null });
  });
});
