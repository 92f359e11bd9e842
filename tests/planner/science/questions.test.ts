// Single questions: answers by hand, and a sentence instead of a number for what cannot be meant.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { QUESTIONS } from '../../../planner/science/questions/index.ts';
import { HOME } from './houses.ts';

function ask(id: string, input: unknown) {
  const question = QUESTIONS.find((q) => q.id === id);
  if (!question) throw new Error(`no question ${id}`);
  return question.ask(input, HOME);
}

/** A figure of an answer by its name. */
function figureOf(id: string, input: unknown, name: string) {
  const { answer, problems } = ask(id, input);
  expect(problems).toEqual([]);
  const found = answer?.figures.find((f) => f.name === name);
  if (!found) throw new Error(`no figure ${name}`);
  return found;
}

const SOUND: Record<string, Record<string, unknown>> = {
  jar: { sedimentMl: 100, storeDays: 7 },
  pitch: { volumeL: 19, og: 1.0484, fermentC: 19, yeast: 'harvested' },
  starter: { haveB: 100, needB: 240, batchL: 20, stirred: true },
  count: { perSquare: [30, 30, 30, 30, 30], square: 'central', dilution: 200 },
  taste: { tasters: 21, right: 12 },
  panel: { discriminators: 0.5 },
  beer: { og: 1.05, fg: 1.01 },
  weigh: { fullG: 520, emptyG: 310, fg: 1.01 },
  units: { value: 5, unit: 'US gal' },
  carry: { drawMl: 1000, fromEbc: 80, fromIbu: 40, batchL: 20, toEbc: 8, toIbu: 25 },
};

