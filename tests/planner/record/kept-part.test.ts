// A starter of which a part is kept, lived through in news: begun, failed, divided, told late, lost, pitched.
import { describe, expect, it } from 'vitest';
import {
  foldRecord,
  type News,
  type Plan,
  plan,
  type RecordEntry,
  replan,
  resolveNews,
} from '../../../planner/index.ts';
import { shelfOf } from '../../../planner/record/shelf.ts';
import { TODAY, twoOfOnePack } from '../../builders/kept-starter.ts';
import { checkPlan } from '../../checker/index.ts';

const house = twoOfOnePack(1);
const first = plan({ house, today: TODAY, seed: 1, steps: 6000 });

/** Tells news one after the other, each on its day, and plans anew after each. */
function live(...told: { on: string; news: News }[]) {
  let inForce: Plan = first;
  let entries: RecordEntry[] = [];
  for (const { on, news } of told) {
    const answer = resolveNews(news, foldRecord(entries), house, inForce, on);
    if ('problems' in answer) throw new Error(JSON.stringify(answer.problems));
    entries = [...entries, answer.entry];
    const { facts, pins } = foldRecord(entries);
    inForce = replan({ house, today: on, facts, pins, inForce, seed: 1, steps: 4000 }).plan;
    // the pack in the starter was ordered, which is told elsewhere
    const found = checkPlan(house, inForce, facts, pins);
    const other = found.filter(({ rule }) => rule !== '4 packs-on-hand');
    // on the eve of a fixed day a plan may be broken, and is called so
    if (inForce.totals.hard === 0) expect(other).toEqual([]);
    else expect(other.length).toBeGreaterThan(0);
  }
  const { facts } = foldRecord(entries);
  return { plan: inForce, facts, second: inForce.brews.find(({ brew }) => brew === 'Second') };
}

const done = (on: string, task: string) => ({
  on,
  news: { kind: 'task-done', task, day: on } as const,
});
const begun = done('2027-03-01', 'starter:First');
const brewed = done('2027-03-03', 'brew-pitch:First');

describe('a part kept of a starter, as it is told', () => {
  it('stays the source of the later brew while the starter grows and once it is brewed', () => {
    for (const news of [[begun], [begun, brewed]]) {
      const { plan: now, second } = live(...news);
      expect(second?.source).toMatchObject({ brew: 'First', ofStarter: true });
      // the pack that is in the starter is bought, and no other
      expect(now.totals.packs).toBe(0);
    }
  });

  it('is a jar on the shelf by the same tick as a harvest, generation 0, though ticked a day late', () => {
    for (const on of ['2027-03-03', '2027-03-04']) {
      const { facts, plan: now, second } = live(begun, brewed, done(on, 'harvest:First'));
      expect(facts.harvested).toMatchObject([{ brew: 'First', day: '2027-03-03' }]);
      expect(facts.harvested[0]?.settledMl).toBeCloseTo(142.9, 0);
      expect(second?.source).toMatchObject({ brew: 'First', ofStarter: true });
      expect(second?.generation).toBe(0);
      const shelf = shelfOf({ plan: now, house, facts, today: on });
      expect(shelf.jars).toMatchObject([{ from: 'First', generation: 0, for: 'Second' }]);
    }
  });

  it('is one too where its jar is told after a plan that no longer counted on it', () => {
    const silence = {
      on: '2027-03-04',
      news: { kind: 'slipped', brew: 'Second', to: '2027-03-28' },
    } as const;
    const read = (day: string) =>
      ({ on: day, news: { kind: 'harvested', brew: 'First', day, settledMl: 150 } }) as const;
    const { facts, plan: now } = live(begun, brewed, silence, read('2027-03-05'));
    expect(facts.harvested).toMatchObject([{ brew: 'First', day: '2027-03-03' }]);
    expect(now.harvests).toMatchObject([{ brew: 'First', ofStarter: true, generation: 0 }]);
    // four days after the brew it may be the beer's own
    const later = live(begun, brewed, silence, read('2027-03-07')).facts;
    expect(later.harvested).toMatchObject([{ brew: 'First', day: '2027-03-07' }]);
  });

  it('is lost with a starter that failed', () => {
    const failed = {
      on: '2027-03-02',
      news: { kind: 'starter-failed', brew: 'First', day: '2027-03-02' },
    } as const;
    const { second } = live(begun, failed);
    expect(second?.source.kind).toBe('fresh');
  });

  it('is lost where nobody says that a jar was filled, or says that it was lost', () => {
    const lost = {
      on: '2027-03-05',
      news: { kind: 'harvest-lost', brew: 'First', day: '2027-03-05' },
    } as const;
    const silence = {
      on: '2027-03-04',
      news: { kind: 'slipped', brew: 'Second', to: '2027-03-28' },
    } as const;
    expect(live(begun, brewed, lost).second?.source.kind).toBe('fresh');
    expect(live(begun, brewed, silence).second?.source.kind).toBe('fresh');
  });

  it('is no harvest of a beer: on brew day nothing comes out of one that had no starter', () => {
    const plain = twoOfOnePack(0);
    const inForce = plan({ house: plain, today: TODAY, seed: 1, steps: 2000 });
    const told = resolveNews(
      { kind: 'brewed', brew: 'First', day: '2027-03-03', tank: null, drawnMl: null },
      foldRecord([]),
      plain,
      inForce,
      '2027-03-03',
    );
    if (!('entry' in told)) throw new Error('cannot be told as brewed');
    const answer = resolveNews(
      { kind: 'harvested', brew: 'First', day: '2027-03-03', settledMl: 100 },
      foldRecord([told.entry]),
      plain,
      inForce,
      '2027-03-03',
    );
    expect('problems' in answer && answer.problems[0]?.code).toBe('news.before-the-brew');
  });
});
