// Learning from a house's counts: the default without any, towards the counts with them, and not capsized.
import { describe, expect, test } from 'vitest';
import { learnLoss, type ViabilityCount } from '../../../planner/science/learn-loss.ts';
import { learnDensity, learnedSettings } from '../../../planner/science/learning.ts';
import { HOME, home } from './houses.ts';

/** Jars that died `times` as fast as the default says, counted without error, 200 cells each. */
function jars(times: number, losses = [0.1, 0.2, 0.3, 0.4, 0.5]): ViabilityCount[] {
  return losses.map((loss) => ({
    alive: Math.round(200 * 0.97 * Math.exp(-loss * times)),
    total: 200,
    loss,
  }));
}

describe('rate of loss', () => {
  test('without counts the default, its interval as the setting says, and the settings untouched', () => {
    const none = learnLoss([], HOME);
    expect(none.times.likely).toBeCloseTo(1, 6);
    expect(none.times.low).toBeCloseTo(0.5, 1);
    expect(none.times.high).toBeCloseTo(2, 1);
    expect(none.counts).toBe(0);
    expect(learnedSettings(HOME, { loss: none })).toBe(HOME);
    expect(learnedSettings(HOME, {})).toBe(HOME);
  });

  test.each([0.5, 1, 2])(
    'jars that die %s times as fast move it there, not all the way',
    (times) => {
      const learnt = learnLoss(jars(times), HOME);
      const { likely } = learnt.times;
      expect(Math.abs(Math.log(likely / times))).toBeLessThan(0.25);
      expect(Math.abs(Math.log(likely))).toBeLessThanOrEqual(Math.abs(Math.log(times)) + 0.05);
      expect(learnt.counts).toBe(5);
    },
  );

  test('the interval narrows as counts come in', () => {
    const spreads = [0, 1, 3, 5].map((n) => learnLoss(jars(1).slice(5 - n), HOME).spread);
    const levels = [0, 1, 3, 5].map((n) => {
      const { level } = learnLoss(jars(1).slice(5 - n), HOME);
      return level.high / level.low;
    });
    for (let i = 1; i < 4; i++) {
      expect(spreads[i]).toBeLessThan(spreads[i - 1] ?? 0);
      expect(levels[i]).toBeLessThan(levels[i - 1] ?? 0);
    }
  });

  test('one absurd count among six does not capsize it', () => {
    const sound = learnLoss(jars(1), HOME).times.likely;
    const oneBad = learnLoss([...jars(1), { alive: 10, total: 200, loss: 0.1 }], HOME);
    expect(Math.abs(Math.log(oneBad.times.likely / sound))).toBeLessThan(0.15);
    expect(Number.isFinite(oneBad.spread)).toBe(true);
  });

  test('a day-old jar says little about storage', () => {
    const learnt = learnLoss([{ alive: 150, total: 200, loss: 0.01 }], HOME);
    expect(learnt.times.likely).toBeLessThan(1.5);
  });

  test('all dead, all alive and one cell stay numbers', () => {
    for (const alive of [0, 1]) {
      const learnt = learnLoss([{ alive, total: 1, loss: 0.3 }], HOME);
      expect(Number.isFinite(learnt.times.low + learnt.times.high + learnt.misfit)).toBe(true);
    }
    const dead = learnLoss(Array(20).fill({ alive: 0, total: 1000, loss: 0.01 }), HOME);
    expect(Number.isFinite(dead.times.likely)).toBe(true);
  });

  test('the order of the counts does not matter', () => {
    const one = learnLoss(jars(1.4), HOME);
    const other = learnLoss([...jars(1.4)].reverse(), HOME);
    expect(other.times.likely).toBeCloseTo(one.times.likely, 9);
  });

  test('a house that is sure of its rate learns nothing', () => {
    const sure = home({ storageSpread: 1 });
    expect(learnLoss(jars(2), sure).times.likely).toBeCloseTo(1, 1);
  });

  test('the strain’s settings carry the new rate at every temperature, and its certainty', () => {
    const loss = learnLoss(jars(2), HOME);
    const own = learnedSettings(HOME, { loss });
    expect(own.storageLossAt1C / HOME.storageLossAt1C).toBeCloseTo(loss.times.likely, 12);
    expect(own.storageLossAt25C / HOME.storageLossAt25C).toBeCloseTo(loss.times.likely, 12);
    expect(own.storageSpread).toBe(loss.spread);
    expect(own.storageMisfit).toBe(loss.misfit);
    expect(own.densityHigh).toBe(HOME.densityHigh);
  });
});

describe('density', () => {
  const counted = (...billionPerMl: number[]) =>
    billionPerMl.map((d) => ({ billionPerMl: d, errorShare: 0.1, expected: 2 }));

  test('thin slurry, counted four times', () => {
    const learnt = learnDensity(counted(1.1, 1.2, 1.15, 1.25), HOME);
    expect(2 * learnt.times.likely).toBeGreaterThan(1.1);
    expect(2 * learnt.times.likely).toBeLessThan(1.35);
    expect(learnt.spread).toBeLessThan(HOME.densitySpread);
    const own = learnedSettings(HOME, { density: learnt });
    expect(own.densityMedium).toBeCloseTo(2 * learnt.times.likely, 12);
    expect(own.storageSpread).toBe(HOME.storageSpread);
  });

  test('one slip of a decimal place does not capsize it', () => {
    const sound = learnDensity(counted(1.9, 2, 2.1, 2), HOME).times.likely;
    const slip = learnDensity(counted(1.9, 2, 2.1, 2, 0.2), HOME).times.likely;
    expect(Math.abs(Math.log(slip / sound))).toBeLessThan(0.1);
  });

  test('without counts as wide as the setting says', () => {
    expect(learnDensity([], HOME).spread).toBeCloseTo(HOME.densitySpread, 1);
  });
});
