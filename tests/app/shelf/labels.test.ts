// Labels on sheets, what an address finds, and the thread of a jar, worked out by hand.
import { createElement } from 'react';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { findOn } from '../../../app/pages/shelf/find.ts';
import { goesWords, ribbonOf, shareWords } from '../../../app/pages/shelf/jar-words.ts';
import { LABEL_CAUTION, LabelOf } from '../../../app/pages/shelf/label.tsx';
import { PAPERS, sheetsOf } from '../../../app/pages/shelf/paper.ts';
import { hashOf, routeOf } from '../../../app/router.ts';
import { shelfOf } from '../../../planner/index.ts';
import { NO_FACTS } from '../../../planner/model/facts.ts';
import { aHouse, aJar, aPlan, aPlannedHarvest } from '../../builders/plan.ts';

const house = aHouse({ jars: [aJar(), aJar({ jar: 'labels' }), aJar({ jar: 'a/b' })] });
const shelf = shelfOf({ house, plan: aPlan(), facts: NO_FACTS, today: '2027-01-04' });

describe('sheetsOf', () => {
  const [a4, , small] = PAPERS;
  const labels = Array.from({ length: 25 }, (_, at) => at);

  it.each([
    [0, [24, 1]],
    [23, [24, 24]],
    [99, [24, 24]], // never a whole sheet of blanks
    [Number.NaN, [24, 1]],
    [-3, [24, 1]],
  ])('skips %s places of the first sheet', (usedUp, counts) => {
    if (small === undefined) throw new Error('no such paper');
    const sheets = sheetsOf(labels, small, usedUp);
    expect(sheets.map((sheet) => sheet.length)).toEqual(counts);
    expect(sheets.flat().flatMap(({ label }) => (label === null ? [] : [label]))).toEqual(labels);
  });

  it('makes no sheet of nothing', () => {
    expect(a4 && sheetsOf([], a4, 0)).toEqual([]);
  });
});

describe('findOn', () => {
  it('reads a code in any letters, and a jar by its name', () => {
    expect(findOn(shelf, 'code', 'jek2')?.jar?.code).toBe('JEK2');
    expect(findOn(shelf, 'code', 'J1')?.culture.of).toEqual({ kind: 'jar', jar: 'J1' });
    expect(findOn(shelf, 'harvest', 'Millrace')?.jars.map(({ code }) => code)).toEqual([
      'JEK2',
      'JEKY',
    ]);
    expect(findOn(shelf, 'code', 'ZZZZ')).toBeNull();
    expect(findOn(shelf, 'beer', 'Nobody')).toBeNull();
  });

  it('has an address for a jar of any name', () => {
    for (const name of ['J1', 'labels', 'a/b', 'jar', '50 %']) {
      const route = { page: 'shelf', view: 'jar', name } as const;
      expect(routeOf(hashOf(route))).toEqual(route);
    }
    expect(routeOf('#/shelf/labels')).toEqual({ page: 'shelf', view: 'labels', name: '' });
    expect(routeOf('#/shelf/JEK2')).toEqual({ page: 'shelf', view: 'code', name: 'JEK2' });
    expect(routeOf('#/shelf/a/b')).toEqual({ page: 'lost', hash: '#/shelf/a/b' });
  });
});

describe('ribbonOf', () => {
  const jar = {
    ...(shelf.toCome[0] ?? shelf.jars[0]),
    alive: { on: '2027-01-27', share: { low: 0.9, likely: 0.9, high: 0.9 } },
  } as (typeof shelf.jars)[number];

  it('runs from the filling to the pitch, with today between, on the scale to the last day of use', () => {
    // filled 23 January, use-by 27 February: 35 days; today after 4, pitched after 7
    const ribbon = ribbonOf(jar, '2027-01-27', 350, 9);
    expect(ribbon?.todayX).toBeCloseTo(40);
    expect(ribbon?.enters).toBeCloseTo(70);
    expect(ribbon?.body).not.toContain('NaN');
  });

  it('is none where nothing is known of what lives', () => {
    expect(ribbonOf({ ...jar, alive: null }, '2027-01-27', 350, 9)).toBeNull();
  });

  it('says a share with what it may be', () => {
    expect(shareWords({ low: 0.78, likely: 0.86, high: 0.91 })).toBe(
      '86\u00a0% (78\u201391\u00a0%)',
    );
  });
});

describe('LabelOf', () => {
  const first = shelf.toCome[0];
  const drawn = (base: string | null) =>
    first ? renderToStaticMarkup(createElement(LabelOf, { jar: first, letter: 'M', base })) : '';

  it('carries all that is to be known a year later, blanks and the caution', () => {
    const text = drawn(null).replace(/<[^>]+>/g, ' ');
    for (const word of ['JEK2', 'Mill Lane Ale', 'generation 1', 'out of Millrace', 'for Quill'])
      expect(text).toContain(word);
    expect(text).toContain('use by 27 February 2027');
    expect(text).toContain(LABEL_CAUTION);
    expect(drawn(null).match(/class="blank"/g)).toHaveLength(2);
  });

  it('has a code for a phone only where a phone can reach the server', () => {
    expect(drawn(null)).not.toContain('<svg');
    expect(drawn('https://brewhouse.example')).toContain('opens the page of jar JEK2');
  });
});

describe('a jar of reserve', () => {
  const harvest = aPlannedHarvest();
  const [first] = harvest.jars;
  if (first === undefined) throw new Error('the builder makes no jar');
  const reserve = { ...first, for: null, untilPassed: 'Rook' };
  const plan = aPlan({ harvests: [{ ...harvest, jars: [reserve] }] });
  const [jar] = shelfOf({ house, plan, facts: NO_FACTS, today: '2027-01-04' }).toCome;
  if (jar === undefined) throw new Error('no jar is to come');

  it('says on the shelf and on its label which beer has to be passed before it may go', () => {
    expect(goesWords(jar)).toBe(`in reserve for ${jar.yeast} until Rook is tasted and passed`);
    const label = renderToStaticMarkup(createElement(LabelOf, { jar, letter: 'M', base: null }));
    expect(label).toContain('reserve until Rook is passed');
    expect(label).not.toContain('spare');
  });

  it('stays a spare one where no beer is waited for', () => {
    const { untilPassed: _, ...spare } = jar;
    expect(goesWords(spare)).toBe('spare');
  });
});
