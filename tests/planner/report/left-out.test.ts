// What is told of a brew that is left out: each way out is gone, and the season planned again without that help.
import { describe, expect, it } from 'vitest';
import { plan } from '../../../planner/index.ts';
import type { Brew, House, Plan } from '../../../planner/model/index.ts';
import { aBrew, aSeason, aTank, daysAfter, MONDAY } from '../../builders/season.ts';

const today = '2027-02-01';
const planned = (house: House): Plan => plan({ house, today, steps: 2000 });

/** Two beers wanted on one day, with one tank; the second is ready too late to be brewed at all. */
const crowded = (part: Partial<House> = {}): House =>
  aSeason({
    tanks: [aTank()],
    brews: ['Sloe', 'Bullace'].map((brew) =>
      aBrew({ brew, additions: ['fruit'], notBefore: MONDAY, readyBy: '2027-03-14' }),
    ),
    ...part,
  });

const withBrew = (house: House, name: string, part: Partial<Brew>): House => ({
  ...house,
  brews: house.brews.map((row) => (row.brew === name ? { ...row, ...part } : row)),
});

/** What is told of the one brew that is left out. */
function told(house: House): Plan['leftOut'][number] {
  const { leftOut } = planned(house);
  expect(leftOut).toHaveLength(1);
  const [out] = leftOut;
  if (!out) throw new Error('none is left out');
  return out;
}

describe('a brew left out', () => {
  it('is freed by the days that are told, and by not one fewer', () => {
    const out = told(crowded());
    // the first is brewed on 1 March; the tank is free on the 16th, the beer ready 27 days later, on 12 April.
    // Late by at most 28 days, it has to be wanted on 15 March: a day later than 14 March.
    expect(out.nearestDay).toBe('2027-03-16');
    expect(out.wayOut).toContain(
      `Wanted 1 day later, ${out.brew} could be brewed on Tue 16 March.`,
    );
    const later = withBrew(crowded(), out.brew, { readyBy: '2027-03-15' });
    expect(planned(later).leftOut).toEqual([]);
  });

  it('counts the days from where it is wanted', () => {
    const house = withBrew(crowded(), 'Sloe', { readyBy: '2027-03-08', priority: 5 });
    // Sloe matters more and is brewed first; Bullace wanted on 10 March lacks 5 days to the 15th
    const out = told(withBrew(house, 'Bullace', { readyBy: '2027-03-10' }));
    expect(out).toMatchObject({ brew: 'Bullace', nearestDay: '2027-03-16' });
    expect(out.wayOut).toContain('Wanted 5 days later');
    for (const [days, left] of [
      [5, 0],
      [4, 1],
    ] as const) {
      const readyBy = daysAfter('2027-03-10', days);
      expect(planned(withBrew(house, 'Bullace', { readyBy })).leftOut, readyBy).toHaveLength(left);
    }
  });

  it('is freed by the second tank that is told', () => {
    const out = told(crowded());
    expect(out.wayOut).toContain(
      'Or: Find a second tank like Keg A: it could be brewed on Mon 1 March.',
    );
    const tanks = [aTank(), aTank({ tank: 'Keg B' })];
    expect(planned(crowded({ tanks })).leftOut).toEqual([]);
  });

  it('is freed by the strain that is told, where its own cannot ferment it', () => {
    // 10 °C: too cold for the ale, within 8 to 14 °C of the lager
    const cold = aSeason({ brews: [aBrew({ fermentC: 10 })] });
    const out = told(cold);
    expect(out.blockedBy.map(({ rule }) => rule)).toContain('strain-temperature');
    expect(out.wayOut).toContain('Take Harbour Lager for it, too');
    const yeasts = ['Mill Lane Ale', 'Harbour Lager'];
    expect(planned(withBrew(cold, 'Millrace', { yeasts })).leftOut).toEqual([]);
  });

  it('is freed by the tank that is told, where none of the house takes it', () => {
    const large = aSeason({ brews: [aBrew({ volumeL: 200 })] });
    const out = told(large);
    expect(out.wayOut).toContain(
      'Find a tank that takes 200 L and holds 18 °C, or change the batch',
    );
    const tanks = [...large.tanks, aTank({ tank: 'Vat', minFillL: 150, maxFillL: 220 })];
    expect(planned({ ...large, tanks }).leftOut).toEqual([]);
  });

  it('is freed by the second turn that is told, where the only day is full', () => {
    // two beers that can both be brewed on one day only
    const one = { notBefore: MONDAY, readyBy: '2027-02-28', conditionDays: 13 };
    const house = aSeason({
      to: MONDAY,
      brewsPerDay: 1,
      brews: ['Sloe', 'Bullace'].map((brew) => aBrew({ brew, additions: ['fruit'], ...one })),
    });
    const out = told(house);
    expect(out.wayOut).toContain(
      'Brew 2 turns of the kettle in a day: it could be brewed on Mon 1 March.',
    );
    expect(planned({ ...house, brewsPerDay: 2 }).leftOut).toEqual([]);
  });
});

it('a season of which much is left out is answered all the same', () => {
  const brews = Array.from({ length: 30 }, (_, i) =>
    aBrew({ brew: `Beer ${i + 1}`, notBefore: MONDAY, readyBy: MONDAY }),
  );
  const { leftOut } = planned(aSeason({ tanks: [aTank()], brews }));
  expect(leftOut.length).toBeGreaterThan(20);
  for (const out of leftOut) {
    expect(out.blockedBy.length, out.brew).toBeGreaterThan(0);
    expect(out.wayOut, out.brew).not.toBe('');
  }
});
