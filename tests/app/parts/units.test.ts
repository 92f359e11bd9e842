// Units against their definitions, and what is kept against nonsense.
import { describe, expect, it } from 'vitest';
import {
  colour,
  gravity,
  litres,
  millilitres,
  readUnits,
  temperature,
} from '../../../app/parts/units.ts';

const METRIC = { volume: 'metric', gravity: 'sg', colour: 'ebc' } as const;
const US = { volume: 'us', gravity: 'plato', colour: 'srm' } as const;

/** A figure and its unit are kept together by a no-break space. */
const kept = (text: string) => text.replaceAll(' ', '\u00a0');

describe('units', () => {
  it('litres and gallons: 5 US gallons are 18.927 L (NIST Handbook 44, appendix C)', () => {
    expect(litres(18.927, US)).toBe(kept('5 gal'));
    expect(litres(18.927, METRIC)).toBe(kept('18.93 L'));
  });

  it('millilitres and fluid ounces: 8 US fl oz are 236.6 mL (NIST Handbook 44, appendix C)', () => {
    expect(millilitres(236.6, US)).toBe(kept('8 fl oz'));
    expect(millilitres(236.4, METRIC)).toBe(kept('236 mL'));
    expect(millilitres(12_500, METRIC)).toBe(kept('12.5 L'));
  });

  it('gravity: 1.04003 is 10 °P (sucrose table; yeast facts T3)', () => {
    expect(gravity(1.04003, US)).toBe(kept('10.0 °P'));
    expect(gravity(1.04, METRIC)).toBe(kept('1.040'));
  });

  it('colour: an absorbance of 2.0 is SRM 25.4 and EBC 50 (Oxford Companion to Beer)', () => {
    expect(colour(50, US)).toBe(kept('25.4 SRM'));
    expect(colour(50, METRIC)).toBe(kept('50 EBC'));
  });

  it('temperature: water boils at 100 °C, 212 °F (definition of the scales)', () => {
    expect(temperature(100, US)).toBe(kept('212 °F'));
    expect(temperature(3, METRIC)).toBe(kept('3 °C'));
  });
});

describe('what is kept', () => {
  it.each([[null], ['nonsense'], ['[]'], ['{"volume":"firkin"}'], ['null'], ['7']])(
    '%s falls back to the defaults',
    (text) => {
      expect(readUnits(text)).toEqual(METRIC);
    },
  );

  it('keeps each choice by itself', () => {
    expect(readUnits('{"gravity":"plato"}')).toEqual({ ...METRIC, gravity: 'plato' });
  });
});
