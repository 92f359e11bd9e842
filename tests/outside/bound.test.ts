// The proven bound between nothing and the optimum: on two hundred small random seasons the exact model (`highs`, see
// optimum.test.ts) finds the least cost, and the bound may never lie above it, nor the plan below. Between them the seasons
// have every rule in play; what the exact model does not know (facts, pins, deliveries over days) is in
// tests/planner/bound. A longer series: `npm run bench -- proof`.
import { describe, expect, it } from 'vitest';
import { squeeze } from './highs/squeeze.ts';

const SEASONS = 200;
const A_BATCH = 20;

describe('bound ≤ optimum ≤ plan', () => {
  let tight = 0;
  for (let first = 0; first < SEASONS; first += A_BATCH) {
    it(`in random seasons ${first} to ${first + A_BATCH - 1}`, () => {
      for (let number = first; number < first + A_BATCH; number++) {
        const { bound, optimum, plan, leftOutAlike } = squeeze(number, 4, 1500);
        expect(bound, `season ${number}: bound above the optimum`).toBeLessThanOrEqual(optimum);
        if (leftOutAlike) {
          expect(plan, `season ${number}: plan below the optimum`).toBeGreaterThanOrEqual(optimum);
        }
        if (bound >= optimum * 0.9) tight++;
      }
    });
  }

  it('is within a tenth of the optimum in half of them at least', () => {
    expect(tight).toBeGreaterThanOrEqual(SEASONS / 2);
  });
});
