// The small picture of a pitch's viability: the way between two shares, and labels that keep apart.
import { describe, expect, it } from 'vitest';
import { ageingOf, ageingPaths, apart, shareAt } from '../../../app/pages/pitch/viability.ts';
import { aHouse, aJar, aPlan, aPlannedBrew, quill } from '../../builders/plan.ts';

describe('the way between two shares', () => {
  it('is first order: half of the time is the geometric mean', () => {
    // √(0.96 × 0.54) = 0.72
    expect(shareAt(0.96, 0.54, 0.5)).toBeCloseTo(0.72, 10);
    expect(shareAt(0.96, 0.54, 0)).toBe(0.96);
    expect(shareAt(0.96, 0, 1)).toBe(0);
  });

  it('draws from the first share to the last', () => {
    const ageing = ageingOf(quill(), aPlan(), aHouse());
    expect(ageing).toMatchObject({ begins: 'harvested', days: 7 });
    if (!ageing) return;
    const frame = { left: 0, right: 100, top: 0, bottom: 100 };
    const { line } = ageingPaths(ageing, frame);
    expect(line.startsWith('M0.0 3.0L')).toBe(true); // 97 % alive: 3 px below the top
    expect(line.endsWith('L100.0 14.0')).toBe(true); // 86 % alive
  });
});

describe('where the ageing begins', () => {
  it('begins with the making of a pack', () => {
    expect(ageingOf(aPlannedBrew(), aPlan(), aHouse())).toMatchObject({ begins: 'made', days: 39 });
  });

  it('begins with the count of a jar that was counted, else with today', () => {
    const brew = aPlannedBrew({
      source: { kind: 'jar', jar: 'J1', harvestedOn: '2026-12-20', drawMl: 200, ageDays: 20 },
    });
    expect(ageingOf(brew, aPlan(), aHouse())).toMatchObject({ begins: 'today', days: 5 });
    const counted = aHouse({ jars: [aJar({ measuredViability: 0.9, measuredOn: '2026-12-30' })] });
    expect(ageingOf(brew, aPlan(), counted)).toMatchObject({ begins: 'counted', days: 10 });
  });
});

describe('where it ends', () => {
  it('ends in the beer, or on the day its starter is begun', () => {
    const ageing = ageingOf(aPlannedBrew(), aPlan(), aHouse());
    expect(ageing).toMatchObject({ drawnOn: aPlannedBrew().day, into: 'beer' });
    const starter = {
      litres: 2,
      extractG: 200,
      startOn: '2027-01-06',
      growDays: 2,
      chillOn: null,
      initialB: 100,
      finalB: 200,
    };
    // three days before the brew day: three days younger when it is drawn
    const early = ageingOf(aPlannedBrew({ starter }), aPlan(), aHouse());
    expect(early).toMatchObject({ drawnOn: '2027-01-06', into: 'starter', days: 36 });
  });
});

describe('labels', () => {
  it('move down until they are apart, and no further', () => {
    expect(apart([10, 12, 40], 15)).toEqual([10, 25, 40]);
    expect(apart([10, 12, 14], 15)).toEqual([10, 25, 40]);
  });
});
