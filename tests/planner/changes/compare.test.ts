// Between two plans only what differs is told, each change with a sentence and a reason taken from the plans.
import { describe, expect, it } from 'vitest';
import { type Change, Changes, compare, type Plan } from '../../../planner/index.ts';
import {
  aHouse,
  aPlan,
  aPlannedBrew,
  aPlannedHarvest,
  heron,
  quill,
  someTotals,
} from '../../builders/plan.ts';

const house = aHouse();
function changes(after: Plan, before: Plan = aPlan()): Change[] {
  const found = compare(before, after, house);
  expect(Changes.safeParse(found).error).toBeUndefined();
  for (const change of found.changes) {
    expect(change.says).toMatch(/^[A-Z].*\.$/);
    expect(change.reason).toMatch(/^[A-Z].*[.?]$/);
  }
  return found.changes;
}
const kinds = (found: Change[]) => found.map((change) => `${change.kind} ${change.brew}`);
const withBrews = (...brews: Plan['brews']) => aPlan({ brews });

describe('what differs', () => {
  it('is nothing between a plan and itself', () => {
    expect(compare(aPlan(), aPlan(), house)).toEqual({
      changes: [],
      smaller: [],
      tasksAdded: [],
      tasksGone: [],
      tasksMoved: [],
      before: someTotals(),
      after: someTotals(),
    });
  });

  it('is not the reasons, the money or a viability', () => {
    const other = quill({ why: ['Otherwise worded.'], riskMinor: 999, pitchedB: 267 });
    expect(changes(withBrews(aPlannedBrew(), other, heron()))).toEqual([]);
  });

  it('names a moved day with both days', () => {
    const [change] = changes(withBrews(aPlannedBrew(), quill(), heron({ day: '2027-02-07' })));
    expect(change).toMatchObject({
      kind: 'moved',
      brew: 'Heron',
      before: '2027-02-06',
      after: '2027-02-07',
      day: '2027-02-07',
      says: 'Heron moves from Sat 6 February to Sun 7 February.',
    });
  });

  it('names tank, yeast, source and starter', () => {
    const jar = {
      kind: 'jar' as const,
      jar: 'J1',
      harvestedOn: '2026-12-20',
      drawMl: 150,
      ageDays: 30,
    };
    const found = changes(
      withBrews(
        aPlannedBrew({ tank: 'Keg B' }),
        quill({ source: jar }),
        heron({ yeast: 'Mill Lane Ale', starter: null }),
      ),
    );
    expect(kinds(found)).toEqual(['tank Millrace', 'source Quill', 'yeast Heron', 'starter Heron']);
    expect(found[1]?.says).toBe('Quill takes 150 mL of jar J1 instead of 184 mL out of Millrace.');
    expect(found[3]?.says).toBe('Heron needs no starter any more.');
  });

  it.each([
    // 184 mL planned: 5 % is 9.2 mL
    [193, []],
    [194, ['amount Quill']],
    [175, []],
    [174, ['amount Quill']],
  ])('takes a draw of %i mL instead of 184 for %j', (drawMl, expected) => {
    const { source } = quill();
    if (source.kind !== 'harvest') throw new Error('the builder changed');
    const found = changes(
      withBrews(aPlannedBrew(), quill({ source: { ...source, drawMl } }), heron()),
    );
    expect(kinds(found)).toEqual(expected);
  });

  it('counts packs, not cells', () => {
    const { source } = heron();
    if (source.kind !== 'fresh') throw new Error('the builder changed');
    const two = heron({ source: { ...source, packs: 2 } });
    const [change] = changes(withBrews(aPlannedBrew(), quill(), two));
    expect(change?.says).toBe(
      'Heron takes 2 packs of Harbour Lager instead of 1 pack of Harbour Lager.',
    );
  });

  it('names brews that come and go', () => {
    const before = withBrews(aPlannedBrew(), quill());
    const after = aPlan({
      brews: [aPlannedBrew(), heron()],
      leftOut: [
        {
          brew: 'Quill',
          priority: 1,
          blockedBy: [{ rule: 'some-rule', says: 'Cone is taken until Sat 6 March' }],
          nearestDay: null,
          wayOut: 'Let Quill be ready a week later.',
        },
      ],
    });
    const found = changes(after, before);
    expect(kinds(found)).toEqual(['dropped Quill', 'added Heron']);
    expect(found[0]?.reason).toBe(
      'Cone is taken until Sat 6 March. Let Quill be ready a week later.',
    );
    expect(found[1]?.reason).toBe('It is new in the season.');
    // and back: the brew that was left out finds room
    expect(changes(before, after).find((one) => one.brew === 'Quill')?.reason).toBe(
      'There is room for it now.',
    );
  });
});

