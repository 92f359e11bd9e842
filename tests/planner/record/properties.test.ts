// What holds for any run of news: the same record gives the same state, undoing leads back, facts agree with each other.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  Facts,
  foldRecord,
  type News,
  Pin,
  type RecordEntry,
  type RecordState,
  resolveNews,
  tasks,
} from '../../../planner/index.ts';
import { aHouse, aPlan, aPlannedBrew, daysAfter, heron, quill } from '../../builders/plan.ts';
import { decisions, drawNews } from '../../builders/random-news.ts';

const house = aHouse();
const jar = {
  kind: 'jar' as const,
  jar: 'J1',
  harvestedOn: '2026-12-20',
  drawMl: 100,
  ageDays: 48,
};
const plan = aPlan({ brews: [aPlannedBrew(), quill(), heron({ source: jar, generation: 3 })] });
/** The same with every brew brewed: so that news is drawn about beers, too. */
const allBrewed = { ...plan, brews: plan.brews.map((one) => ({ ...one, done: true })) };
const TODAY = '2027-02-20';

const brew = fc.constantFrom('Millrace', 'Quill', 'Heron', 'Nobody');
const day = fc.integer({ min: -5, max: 50 }).map((days) => daysAfter('2027-01-09', days));
const taskKeys = tasks(plan, house).map((task) => task.key);

const news: fc.Arbitrary<News> = fc.oneof(
  {
    weight: 8,
    arbitrary: fc
      .tuple(decisions, fc.nat({ max: 9 }), fc.boolean())
      .map(([draw, n, lived]) =>
        drawNews({ house, plan: lived ? allBrewed : plan, today: TODAY }, draw, n),
      ),
  },
  {
    weight: 4,
    arbitrary: fc.record({
      kind: fc.constant('brewed' as const),
      brew,
      day,
      tank: fc.constantFrom(null, 'Keg B'),
      drawnMl: fc.option(fc.integer({ min: 0, max: 300 })),
    }),
  },
  {
    weight: 3,
    arbitrary: fc.record({
      kind: fc.constant('harvested' as const),
      brew,
      day,
      settledMl: fc.integer({ min: 0, max: 500 }),
    }),
  },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant('slipped' as const), brew, to: day }) },
  {
    weight: 1,
    arbitrary: fc.record({
      kind: fc.constant('jar-gone' as const),
      jar: fc.constantFrom('J1', 'J2'),
      day,
    }),
  },
  {
    weight: 4,
    arbitrary: fc.record({
      kind: fc.constant('task-done' as const),
      task: fc.constantFrom(...taskKeys),
      day,
    }),
  },
  {
    weight: 4,
    arbitrary: fc.record({
      kind: fc.constant('pinned' as const),
      brew,
      day: fc.option(fc.integer({ min: 0, max: 20 }).map((days) => daysAfter(TODAY, days))),
      tank: fc.constantFrom(null, 'Keg A', 'Cone'),
      source: fc.constant(null),
    }),
  },
  {
    weight: 3,
    arbitrary: fc.record({ kind: fc.constant('unpinned' as const), brew, what: fc.constant(null) }),
  },
  {
    weight: 3,
    arbitrary: fc.record({
      kind: fc.constant('undone' as const),
      entry: fc.integer({ min: 1, max: 12 }),
    }),
  },
);
/** A season as it may well go; news thrown about at random seldom gets this far on its own. */
const COURSE: readonly News[] = [
  { kind: 'brewed', brew: 'Millrace', day: '2027-01-09', tank: null, drawnMl: null },
  { kind: 'harvested', brew: 'Millrace', day: '2027-01-23', settledMl: 288 },
  { kind: 'harvested', brew: 'Millrace', day: '2027-01-24', settledMl: 250 },
  { kind: 'task-done', task: 'package:Millrace', day: '2027-01-23' },
  { kind: 'brewed', brew: 'Quill', day: '2027-01-30', tank: null, drawnMl: 150 },
  { kind: 'task-done', task: 'discard-by:Millrace:S1', day: '2027-02-20' },
];
const someNews = fc
  .tuple(
    fc.integer({ min: 0, max: COURSE.length }),
    fc.array(fc.tuple(news, fc.integer({ min: 0, max: 30 })), { maxLength: 25 }),
  )
  .map(([far, others]) => {
    const told = COURSE.slice(0, far);
    for (const [one, at] of others) told.splice(Math.min(at, told.length), 0, one);
    return told;
  });

function tell(entries: readonly RecordEntry[], one: News): RecordEntry[] | null {
  const answer = resolveNews(one, foldRecord(entries), house, plan, TODAY);
  return 'entry' in answer ? [...entries, answer.entry] : null;
}

