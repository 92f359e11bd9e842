// What is written on the page and what is sent: units against their definitions, and nothing bent on the way.
import { describe, expect, it } from 'vitest';
import {
  figureText,
  firstText,
  givenOf,
  inUnits,
  rewritten,
} from '../../../app/pages/reckoner/amounts.ts';
import type { AskedField } from '../../../app/queries/questions.ts';

const METRIC = { volume: 'metric', gravity: 'sg', colour: 'ebc' } as const;
const US = { volume: 'us', gravity: 'plato', colour: 'srm' } as const;

const field = (part: Partial<AskedField>): AskedField => ({
  name: 'x',
  kind: 'number',
  label: 'X',
  says: '',
  unit: null,
  min: null,
  max: null,
  whole: false,
  most: null,
  options: [],
  bound: '',
  required: true,
  fallback: null,
  ...part,
});

const sent = (part: Partial<AskedField>, text: string, units: typeof METRIC | typeof US) =>
  givenOf([field(part)], { x: text }, units).x;

describe('what is sent', () => {
  // NIST Handbook 44: a US gallon is 3.785411784 L, of 128 fluid ounces; 68 °F are 20 °C.
  it('litres, millilitres and °C, whatever was read', () => {
    expect(sent({ unit: 'L' }, '5', US)).toBeCloseTo(18.927, 3);
    expect(sent({ unit: 'mL' }, '8', US)).toBeCloseTo(236.588, 3);
    expect(sent({ unit: '°C' }, '68', US)).toBeCloseTo(20, 9);
    expect(sent({ unit: 'L' }, '5', METRIC)).toBe(5);
  });

  // 10 °P is 1.04003 (sucrose table); 25.4 SRM are 50 EBC (Oxford Companion to Beer).
  it('gravities as SG and colours as EBC', () => {
    expect(sent({ kind: 'gravity' }, '10', US)).toBeCloseTo(1.04003, 5);
    expect(sent({ unit: 'EBC' }, '25.4', US)).toBeCloseTo(50, 9);
    expect(sent({ kind: 'gravity' }, '1.048', METRIC)).toBe(1.048);
  });

  it('what cannot be meant goes as it stands, so that the server says what is wrong with it', () => {
    expect(sent({ kind: 'gravity' }, '1048', METRIC)).toBe(1048);
    expect(sent({ kind: 'gravity' }, '1048', US)).toBe(1048);
    expect(sent({ unit: 'L' }, '20,5', METRIC)).toBe('20,5');
    expect(sent({ unit: 'L' }, 'a lot', METRIC)).toBe('a lot');
  });

  it('nothing where nothing is written, lists of counts, yes and no', () => {
    expect(givenOf([field({})], { x: ' ' }, METRIC)).toEqual({});
    expect(sent({ kind: 'counts' }, '31, 28 35;x', METRIC)).toEqual([31, 28, 35, 'x']);
    expect(sent({ kind: 'yesNo' }, 'yes', METRIC)).toBe(true);
    expect(sent({ kind: 'yesNo' }, 'no', METRIC)).toBe(false);
  });
});

describe('what is shown', () => {
  it('begins with the fallback in the chosen units', () => {
    expect(firstText(field({ unit: '°C', fallback: 4 }), METRIC)).toBe('4');
    expect(firstText(field({ unit: '°C', fallback: 4 }), US)).toBe('39.2');
    expect(firstText(field({ kind: 'gravity', fallback: 1.01 }), METRIC)).toBe('1.010');
    expect(firstText(field({ kind: 'choice', options: ['a', 'b'] }), METRIC)).toBe('a');
    expect(firstText(field({}), METRIC)).toBe('');
  });

  it('is rewritten when the units change, and only then', () => {
    expect(rewritten('68', field({ unit: '°C' }), US, METRIC)).toBe('20');
    expect(rewritten('20.05', field({ unit: 'L' }), METRIC, METRIC)).toBe('20.05');
    expect(rewritten('a lot', field({ unit: 'L' }), METRIC, US)).toBe('a lot');
    expect(rewritten('7', field({ unit: 'days' }), METRIC, US)).toBe('7');
  });

  it('figures and sentences', () => {
    expect(figureText(0.86, 'share', METRIC)).toBe('86\u00a0%');
    expect(figureText(236.588, 'mL', US)).toBe('8\u00a0fl\u00a0oz');
    expect(inUnits('That is 118 mL of settled slurry.', US)).toBe(
      'That is 3.99\u00a0fl\u00a0oz of settled slurry.',
    );
    expect(inUnits('Colour +1.27 EBC: it will not show.', US)).toBe(
      'Colour +0.645\u00a0SRM: it will not show.',
    );
    expect(inUnits('30 °C is warmer than any measurement', US)).toContain('86\u00a0°F');
    expect(inUnits('1,500 million cells per mL, and 2 Lots', US)).toBe(
      '1,500 million cells per mL, and 2 Lots',
    );
    expect(inUnits('118 mL', METRIC)).toBe('118 mL');
  });
});