describe('the reason', () => {
  const movedQuill = (more = {}) =>
    quill({ day: '2027-02-06', emptiedOn: '2027-02-20', dryHopOn: '2027-02-14', ...more });
  const reasonFor = (after: Plan, before?: Plan, kind = 'moved', brew = 'Quill') =>
    changes(after, before).find((one) => one.kind === kind && one.brew === brew)?.reason;

  it('is what the plan in force breaks once the news is applied, in its own words', () => {
    const before = aPlan({
      broken: [
        {
          rule: 'some-rule',
          subject: 'Quill',
          amount: 7,
          unit: 'days',
          says: 'Quill on 2027-01-30 is 7 days before 2027-02-06, its first possible day.',
          remedy: '',
        },
      ],
    });
    expect(reasonFor(withBrews(aPlannedBrew(), movedQuill(), heron()), before)).toBe(
      'Quill on 2027-01-30 is 7 days before 2027-02-06, its first possible day.',
    );
  });

  it('is the slip that was told, or what the old plan breaks after the news', () => {
    const after = withBrews(aPlannedBrew(), movedQuill(), heron());
    const told = (since: Parameters<typeof compare>[3]) =>
      compare(aPlan(), after, house, since).changes[0]?.reason;
    const facts = {
      brewed: [],
      harvested: [],
      notBefore: [{ brew: 'Quill', day: '2027-02-01' }],
      begun: [],
      bought: [],
      goneJars: [],
      measured: [],
      passed: [],
      lostPacks: [],
    };
    expect(told({ facts })).toBe('It slipped: not before Mon 1 February.');
    const finding = { rule: 'some-rule', amount: 1, unit: 'days', remedy: '' };
    // about the beer that its yeast comes from
    expect(told({ broken: [{ ...finding, subject: 'Millrace', says: 'Millrace is late.' }] })).toBe(
      'Millrace is late.',
    );
    expect(told({ broken: [{ ...finding, subject: 'Heron', says: 'Heron is late.' }] })).not.toBe(
      'Heron is late.',
    );
  });

  it('is the pin', () => {
    const pins = { brew: 'Quill', day: '2027-02-06', tank: null, source: null };
    expect(reasonFor(withBrews(aPlannedBrew(), movedQuill({ pins }), heron()))).toBe(
      'It is pinned to Sat 6 February.',
    );
  });

  it('is the day on which it was brewed', () => {
    expect(reasonFor(withBrews(aPlannedBrew(), movedQuill({ done: true }), heron()))).toBe(
      'It was brewed on Sat 6 February.',
    );
  });

  it('is the yeast that comes too late', () => {
    const after = aPlan({
      brews: [aPlannedBrew(), movedQuill(), heron()],
      harvests: [aPlannedHarvest({ day: '2027-01-30' })], // usable on the 31st, a day after the old brew day
    });
    expect(reasonFor(after)).toBe(
      'The yeast of Millrace can be pitched from Sun 31 January now, too late for Sat 30 January.',
    );
  });

  it('is the tank that another beer holds', () => {
    const late = aPlannedBrew({ tank: 'Cone', tankFreeOn: '2027-02-04' });
    expect(reasonFor(withBrews(late, movedQuill(), heron()))).toBe(
      'Cone is taken by Millrace until Thu 4 February.',
    );
  });

  it('is the beer that takes its brew day', () => {
    const early = heron({ day: '2027-01-30' });
    expect(reasonFor(withBrews(aPlannedBrew(), early, movedQuill()))).toBe(
      'Heron is brewed on Sat 30 January now.',
    );
  });

  it('is lateness saved, else money saved', () => {
    const before = withBrews(aPlannedBrew(), quill({ daysLate: 3 }), heron());
    const earlier = movedQuill({ daysLate: 1 });
    expect(reasonFor(withBrews(aPlannedBrew(), earlier, heron()), before)).toBe(
      'It is ready 2 days less late.',
    );
    const cheaper = aPlan({
      brews: [aPlannedBrew(), movedQuill(), heron()],
      totals: someTotals({ costMinor: 5630 }),
    });
    expect(reasonFor(cheaper)).toBe(
      'With the changes together the rest of the season costs €3.70 less.',
    );
  });

  it('of another source is the harvest that is short', () => {
    const jar = {
      kind: 'jar' as const,
      jar: 'J1',
      harvestedOn: '2026-12-20',
      drawMl: 150,
      ageDays: 30,
    };
    const after = aPlan({
      brews: [aPlannedBrew(), quill({ source: jar }), heron()],
      harvests: [
        aPlannedHarvest({
          done: true,
          settledMl: { low: 90, likely: 100, high: 110 },
          jars: [{ ml: 100, for: null, leavesOn: '2027-02-27' }],
        }),
      ],
    });
    expect(reasonFor(after, undefined, 'source')).toBe(
      'The harvest of Millrace holds 100 mL, and 184 mL were to be drawn from it.',
    );
  });

  it('of another source is the jar that is gone', () => {
    const jar = {
      kind: 'jar' as const,
      jar: 'J1',
      harvestedOn: '2026-12-20',
      drawMl: 150,
      ageDays: 20,
    };
    const before = withBrews(aPlannedBrew({ source: jar }));
    const after = aPlan({ brews: [aPlannedBrew()], shelf: [] });
    expect(reasonFor(after, before, 'source', 'Millrace')).toBe('Jar J1 is gone.');
  });

  it.each([
    // 7 days old on 30 January; the home limit is 35 days
    ['2027-02-27', false], // 7 + 28 = 35
    ['2027-02-28', true], // 36
  ])('of another source on %s is the age of the old one: %s', (day, expected) => {
    const packs = aPlannedBrew().source;
    const reason = reasonFor(
      withBrews(aPlannedBrew(), heron(), quill({ day, source: packs, why: ['Fresh it is.'] })),
      undefined,
      'source',
    );
    expect(reason).toBe(
      expected
        ? 'On Sun 28 February the yeast it was to have would be 36 days old, and 35 is the limit.'
        : 'Fresh it is.',
    );
  });

  it('of more packs is the starter that is not made', () => {
    const { source } = heron();
    if (source.kind !== 'fresh') throw new Error('the builder changed');
    const after = withBrews(
      aPlannedBrew(),
      quill(),
      heron({ starter: null, source: { ...source, packs: 2 } }),
    );
    expect(reasonFor(after, undefined, 'amount', 'Heron')).toBe(
      'It is pitched without a starter now.',
    );
  });

  it('of a larger draw is the age of the yeast', () => {
    const { source } = quill();
    if (source.kind !== 'harvest') throw new Error('the builder changed');
    const older = movedQuill({ source: { ...source, ageDays: 14, drawMl: 205 } });
    expect(reasonFor(withBrews(aPlannedBrew(), older, heron()), undefined, 'amount')).toBe(
      'The yeast is 7 days older when it is pitched, so more of it is dead.',
    );
  });
});