describe('answers', () => {
  test('every question answers a sound input with sentences, formula, range and sources', () => {
    for (const q of QUESTIONS) {
      const { answer } = ask(q.id, SOUND[q.id]);
      expect(answer?.says.length, q.id).toBeGreaterThan(0);
      expect(answer?.formula.length, q.id).toBeGreaterThan(20);
      expect(answer?.range.length, q.id).toBeGreaterThan(5);
      expect(answer?.sources.length, q.id).toBeGreaterThan(0);
    }
  });

  test('100 mL after a week at 4 °C: 200 × 0.97 × exp(−0.01596 × 7) = 173 billion alive', () => {
    const cells = figureOf('jar', SOUND.jar, 'living cells');
    expect(cells.value).toBeCloseTo(173.5, 0);
    expect(cells.low).toBeLessThan(cells.value ?? 0);
    expect(cells.high).toBeGreaterThan(cells.value ?? 0);
  });

  test('a count overrides the density, a measured share restarts the curve', () => {
    const counted = { ...SOUND.jar, countedBPerMl: 1 };
    expect(figureOf('jar', counted, 'cells').value).toBe(1);
    const measured = { sedimentMl: 100, storeDays: 0, measuredViability: 0.8 };
    expect(figureOf('jar', measured, 'share alive').value).toBeCloseTo(0.8, 12);
    const both = { ...measured, beerDays: 5 };
    expect(ask('jar', both).problems[0]?.code).toBe('contradiction');
  });

  test('an old, warm, strong jar says what it is beyond and what the house holds of it', () => {
    const { answer } = ask('jar', { sedimentMl: 50, storeDays: 60, storeC: 30, abvPercent: 10 });
    expect(answer?.beyond).toHaveLength(3);
    expect(answer?.says).toHaveLength(4);
  });

  test('19 L at 12 °P and ale temperature: 228 billion; slurry at 2 × 0.97 per mL: 118 mL', () => {
    expect(figureOf('pitch', SOUND.pitch, 'living cells needed').value).toBeCloseTo(228, 0);
    expect(figureOf('pitch', SOUND.pitch, 'settled slurry').value).toBeCloseTo(117.6, 0);
    const packs = { ...SOUND.pitch, yeast: 'fresh', packCellsB: 100 };
    // 0.75 × 228 = 171: two packs.
    expect(figureOf('pitch', packs, 'packs').value).toBe(2);
    expect(ask('pitch', { ...SOUND.pitch, viability: 0 }).answer?.figures).toHaveLength(3);
  });

  test('a starter, none, several steps, or none that could do it', () => {
    expect(figureOf('starter', SOUND.starter, 'starter 1').value).toBeCloseTo(1, 4);
    expect(figureOf('starter', SOUND.starter, 'days before pitching').value).toBe(1);
    expect(figureOf('starter', { ...SOUND.starter, needB: 90 }, 'starter').value).toBe(0);
    expect(figureOf('starter', { ...SOUND.starter, haveB: 10 }, 'starter 2').value).toBeGreaterThan(
      0,
    );
    expect(ask('starter', { ...SOUND.starter, needB: 9000 }).answer?.figures).toEqual([]);
  });

  test('counts: 150 cells in five central squares at 200 are 1,500 million per mL', () => {
    expect(figureOf('count', SOUND.count, 'cells').value).toBeCloseTo(1500, 9);
    const stained = { ...SOUND.count, stained: 20, stainedOf: 200 };
    expect(figureOf('count', stained, 'share alive').value).toBeCloseTo(0.9, 12);
    expect(ask('count', stained).answer?.beyond).toHaveLength(1);
    expect(ask('count', { ...SOUND.count, perSquare: [5] }).answer?.says[1]).toContain(
      'One square',
    );
  });

  test('tasting: 12 of 21 is noticed at 5 %, 11 is not', () => {
    expect(ask('taste', SOUND.taste).answer?.says[0]).toContain('They tasted it');
    expect(ask('taste', { tasters: 21, right: 11 }).answer?.says[0]).toContain('Not shown');
    expect(ask('taste', { tasters: 3, right: 3, level: '1' }).answer?.says[0]).toContain('nothing');
    expect(ask('panel', { discriminators: 0.001 }).answer?.says[0]).toContain('More than');
  });

  test('210 g at 0.6 × 1.010 + 0.4 × 1.11 = 1.05 g per mL are 200 mL', () => {
    expect(figureOf('weigh', SOUND.weigh, 'slurry').value).toBeCloseTo(200, 9);
  });

  // NIST Handbook 44; 68 °F is 20 °C; sucrose table; Oxford Companion to Beer.
  test.each([
    [5, 'US gal', 'in L', 18.927, 3],
    [18.927, 'L', 'in US gal', 5, 3],
    [2, 'hL', 'in L', 200, 9],
    [68, '°F', 'in °C', 20, 9],
    [20, '°C', 'in °F', 68, 9],
    [1.04003, 'SG', 'in °P', 10, 2],
    [10, '°P', 'in SG', 1.04003, 4],
    [50, 'EBC', 'in SRM', 25.4, 9],
    [25.4, 'SRM', 'in EBC', 50, 9],
  ])('%s %s %s', (value, unit, name, expected, digits) => {
    expect(figureOf('units', { value, unit }, name).value).toBeCloseTo(expected, digits);
  });

  test('the old beer shows or does not', () => {
    expect(ask('carry', SOUND.carry).answer?.says[1]).toContain('it will show');
    expect(ask('carry', { ...SOUND.carry, drawMl: 100 }).answer?.says[1]).toContain('not show');
  });
});

