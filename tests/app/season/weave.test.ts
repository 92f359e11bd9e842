// From a plan to threads: bundles of jars, kept jars, jars of the shelf, and where lines end.
import { describe, expect, it } from 'vitest';
import { weave } from '../../../app/pages/season/weave.ts';
import { dayNumber } from '../../../app/parts/days.ts';
import { aHouse, aJar, aPlan, aPlannedHarvest } from '../../builders/plan.ts';

describe('threads', () => {
  it('bundles the jars of one harvest that are kept for the same brew', () => {
    const harvest = aPlannedHarvest({
      jars: [
        { ml: 500, for: 'Quill', leavesOn: '2027-01-30' },
        { ml: 120, for: 'Quill', leavesOn: '2027-01-30' },
      ],
    });
    const { strands } = weave(aPlan({ harvests: [harvest] }), aHouse());
    const quill = strands.filter((strand) => strand.to === 'Quill');
    expect(quill).toHaveLength(1);
    expect(quill[0]).toMatchObject({ ml: 620, jars: 2 });
  });

  it('draws what is kept of a starter from the brew day of its beer, and says so', () => {
    const { ofStarter: _, ...harvest } = aPlannedHarvest();
    const [first] = aPlan().brews;
    const kept = { ...harvest, day: first?.day ?? '', ofStarter: true as const };
    const woven = weave(aPlan({ harvests: [kept] }), aHouse());
    const strand = woven.strands.find(({ from }) => from.name === kept.brew);
    expect(strand?.ofStarter).toBe(true);
    expect(strand?.start).toBe(woven.bars.find(({ brew }) => brew === kept.brew)?.day);
    expect(weave(aPlan(), aHouse()).strands.some((one) => one.ofStarter)).toBe(false);
  });

  it('lets a kept jar die at the rate at which the plan sees the strain die', () => {
    const kept = weave(aPlan(), aHouse()).strands.find(
      (strand) => strand.from.name === 'Millrace' && strand.to === null,
    );
    // Quill draws after 7 days at 86 % from 97 %: ln(0.97 / 0.86) / 7 = 0.01719 a day;
    // 35 days: 0.97 × exp(−0.6017) = 0.5314
    expect(kept?.endShare).toBeCloseTo(0.5314, 3);
  });

  it('begins a jar of the shelf when it was harvested, but not before the picture', () => {
    const early = weave(aPlan(), aHouse());
    // J1 was harvested on 20 December, the picture begins on 1 January
    expect(early.strands.find((strand) => strand.from.name === 'J1')?.start).toBe(early.firstDay);
  });

  it('lets a jar that nobody takes die at the same rate, from today on', () => {
    const j1 = weave(aPlan(), aHouse()).strands.find((strand) => strand.from.name === 'J1');
    // 74 % on 4 January, kept until the 24th: 0.74 × exp(−0.01719 × 20) = 0.5247
    expect(j1?.startShare).toBe(0.74);
    expect(j1?.endShare).toBeCloseTo(0.5247, 3);
  });

  it('leaves suspect jars out', () => {
    const plan = aPlan({
      shelf: [
        {
          jar: 'J1',
          yeast: 'Mill Lane Ale',
          state: 'suspect',
          discardBy: '2027-01-04',
          usedFor: null,
          kept: false,
          leavesOn: '2027-01-04',
          viabilityToday: { low: 0.5, likely: 0.6, high: 0.7 },
          cellsB: null,
        },
      ],
    });
    const { strands } = weave(plan, aHouse({ jars: [aJar({ state: 'suspect' })] }));
    expect(strands.some((strand) => strand.from.kind === 'jar')).toBe(false);
  });
});

describe('the rest', () => {
  it('numbers the ends of lines in the order of their days and keeps the reason', () => {
    const { ends } = weave(aPlan(), aHouse());
    expect(ends.map((end) => [end.note, end.brew, end.says])).toEqual([
      [1, 'Quill', 'No later brew wants this yeast.'],
      [2, 'Heron', 'No later brew wants this yeast.'],
    ]);
  });

  it('spans the season and everything in it', () => {
    const woven = weave(aPlan(), aHouse());
    expect(woven.firstDay).toBeLessThan(dayNumber('2027-01-04'));
    expect(woven.lastDay).toBeGreaterThan(dayNumber('2027-06-27'));
  });

  it('tells a beer that breaks a rule, in the words of the finding', () => {
    const finding = {
      rule: 'fixed-day',
      subject: 'Quill',
      amount: 2,
      unit: 'days',
      says: 'Quill is two days off its fixed day.',
      remedy: 'Free the day.',
    };
    const { bars } = weave(aPlan({ broken: [finding], status: 'broken' }), aHouse());
    expect(bars.filter((bar) => bar.broken.length > 0).map((bar) => bar.brew)).toEqual(['Quill']);
    expect(bars.find((bar) => bar.brew === 'Quill')?.broken).toEqual([finding.says]);
  });

  it('marks a day as fixed by the season or by a pin', () => {
    const house = aHouse();
    const brews = house.brews.map((brew) =>
      brew.brew === 'Heron' ? { ...brew, brewOn: '2027-02-06' } : brew,
    );
    const { bars } = weave(aPlan(), { ...house, brews });
    expect(bars.filter((bar) => bar.fixed).map((bar) => bar.brew)).toEqual(['Heron']);
  });

  it('shows a tank that only the plan knows', () => {
    const house = aHouse({ tanks: aHouse().tanks.filter((tank) => tank.tank !== 'Cone') });
    expect(weave(aPlan(), house).tanks).toEqual(['Keg A', 'Keg B', 'Cone']);
  });
});
