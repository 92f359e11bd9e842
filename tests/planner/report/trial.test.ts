// What a moved brew breaks and costs: sums worked out on paper, and the same end as holding it there and unfolding anew.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type House, NO_FACTS, type Plan, plan, replan, trials } from '../../../planner/index.ts';
import { seasons } from '../../builders/random-season.ts';
import { aBrew, aSeason, daysAfter, MONDAY } from '../../builders/season.ts';

const TODAY = '2027-02-01';

const request = (house: House, inForce: Plan) => ({
  house,
  today: TODAY,
  facts: NO_FACTS,
  pins: [],
  inForce,
  seed: 1,
  steps: null,
});

/** Millrace held to the first Monday in Keg A, Quill to day 40 in Keg B: 14 tank days, one of turnaround. */
function twoBrews(): { house: House; made: Plan } {
  const house = aSeason({
    brewDays: ['mon', 'tue', 'wed', 'thu', 'fri', 'sat'],
    brews: [
      aBrew({ brew: 'Millrace', brewOn: MONDAY, priority: 2, readyBy: daysAfter(MONDAY, 30) }),
      aBrew({ brew: 'Quill', notBefore: daysAfter(MONDAY, 2) }),
    ],
  });
  const pins = [
    { brew: 'Millrace', day: MONDAY, tank: 'Keg A' },
    { brew: 'Quill', day: daysAfter(MONDAY, 40), tank: 'Keg B' },
  ];
  return { house, made: plan({ house, today: TODAY, pins, steps: 200 }) };
}

describe('a brew moved and nothing else', () => {
  const { house, made } = twoBrews();
  const tryOut = trials(request(house, made));

  it('costs and breaks nothing where it stands', () => {
    const stays = tryOut({ brew: 'Quill', day: daysAfter(MONDAY, 40), tank: 'Keg B' });
    expect(stays).toMatchObject({ breaks: [], mends: [], lines: [], costMinor: 0, riskMinor: 0 });
  });

  it('says which beer is still in the tank, and until when', () => {
    // Millrace: day 0, emptied on day 14 (Monday 15 March), the keg free on day 15; Quill on day 8 is 7 days too soon
    const into = tryOut({ brew: 'Quill', day: daysAfter(MONDAY, 8), tank: 'Keg A' });
    expect(into.breaks.map(({ rule, amount }) => [rule, amount])).toContainEqual([
      'tank-conflict',
      7,
    ]);
    expect(into.breaks.map(({ says }) => says).join(' ')).toContain('Keg A holds Millrace');
    expect(into.breaks.map(({ says }) => says).join(' ')).toContain('Tue 16 March');
  });

  it('says that a day is no brew day, or comes before the brew may be brewed', () => {
    const sunday = tryOut({ brew: 'Quill', day: daysAfter(MONDAY, 41), tank: 'Keg B' });
    expect(sunday.breaks.map(({ rule }) => rule)).toContain('brew-day');
    const early = tryOut({ brew: 'Quill', day: MONDAY, tank: 'Cone' });
    expect(early.breaks.find(({ rule }) => rule === 'brew-window')?.amount).toBe(2);
  });

  it('sums lateness as the rule does: days late × priority × price of a day', () => {
    const was = made.brews.find((brew) => brew.brew === 'Millrace');
    const now = tryOut({ brew: 'Millrace', day: daysAfter(MONDAY, 15), tank: 'Keg A' });
    expect(was?.daysLate).toBe(0);
    expect(now.daysLate).toBeGreaterThan(0);
    const line = now.lines.find(({ rule }) => rule === 'lateness');
    // docs/rules/lateness.md: 0.40 a day at home; priority 2
    expect(line?.differenceMinor).toBe(now.daysLate * 2 * 40);
  });

  it('refuses what is not there, and days outside the season', () => {
    expect(() => tryOut({ brew: 'Nobody', day: MONDAY, tank: 'Keg A' })).toThrow(RangeError);
    expect(() => tryOut({ brew: 'Quill', day: MONDAY, tank: 'Bath' })).toThrow(RangeError);
    expect(() => tryOut({ brew: 'Quill', day: '2031-01-01', tank: 'Keg A' })).toThrow(RangeError);
    expect(() => trials({ ...request(house, made), inForce: null })).toThrow(RangeError);
  });
});

it('ends where holding the brew there and moving nothing else ends', () => {
  fc.assert(
    fc.property(seasons, fc.nat(), fc.nat(), fc.nat(), (house, pickBrew, pickDay, pickTank) => {
      const made = plan({ house, today: TODAY, steps: 60 });
      const brew = made.brews[pickBrew % Math.max(1, made.brews.length)];
      const tank = house.tanks[pickTank % house.tanks.length];
      // where there is a bottom outlet, the day of the crop is chosen anew with every re-plan
      if (!brew || !tank || house.tanks.some((one) => one.bottomOutlet)) return;
      const day = daysAfter(house.from, pickDay % 90);
      const move = { brew: brew.brew, day, tank: tank.tank };
      const asked = { house, today: TODAY, inForce: made, steps: 0 };
      const stands = replan(asked).changes.before;
      const held = replan({ ...asked, pins: [move] }).changes.before;
      const told = trials(request(house, made))(move);
      expect(told.costMinor).toBe(held.costMinor - stands.costMinor);
      expect(told.cashMinor).toBe(held.cashMinor - stands.cashMinor);
      expect(told.riskMinor).toBe(held.riskMinor - stands.riskMinor);
      const worse = (found: readonly { amount: number }[]) =>
        found.reduce((sum, { amount }) => sum + amount, 0);
      if (held.hard > stands.hard) expect(worse(told.breaks)).toBeGreaterThan(0);
      if (held.hard < stands.hard) expect(worse(told.mends)).toBeGreaterThan(0);
    }),
    { numRuns: 40 },
  );
});
