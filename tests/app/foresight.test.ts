// Hindsight as it is drawn: where figures stand, in which order, and what is said of each.
import { describe, expect, it } from 'vitest';
import { byStrain, heightOf, outcomeWords, rulesOf } from '../../app/pages/worth/foresight.ts';
import type { Outcome } from '../../planner/index.ts';

const anOutcome = (part: Partial<Outcome> = {}): Outcome => ({
  figure: 'settledMl',
  yeast: 'Ale',
  low: 100,
  likely: 200,
  high: 300,
  entry: 1,
  of: { kind: 'harvest', brew: 'Millrace' },
  day: '2027-01-23',
  happened: 250,
  within: true,
  ...part,
});

describe('hindsight as it is drawn', () => {
  it('stands an amount by how many times the likely one it is, held at the edges', () => {
    const at = (value: number) => heightOf(value, anOutcome());
    expect(at(200)).toBeCloseTo(0.5, 10);
    // twice is half of the way to four times, on a scale on which each doubling is as far
    expect(at(400)).toBeCloseTo(0.75, 10);
    expect([at(50), at(800), at(0), at(9000)]).toEqual([0, 1, 0, 1]);
  });

  it('stands a share as it is', () => {
    expect(heightOf(0.7, anOutcome({ figure: 'viability', likely: 0.9 }))).toBe(0.7);
    expect(rulesOf('viability').map(({ height }) => height)).toEqual([0, 0.5, 1]);
  });

  it('keeps the figures of a strain together and leaves out what had no interval', () => {
    const outcomes = [
      anOutcome({ entry: 1 }),
      anOutcome({ entry: 2, yeast: 'Lager' }),
      anOutcome({ entry: 3 }),
      anOutcome({ entry: 4, figure: 'fg', low: null, high: null, within: null }),
    ];
    const drawn = byStrain({ outcomes }, 'settledMl');
    expect(drawn.map(({ entry }) => entry)).toEqual([1, 3, 2]);
  });

  it('says what came and what was expected', () => {
    expect(outcomeWords(anOutcome())).toBe(
      'Millrace: 250\u00a0mL, expected 100\u00a0mL to 300\u00a0mL, within',
    );
    const gravity = anOutcome({ figure: 'fg', low: null, high: null, likely: 1.012, within: null });
    expect(outcomeWords({ ...gravity, happened: 1.014 })).toBe('Millrace: 1.014, planned 1.012');
  });
});
