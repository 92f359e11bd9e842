// Cells of the book: what is typed, in which units, and what is stored.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cellText, cellValue, joined, split, valueWords } from '../../../app/parts/book/cells.ts';
import { FIELDS, type FieldSpec } from '../../../app/parts/book/fields.ts';
import { headSpec } from '../../../app/parts/book/head-fields.ts';
import { Brew, House, Jar, SETTING_KEYS, Tank, Yeast } from '../../../planner/index.ts';

const METRIC = { volume: 'metric', gravity: 'sg', colour: 'ebc' } as const;
const US = { volume: 'us', gravity: 'plato', colour: 'srm' } as const;
const spec = (field: string): FieldSpec => {
  const found = FIELDS.brews.find((one) => one.field === field);
  if (!found) throw new Error(field);
  return found;
};

describe('a cell', () => {
  it.each([
    ['og', '1.048', 1.048],
    ['og', '1048', 1048],
    ['og', '1,048', '1,048'],
    ['volumeL', '', ''],
    ['harvestDay', '', null],
    ['souring', '', null],
    ['readyBy', '', null],
    ['fades', 'no', false],
    ['fades', '', null],
    ['additions', 'fruit | a\\|b', ['fruit', 'a|b']],
  ])('%s, written %j, is %j', (field, text, value) => {
    expect(cellValue(spec(field), text, METRIC)).toEqual(value);
  });

  it('is read in other units and written back in litres, SG and EBC', () => {
    // 1 US gallon = 3.785411784 L, by definition (NIST Handbook 44, appendix C)
    expect(cellValue(spec('volumeL'), '5', US)).toBe(18.927);
    expect(cellText(spec('volumeL'), 18.927, US)).toBe('5');
    // 12 °P = 1.0484 (Plato's table)
    expect(cellValue(spec('og'), '12', US)).toBe(1.0484);
    // 10 SRM = 10 × 25 / 12.7 EBC
    expect(cellValue(spec('ebc'), '10', US)).toBe(19.685);
    expect(cellText(spec('fermentC'), 20, US)).toBe('68');
  });

  it('says an empty one by what it means', () => {
    expect(valueWords(spec('harvestDay'), null, METRIC, 'EUR')).toBe('by kind of yeast');
    expect(valueWords(spec('volumeL'), 20, METRIC, 'EUR')).toBe('20\u00a0L');
  });

  it('splits what it joined, whatever the names', () => {
    const name = fc
      .string({ minLength: 1 })
      .map((s) => s.trim())
      .filter((s) => s !== '');
    fc.assert(
      fc.property(fc.array(name), (names) => {
        expect(split(joined(names))).toEqual(names);
      }),
    );
  });
});

describe('every field of the model has a line on the page', () => {
  it.each([
    ['brews', Brew],
    ['tanks', Tank],
    ['yeasts', Yeast],
    ['jars', Jar],
  ] as const)('%s', (list, schema) => {
    expect(FIELDS[list].map(({ field }) => field).sort()).toEqual(Object.keys(schema.shape).sort());
  });

  it('of the house itself', () => {
    const lists = ['tanks', 'yeasts', 'jars', 'brews', 'counts', 'rules', 'weights'];
    const parts = { store: House.shape.store, starterGear: House.shape.starterGear };
    for (const key of Object.keys(House.shape)) {
      if (lists.includes(key)) continue;
      const part = parts[key as keyof typeof parts];
      const places = part ? Object.keys(part.shape).map((inner) => `${key}.${inner}`) : [key];
      for (const place of places) expect(headSpec(place), place).not.toBeNull();
    }
    for (const key of SETTING_KEYS) expect(headSpec(`rules.${key}`), key).not.toBeNull();
  });
});