describe('a sentence and no number', () => {
  test.each([
    ['a gravity without its point', 'beer', { og: 1048, fg: 1.01 }, '1.048'],
    ['°P for a gravity', 'beer', { og: 12, fg: 1.01 }, '1.048'],
    ['a wort that heavy', 'beer', { og: 1.5, fg: 1.01 }, 'hydrometer'],
    ['a text', 'beer', { og: '1,048', fg: 1.01 }, '1.048'],
    ['a gravity that is none', 'beer', { og: true, fg: 1.01 }, '1.048'],
    ['final above original', 'beer', { og: 1.01, fg: 1.05 }, 'Swap'],
    ['a finished beer for a wort', 'pitch', { ...SOUND.pitch, og: 0.998 }, '1.048'],
    ['water for a wort', 'beer', { og: 1, fg: 1 }, '1.048'],
    ['per cent for a share', 'panel', { discriminators: 40 }, '0.4'],
    ['stained above total', 'count', { ...SOUND.count, stained: 151 }, 'both numbers'],
    ['an empty jar heavier than a full one', 'weigh', { fullG: 300, emptyG: 310 }, 'Swap'],
    ['1048 as a gravity to convert', 'units', { value: 1048, unit: 'SG' }, '1.048'],
    ['12 °P as a gravity to convert', 'units', { value: 12, unit: 'SG' }, '1.048'],
    ['boiling hot °F as °C', 'units', { value: 212, unit: '°C' }, 'unit'],
    ['more right than tasted', 'taste', { tasters: 10, right: 11 }, 'odd glass'],
    ['half a taster', 'taste', { tasters: 10.5, right: 5 }, 'whole number'],
    ['an unknown choice', 'pitch', { ...SOUND.pitch, yeast: 'old' }, 'harvested, fresh'],
    ['no squares', 'count', { ...SOUND.count, perSquare: [] }, '1 to 400'],
    ['a field that is not asked', 'taste', { ...SOUND.taste, tater: 1 }, 'tasters'],
    ['something missing', 'taste', { tasters: 21 }, 'whole number'],
    ['no object', 'taste', 'twelve', 'object'],
    ['nothing', 'taste', null, 'object'],
  ])('%s', (_, id, input, remedy) => {
    const { answer, problems } = ask(id, input);
    expect(answer).toBeNull();
    expect(problems.map((p) => p.remedy).join(' ')).toContain(remedy);
    for (const p of problems) expect(p.message.length).toBeGreaterThan(10);
  });

  test('every problem at once', () => {
    const { problems } = ask('pitch', { volumeL: -1, og: 1048, fermentC: 500, yeast: 'x' });
    expect(problems.map((p) => p.path).sort()).toEqual(['fermentC', 'og', 'volumeL', 'yeast']);
  });

  test('whatever comes in: problems or an answer, never a throw and never a NaN', () => {
    const junk = fc.oneof(
      fc.double(),
      fc.string(),
      fc.constantFrom(null, undefined, true, Infinity, -0, 'low', 'kettle', 1.048),
      fc.array(fc.integer({ min: -5, max: 500 }), { maxLength: 5 }),
    );
    fc.assert(
      fc.property(
        fc
          .constantFrom(...QUESTIONS)
          .chain((q) =>
            fc.tuple(
              fc.constant(q),
              fc.record(Object.fromEntries(Object.keys(q.fields).map((key) => [key, junk]))),
            ),
          ),
        ([q, input]) => {
          const { answer, problems } = q.ask({ ...SOUND[q.id], ...input }, HOME);
          expect((answer === null) !== (problems.length === 0)).toBe(true);
          expect(JSON.stringify(answer ?? problems)).not.toContain('NaN');
        },
      ),
      { numRuns: 500 },
    );
  });

  test('sound numbers at any size give finite figures', () => {
    const value = (field: (typeof QUESTIONS)[number]['fields'][string]) => {
      switch (field.kind) {
        case 'number':
          return field.whole
            ? fc.integer({ min: Math.ceil(field.min), max: Math.floor(field.max) })
            : fc.double({ min: field.min, max: field.max, noNaN: true });
        case 'gravity':
          return fc.double({ min: 0.98, max: 1.2, noNaN: true });
        case 'share':
          return fc.double({ min: 0, max: 1, noNaN: true });
        case 'choice':
          return fc.constantFrom(...field.options);
        case 'yesNo':
          return fc.boolean();
        case 'counts':
          return fc.array(fc.integer({ min: 0, max: 500 }), { minLength: 1, maxLength: 9 });
      }
    };
    for (const q of QUESTIONS) {
      const input = fc.record(
        Object.fromEntries(Object.entries(q.fields).map(([key, field]) => [key, value(field)])),
      );
      fc.assert(
        fc.property(input, (given) => {
          const { answer, problems } = q.ask(given, HOME);
          if (answer === null) {
            for (const p of problems) expect(p.code).toBe('contradiction');
            return;
          }
          for (const f of answer.figures) {
            for (const n of [f.value, f.low, f.high])
              if (n !== null) expect(n).toBeTypeOf('number');
            if (f.low !== null && f.value !== null)
              expect(f.low).toBeLessThanOrEqual(f.value + 1e-9);
          }
          expect(answer.says.join(' ')).not.toMatch(/NaN|Infinity|undefined/);
        }),
        { numRuns: q.id === 'panel' ? 10 : 60 },
      );
    }
  });
});
