// Lanes of the cold store: never two threads in one at a time, never more lanes than needed.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { assignLanes } from '../../../app/pages/season/lanes.ts';
import type { Strand } from '../../../app/pages/season/weave.ts';

function strand(
  id: string,
  start: number,
  end: number,
  from = 'A',
  to: string | null = 'B',
): Strand {
  return {
    id,
    yeast: 'Yeast',
    from: { kind: 'brew', name: from },
    to,
    start,
    end,
    startShare: 1,
    endShare: 0.8,
    ml: 100,
    jars: 1,
    ofStarter: false,
  };
}

describe('lanes', () => {
  it('needs one lane for threads that follow each other, two for those that overlap', () => {
    const none = new Map();
    expect(assignLanes([strand('a', 0, 5), strand('b', 7, 9)], none).count).toBe(1);
    // two days are kept between threads of one lane: 6 is too soon after 5
    expect(assignLanes([strand('a', 0, 5), strand('b', 6, 9)], none).count).toBe(2);
    expect(assignLanes([], none).count).toBe(0);
  });

  it('lays a thread between two upper beers above one between two lower ones', () => {
    const banks = new Map([
      ['A', 'upper'],
      ['B', 'upper'],
      ['C', 'lower'],
      ['D', 'lower'],
    ] as const);
    const { of } = assignLanes([strand('low', 0, 9, 'C', 'D'), strand('high', 0, 9)], banks);
    expect(of.get('high')).toBeLessThan(of.get('low') ?? -1);
  });

  it('never lets two threads share a lane while both lie there', () => {
    const some = fc.array(
      fc.record({ start: fc.integer({ min: 0, max: 60 }), days: fc.integer({ min: 0, max: 40 }) }),
      { maxLength: 40 },
    );
    fc.assert(
      fc.property(some, (spans) => {
        const strands = spans.map((span, at) =>
          strand(`s${at}`, span.start, span.start + span.days),
        );
        const { of, count } = assignLanes(strands, new Map([['A', 'upper']]));
        expect(of.size).toBe(strands.length);
        for (const [at, one] of strands.entries()) {
          const lane = of.get(one.id) ?? -1;
          expect(lane).toBeGreaterThanOrEqual(0);
          expect(lane).toBeLessThan(count);
          for (const other of strands.slice(at + 1)) {
            if (of.get(other.id) !== lane) continue;
            expect(one.end < other.start || other.end < one.start).toBe(true);
          }
        }
      }),
    );
  });
});
