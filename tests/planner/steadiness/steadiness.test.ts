// How often a plan holds: counted by drawing seasons, checked against chances worked out by a statistics library.
import { jStat } from 'jstat';
import { describe, expect, it } from 'vitest';
import { type Plan, plan, steadiness } from '../../../planner/index.ts';
import type { House } from '../../../planner/model/index.ts';
import { aBrew, aSeason, aTank, MONDAY } from '../../builders/season.ts';

const today = '2027-02-01';
const SEASONS = 4000;
/** Nothing goes wrong by itself. */
const CALM = {
  slipShare: 0,
  slipsAgainShare: 0,
  slowShare: 0,
  lostJarShare: 0,
  lateOrderShare: 0,
};

/** Two of the same bitter, the second so late that it wants the first one's yeast; a tank each. */
const pair = (part: Partial<House> = {}): House =>
  aSeason({
    tanks: [aTank(), aTank({ tank: 'Keg B' })],
    brews: [
      aBrew({ notBefore: MONDAY, brewOn: MONDAY }),
      aBrew({ brew: 'Heron', brewOn: '2027-03-22' }),
    ],
    ...part,
  });

function planned(house: House): Plan {
  const made = plan({ house, today, steps: 2000 });
  expect(made.totals.hard).toBe(0);
  return made;
}

/** The same plan, as if its yeast were known for certain. */
function certain(made: Plan): Plan {
  const brews = made.brews.map((brew) => {
    const { likely } = brew.viability;
    return { ...brew, viability: { low: likely, likely, high: likely } };
  });
  const harvests = made.harvests.map((harvest) => {
    const { likely } = harvest.settledMl;
    return { ...harvest, settledMl: { low: likely, likely, high: likely } };
  });
  return { ...made, brews, harvests };
}

/** Whether a share out of SEASONS is what a chance `p` gives, but for one time in 10,000. */
function expectChance(share: number, p: number): void {
  const n = SEASONS;
  const low = jStat.binomial.cdf(Math.round(share * n), n, p);
  const high = 1 - jStat.binomial.cdf(Math.round(share * n) - 1, n, p);
  expect(Math.min(low, high), `${share} is not a chance of ${p}`).toBeGreaterThan(0.00005);
}

const of = (answer: ReturnType<typeof steadiness>, name: string) =>
  answer.brews.find(({ brew }) => brew === name);