describe('tasks', () => {
  it('that come, go and move are named by their keys', () => {
    const moved = heron({ day: '2027-02-07', starter: null, emptiedOn: '2027-02-27' });
    const found = compare(aPlan(), withBrews(aPlannedBrew(), quill(), moved), house);
    expect(found.tasksGone.sort()).toEqual([
      'chill-decant:Heron:1',
      'chill-decant:Heron:2',
      'starter:Heron',
    ]);
    expect(found.tasksAdded).toEqual(['take-out:Heron']);
    expect(found.tasksMoved).toEqual([
      { key: 'brew-pitch:Heron', before: '2027-02-06', after: '2027-02-07' },
    ]);
  });

  it('that prepared a brew are not gone when it is brewed, only past', () => {
    const brewed = heron({ done: true, starter: null });
    const found = compare(aPlan(), withBrews(aPlannedBrew(), quill(), brewed), house);
    expect(found.tasksGone).toEqual([]);
  });

  it('of one slipped brew are its own and no others', () => {
    const slipped = heron({ day: '2027-02-13', emptiedOn: '2027-03-06' });
    const found = compare(aPlan(), withBrews(aPlannedBrew(), quill(), slipped), house);
    expect(found.tasksAdded).toEqual([]);
    expect(found.tasksGone).toEqual([]);
    for (const { key } of found.tasksMoved) expect(key).toContain('Heron');
  });
});