/** Tells all of it; what is refused is left out. */
function record(told: readonly News[]): RecordEntry[] {
  return told.reduce<RecordEntry[]>((entries, one) => tell(entries, one) ?? entries, []);
}

/** What a record says, without its own lines. */
function says({ facts, pins, done, overlay }: RecordState) {
  return { facts, pins, done, overlay };
}

const runs = { numRuns: 80 };

describe('any run of news', () => {
  it('is taken often enough for the rest to mean something', () => {
    const kinds = new Map<string, number>();
    for (const told of fc.sample(someNews, { numRuns: 200, seed: 7 })) {
      for (const entry of record(told)) {
        kinds.set(entry.fact.kind, (kinds.get(entry.fact.kind) ?? 0) + 1);
      }
    }
    for (const kind of [
      'brewed',
      'harvested',
      'read',
      'emptied',
      'discarded',
      'jar-gone',
      'ticked',
      'pinned',
      'unpinned',
      'undone',
      'slow',
      'gravity',
      'hopped',
      'passed',
      'marked',
      'measured',
      'brew-added',
      'brew-dropped',
      'resized',
      'jar-found',
      'tank-out',
      'day-closed',
      'bought',
      'source-forbidden',
    ]) {
      expect(kinds.get(kind) ?? 0, kind).toBeGreaterThan(0);
    }
  });

  it('gives the same state when it is read again, also from stored text', () => {
    fc.assert(
      fc.property(someNews, (told) => {
        const entries = record(told);
        const stored = JSON.parse(JSON.stringify(entries)) as RecordEntry[];
        expect(foldRecord(stored)).toEqual(foldRecord(entries));
      }),
      runs,
    );
  });

  it('is numbered one after the other and never changes an earlier entry', () => {
    fc.assert(
      fc.property(someNews, (told) => {
        let entries: RecordEntry[] = [];
        for (const one of told) {
          const before = JSON.stringify(entries);
          const after = tell(entries, one);
          expect(JSON.stringify(entries)).toBe(before);
          if (after === null) continue;
          expect(JSON.stringify(after.slice(0, -1))).toBe(before);
          expect(after.at(-1)?.no).toBe(after.length);
          entries = after;
        }
      }),
      runs,
    );
  });

  it('comes back to the state before when the last piece is taken back', () => {
    fc.assert(
      fc.property(someNews, news, (told, last) => {
        const entries = record(told);
        const after = tell(entries, last);
        if (after === null) return;
        const undone = tell(after, { kind: 'undone', entry: after.length });
        expect(undone).not.toBeNull();
        expect(says(foldRecord(undone ?? []))).toEqual(says(foldRecord(entries)));
      }),
      runs,
    );
  });

  it('comes back to nothing when everything is taken back, the last first', () => {
    fc.assert(
      fc.property(someNews, (told) => {
        let entries = record(told);
        for (let no = entries.length; no >= 1; no--) {
          // Entries that were taken back stay taken back: the entries that took them back are undone before them.
          const after = tell(entries, { kind: 'undone', entry: no });
          expect(after, `entry ${no}`).not.toBeNull();
          entries = after ?? entries;
        }
        expect(says(foldRecord(entries))).toEqual(says(foldRecord([])));
      }),
      runs,
    );
  });

  it('leaves facts that agree with each other', () => {
    fc.assert(
      fc.property(someNews, (told) => {
        const { facts, pins } = foldRecord(record(told));
        expect(Facts.safeParse(facts).success).toBe(true);
        for (const pin of pins) expect(Pin.safeParse(pin).success).toBe(true);
        const brewed = new Map(facts.brewed.map((fact) => [fact.brew, fact]));
        expect(brewed.size).toBe(facts.brewed.length);
        for (const harvest of facts.harvested) {
          const from = brewed.get(harvest.brew);
          expect(from).toBeDefined();
          expect(harvest.day > (from?.day ?? '')).toBe(true);
          const drawn = facts.brewed
            .filter((fact) => fact.source.kind === 'harvest' && fact.source.brew === harvest.brew)
            .reduce(
              (sum, fact) => sum + (fact.source.kind === 'harvest' ? fact.source.drawMl : 0),
              0,
            );
          expect(drawn).toBeLessThanOrEqual(harvest.settledMl + 0.5);
        }
        for (const fact of facts.brewed) {
          expect(fact.day <= TODAY).toBe(true);
          if (fact.source.kind === 'harvest') {
            const { brew: parent } = fact.source;
            const harvest = facts.harvested.find((one) => one.brew === parent);
            expect(harvest !== undefined && harvest.day <= fact.day).toBe(true);
          }
        }
        for (const held of [...pins, ...facts.notBefore]) expect(brewed.has(held.brew)).toBe(false);
      }),
      runs,
    );
  });
});
