// Amounts stay as they were told while the new ones say the same to a jug; what matters to hands shows at once.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Plan } from '../../../planner/index.ts';
import { asTold, compare, tasks } from '../../../planner/index.ts';
import { steadied } from '../../../planner/tasks/steady.ts';
import { aHouse, aPlan, aPlannedBrew, aPlannedHarvest, heron, quill } from '../../builders/plan.ts';

const house = aHouse();
const spare = { ml: 104, for: null, leavesOn: '2027-02-27' };

/** Quill drawn from Millrace, 184 mL at first, with so many mL in all and so much alive. */
function drawing(drawMl: number, alive = 0.86, { settledMl = 288, spareMl = 104 } = {}): Plan {
  const from = { kind: 'harvest', brew: 'Millrace', harvestedOn: '2027-01-23' } as const;
  const child = quill({
    source: { ...from, drawMl, ageDays: 7, jars: 1 },
    viability: { low: alive - 0.08, likely: alive, high: Math.min(1, alive + 0.05) },
  });
  const harvest = aPlannedHarvest({
    settledMl: { low: settledMl - 98, likely: settledMl, high: settledMl + 112 },
    jars: [
      { ml: drawMl, for: 'Quill', leavesOn: '2027-01-30' },
      { ...spare, ml: spareMl },
    ],
  });
  return aPlan({ brews: [aPlannedBrew(), child, heron()], harvests: [harvest] });
}

const told = (before: Plan, after: Plan): Plan => asTold(steadied(after, before, house));
const drawn = (plan: Plan): number => {
  const source = plan.brews.find(({ brew }) => brew === 'Quill')?.source;
  return source === undefined || source.kind === 'fresh' ? Number.NaN : source.drawMl;
};
const source = (plan: Plan) => {
  const quills = plan.brews.find(({ brew }) => brew === 'Quill')?.source;
  if (quills?.kind !== 'harvest') throw new Error('Quill is pitched from a harvest');
  return quills;
};
const alive = (plan: Plan) => plan.brews.find(({ brew }) => brew === 'Quill')?.viability.likely;

describe('an amount', () => {
  // 5 % of 184 mL is 9.2 mL. Common practice, no source.
  test.each([
    [193.1, 184],
    [174.9, 184],
    [193.3, 193.3],
    [174.7, 174.7],
  ])('of 184 mL that is %f now is told as %f', (now, says) => {
    expect(drawn(told(drawing(184), drawing(now)))).toBe(says);
  });

  test('of little is the same within 2 mL', () => {
    expect(drawn(told(drawing(20), drawing(21.9)))).toBe(20);
    expect(drawn(told(drawing(20), drawing(22.1)))).toBe(22.1);
  });

  test('of another source, or with another starter, is told as it is', () => {
    const before = drawing(184);
    const of = { kind: 'jar', jar: 'J1', harvestedOn: '2026-12-20', ageDays: 20 } as const;
    const other = quill({ source: { ...of, drawMl: 185 } });
    const after = aPlan({ brews: [aPlannedBrew(), other, heron()] });
    expect(drawn(told(before, after))).toBe(185);
    const starter = heron().starter;
    const grown = drawing(185);
    const brews = grown.brews.map((brew) => (brew.brew === 'Quill' ? { ...brew, starter } : brew));
    expect(drawn(told(before, { ...grown, brews }))).toBe(185);
  });

  test('is not told larger than planned where the harvest is all but used up', () => {
    // 180 × 1.05 + 2 = 191 mL, and 185 are there
    expect(drawn(told(drawing(184), drawing(180, 0.86, { settledMl: 185 })))).toBe(180);
    // smaller than planned there is always enough
    expect(drawn(told(drawing(180), drawing(184, 0.86, { settledMl: 185 })))).toBe(180);
  });

  test('is not told larger than planned where what was poured before leaves no room', () => {
    // 280 mL were harvested and Heron took 90 of them: 190 are left, and 184 × 1.05 + 2 = 195 mL
    const after = drawing(184, 0.86, { settledMl: 280 });
    const taken = { ...source(after), drawMl: 90 };
    const brews = after.brews.map((one) =>
      one.brew === 'Heron' ? { ...one, source: taken, done: true } : one,
    );
    expect(drawn(told(drawing(192), { ...after, brews }))).toBe(184);
    expect(drawn(told(drawing(192), after))).toBe(192);
  });

  test('that filled two jars is not told for one', () => {
    const before = drawing(192);
    const two = before.brews.map((one) =>
      one.brew === 'Quill' ? { ...one, source: { ...source(before), jars: 2 } } : one,
    );
    // a jar of 190 mL holds 185 and not 192
    expect(drawn(told({ ...before, brews: two }, drawing(185)))).toBe(185);
    expect(drawn(told(before, drawing(185)))).toBe(192);
  });

  test('of a brew that is brewed is what was poured', () => {
    const after = drawing(186);
    const brews = after.brews.map((brew) => ({ ...brew, done: true }));
    expect(drawn(told(drawing(184), { ...after, brews }))).toBe(186);
  });

  test('on the jar is the one of the pitch, and a spare jar has its own', () => {
    const [jar, rest] =
      told(drawing(184), drawing(187, 0.86, { spareMl: 101 })).harvests[0]?.jars ?? [];
    expect(jar?.ml).toBeCloseTo(184, 9);
    expect(rest?.ml).toBe(104);
  });
});

test('a share alive is told anew from three points on', () => {
  expect(alive(told(drawing(184, 0.86), drawing(184, 0.885)))).toBe(0.86);
  expect(alive(told(drawing(184, 0.86), drawing(184, 0.9)))).toBe(0.9);
});

test('no entry of the calendar reads otherwise, and nothing is listed, for a change within the jug', () => {
  const before = drawing(184);
  const after = steadied(drawing(187, 0.87, { settledMl: 292, spareMl: 106 }), before, house);
  expect(tasks(after, house)).toEqual(tasks(before, house));
  const changes = compare(before, after, house);
  expect([...changes.changes, ...changes.smaller]).toEqual([]);
  // without it every task that speaks of the yeast would be another
  expect(tasks(drawing(187), house)).not.toEqual(tasks(before, house));
});

test('small steps do not add up unseen: what is told is never further from the plan than a jug shows', () => {
  const steps = fc.array(fc.double({ min: -0.04, max: 0.04, noNaN: true }), { maxLength: 30 });
  fc.assert(
    fc.property(steps, (shares) => {
      let now = drawing(184, 0.86, { settledMl: 5000 });
      let ml = 184;
      for (const share of shares) {
        ml *= 1 + share;
        now = steadied(drawing(ml, 0.86, { settledMl: 5000 }), now, house);
        const says = drawn(asTold(now));
        expect(Math.abs(says - ml)).toBeLessThanOrEqual(Math.max(2, 0.05 * says) + 1e-9);
        expect(drawn(now)).toBe(ml);
      }
    }),
  );
});