describe('steadiness', () => {
  it('holds for ever where nothing goes wrong and all is certain', () => {
    const answer = steadiness(certain(planned(pair())), pair(), { luck: CALM, seasons: 50 });
    expect(answer).toMatchObject({ seasons: 50, keepsDay: 1, keepsSource: 1, allHold: 1 });
    expect(answer.brews.map(({ weakestPoint }) => weakestPoint)).toEqual([null, null]);
  });

  it('slips as often as it is told to, and moves by as many brew days', () => {
    // every day is a brew day: one slip in four moves a day, half of those one day more
    const luck = { ...CALM, slipShare: 0.25, slipsAgainShare: 0.5 };
    const answer = steadiness(certain(planned(pair())), pair(), { luck, seasons: SEASONS });
    for (const name of ['Millrace', 'Heron']) {
      expectChance(of(answer, name)?.keepsDay ?? 0, 0.75);
      expect(of(answer, name)?.meanDaysMoved).toBeCloseTo(0.25 * 1.5, 1);
    }
  });

  it('waits for a tank that is not empty yet', () => {
    // one tank: emptied on day 14, clean on day 15, and the next beer goes in on that day
    const house = pair({ tanks: [aTank()] });
    const brews = house.brews.map((brew, i) =>
      i === 1 ? { ...brew, brewOn: '2027-03-16' } : brew,
    );
    const tight = { ...house, brews };
    const luck = { ...CALM, slowShare: 0.3, slowDaysMost: 2 };
    const made = steadiness(certain(planned(tight)), tight, { luck, seasons: SEASONS });
    expectChance(of(made, 'Millrace')?.keepsDay ?? 0, 1);
    expectChance(of(made, 'Heron')?.keepsDay ?? 0, 0.7);
    // one or two days, as likely as each other
    expect(of(made, 'Heron')?.meanDaysMoved).toBeCloseTo(0.3 * 1.5, 1);
  });

  it('loses a pitch as often as its harvest falls short', () => {
    const made = certain(planned(pair()));
    const source = made.brews[1]?.source;
    if (source?.kind !== 'harvest') throw new Error('Heron is pitched with packs');
    // twice as much is likely as is drawn; an 80 % interval from half to twice that
    const likely = source.drawMl * 2;
    const harvests = made.harvests.map((harvest) => ({
      ...harvest,
      settledMl: { low: likely / 2, likely, high: likely * 2 },
    }));
    const answer = steadiness({ ...made, harvests }, pair(), { luck: CALM, seasons: SEASONS });
    // on the scale of logarithms: sigma = ln 2 / 1.2816, short below 0.9 of half of the likely mL
    const sigma = Math.LN2 / jStat.normal.inv(0.9, 0, 1);
    const short = jStat.normal.cdf(Math.log(0.9 / 2), 0, sigma);
    expectChance(of(answer, 'Heron')?.keepsSource ?? 0, 1 - short);
    expect(of(answer, 'Heron')).toMatchObject({ keepsDay: 1, weakestPoint: 'short' });
  });

  it('loses a pitch as often as its yeast is below the floor, and never with a starter', () => {
    const made = certain(planned(pair()));
    // the home floor is 0.70; 0.70 is the low end here, below which a tenth falls
    const viability = { low: 0.7, likely: 0.8, high: 0.9 };
    const weak = (starter: Plan['brews'][number]['starter']): Plan => ({
      ...made,
      brews: made.brews.map((brew, i) => (i === 1 ? { ...brew, viability, starter } : brew)),
      // more than could ever be wanted
      harvests: made.harvests.map((harvest) => ({
        ...harvest,
        settledMl: { low: 9000, likely: 9000, high: 9000 },
      })),
    });
    const bare = steadiness(weak(null), pair(), { luck: CALM, seasons: SEASONS });
    expectChance(of(bare, 'Heron')?.keepsSource ?? 0, 0.9);
    expect(of(bare, 'Heron')?.weakestPoint).toBe('weak');
    const starter = {
      litres: 2,
      extractG: 200,
      startOn: '2027-03-20',
      growDays: 2,
      chillOn: null,
      initialB: 50,
      finalB: 240,
    };
    const woken = steadiness(weak(starter), pair(), { luck: CALM, seasons: SEASONS });
    expect(of(woken, 'Heron')?.keepsSource).toBe(1);
  });

  it('ages the yeast of a slow beer, which lies warm on it instead of in the cold', () => {
    const made = certain(planned(pair()));
    const at = (share: number): Plan => ({
      ...made,
      brews: made.brews.map((brew, i) =>
        i === 1 ? { ...brew, viability: { low: share, likely: share, high: share } } : brew,
      ),
      harvests: made.harvests.map((harvest) => ({
        ...harvest,
        settledMl: { low: 9000, likely: 9000, high: 9000 },
      })),
    });
    const luck = { ...CALM, slowShare: 0.3, slowDaysMost: 1 };
    // as fast on the beer as the cold store's figure says of 18 °C: 0.0124 / 0.15 = 0.0825 a day, and a day less in
    // the cold at 3 °C gives 0.0146 back; 0.74 × exp(−0.0679) = 0.691 is below the floor of 0.70, 0.76 leads to 0.710
    const warm = pair({ rules: { beerLossShare: 1 } });
    const held = (share: number) =>
      of(steadiness(at(share), warm, { luck, seasons: SEASONS }), 'Heron')?.keepsSource ?? 0;
    expectChance(held(0.74), 0.7);
    expect(held(0.76)).toBe(1);
  });

  it('counts packs neither kept nor lost, and waits for those that come late', () => {
    const made = certain(planned(pair()));
    const arrivesOn = MONDAY;
    const brews = made.brews.map((brew, i) =>
      i === 0 && brew.source.kind === 'fresh'
        ? { ...brew, source: { ...brew.source, arrivesOn } }
        : brew,
    );
    const luck = { ...CALM, lateOrderShare: 0.2, lateOrderDays: 3 };
    const answer = steadiness({ ...made, brews }, pair(), { luck, seasons: SEASONS });
    expect(of(answer, 'Millrace')?.keepsSource).toBeNull();
    expectChance(of(answer, 'Millrace')?.keepsDay ?? 0, 0.8);
    expect(of(answer, 'Millrace')?.meanDaysMoved).toBeCloseTo(0.6, 1);
  });

  it('gives the same answer to the same seed, another to another, and stops when told', () => {
    const made = planned(pair());
    const ask = (seed: number) => steadiness(made, pair(), { seed, seasons: 300 });
    expect(ask(1)).toEqual(ask(1));
    expect(ask(2).brews).not.toEqual(ask(1).brews);
    const cut = steadiness(made, pair(), { seasons: 5000 }, (done) => done >= 200);
    expect(cut.seasons).toBe(200);
    const none = steadiness(made, pair(), {}, () => true);
    expect(none).toMatchObject({ seasons: 0, allHold: null });
    expect(none.brews.every(({ meanDaysMoved }) => meanDaysMoved === 0)).toBe(true);
  });

  it('says that nothing is left where all is brewed', () => {
    const made = planned(pair());
    const brewed = { ...made, brews: made.brews.map((brew) => ({ ...brew, done: true })) };
    expect(steadiness(brewed, pair())).toMatchObject({ brews: [], keepsDay: null, allHold: null });
  });

  it('refuses luck that is none', () => {
    expect(() => steadiness(planned(pair()), pair(), { luck: { slipShare: 1.5 } })).toThrow(
      /slipShare/,
    );
  });
});
