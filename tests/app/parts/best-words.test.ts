// What the page says of the best plan so far, while the search goes on.
import { describe, expect, it } from 'vitest';
import { bestWords } from '../../../app/parts/best-words.ts';

const COIN = { currency: 'EUR', minorPerMajor: 100 };
const FOUND = {
  stepsDone: 8000,
  steps: 40_000,
  hard: 0,
  leftOut: 0,
  costMinor: 15_000,
  parts: { cashMinor: 4000, workMinor: 6000, riskMinor: 5000 },
  boundMinor: null,
};
const said = (more: object) => bestWords({ progress: { ...FOUND, ...more } }, COIN);

describe('the best plan so far', () => {
  it('is told with its cost by part and the steps', () => {
    expect(said({})).toBe(
      'best so far €150 in all (cash €40, work €60, risk €50); 8,000 of 40,000 steps.',
    );
  });

  it('is told with its cost alone where the parts are not known', () => {
    expect(said({ parts: null })).toBe('best so far €150 in all; 8,000 of 40,000 steps.');
  });

  it('says how far from the best possible it can be as soon as that is known, rounded up', () => {
    // 150 against 70: 80 ÷ 70 = 114.3 %
    expect(said({ boundMinor: 7000 })).toContain(', at most 115 % above the best possible; ');
    expect(said({ boundMinor: 15_000 })).toContain(', the best possible; ');
  });

  it('says nothing of the best possible where a rule is broken or the bound is not above nothing', () => {
    expect(said({ boundMinor: 7000, hard: 2 })).not.toContain('best possible');
    expect(said({ boundMinor: 0 })).not.toContain('best possible');
  });

  it('says what is amiss', () => {
    expect(said({ hard: 1, leftOut: 2 })).toContain(', rules still broken, 2 brews left out; ');
  });

  it('is being laid out before there is one', () => {
    expect(bestWords({ progress: null }, COIN)).toBe('laying out a first plan.');
  });
});
