// News to entries and entries to facts: what each kind of news comes to, and what is refused with which way out.
import { describe, expect, it } from 'vitest';
import {
  foldRecord,
  type House,
  News,
  type Plan,
  Problem,
  RecordEntry,
  resolveNews,
} from '../../../planner/index.ts';
import { aHouse, aJar, aPlan, aPlannedBrew, heron, quill } from '../../builders/plan.ts';

const LATER = '2027-06-01';

/** A record to which news is told one after the other. */
function aRecord(setting: { house?: House; plan?: Plan; today?: string } = {}) {
  const { house = aHouse(), plan = aPlan(), today = LATER } = setting;
  let entries: RecordEntry[] = [];
  const tell = (news: unknown, on = today) =>
    resolveNews(News.parse(news), foldRecord(entries), house, plan, on);
  return {
    /** Tells news that must be taken. */
    take(news: unknown, on?: string) {
      const answer = tell(news, on);
      if (!('entry' in answer)) throw new Error(answer.problems.map((p) => p.message).join(' '));
      RecordEntry.parse(answer.entry);
      entries = [...entries, answer.entry];
      return this;
    },
    /** Tells news that must be refused, and gives the problems. */
    refuse(news: unknown, on?: string): Problem[] {
      const before = JSON.stringify(entries);
      const answer = tell(news, on);
      expect(JSON.stringify(entries)).toBe(before);
      if (!('problems' in answer)) throw new Error(`taken: ${JSON.stringify(answer.entry)}`);
      for (const problem of answer.problems) {
        Problem.parse(problem);
        expect(problem.message).toMatch(/\.$/);
        expect(problem.remedy).toMatch(/[.?]$/);
        expect(problem.code).toMatch(/^news\./);
      }
      return answer.problems;
    },
    state: () => foldRecord(entries),
    entries: () => entries,
  };
}
const codes = (problems: Problem[]) => problems.map((problem) => problem.code);

const brewed = (brew: string, day: string, more = {}) => ({ kind: 'brewed', brew, day, ...more });
const harvested = (settledMl: number, day = '2027-01-23', brew = 'Millrace') => ({
  kind: 'harvested',
  brew,
  day,
  settledMl,
});
const done = (task: string, day: string) => ({ kind: 'task-done', task, day });
const slipped = (brew: string, to: string) => ({ kind: 'slipped', brew, to });
const undone = (entry: number) => ({ kind: 'undone', entry });

describe('brewed', () => {
  it('takes tank, source, generation and cells from the plan in force', () => {
    const { facts } = aRecord().take(brewed('Millrace', '2027-01-10')).state();
    expect(facts.brewed).toEqual([
      {
        brew: 'Millrace',
        day: '2027-01-10',
        tank: 'Keg A',
        yeast: 'Mill Lane Ale',
        source: { kind: 'fresh', packs: 1, packsFromHand: 1 },
        starterLitres: 0,
        generation: 0,
        pitchedB: 186,
        emptiedOn: null,
        state: 'sound',
      },
    ]);
  });

  it('scales draw and cells to the mL that were poured', () => {
    const record = aRecord().take(brewed('Millrace', '2027-01-09')).take(harvested(288));
    const { facts } = record
      .take(brewed('Quill', '2027-01-31', { tank: 'Keg B', drawnMl: 92 }))
      .state();
    // half of 184 mL is half of 266 billion cells
    expect(facts.brewed[1]).toMatchObject({
      tank: 'Keg B',
      source: { kind: 'harvest', brew: 'Millrace', drawMl: 92 },
      generation: 1,
      pitchedB: 133,
    });
  });

  it('scales only the seed of a starter, not what the starter grew', () => {
    const jar = {
      kind: 'jar' as const,
      jar: 'J1',
      harvestedOn: '2026-12-20',
      drawMl: 100,
      ageDays: 48,
    };
    const plan = aPlan({ brews: [aPlannedBrew(), quill(), heron({ source: jar, generation: 3 })] });
    const { facts } = aRecord({ plan })
      .take(brewed('Heron', '2027-02-06', { drawnMl: 50 }))
      .state();
    // 351 given, begun with 188: half the seed leaves 351 − 94 = 257
    expect(facts.brewed[0]).toMatchObject({ pitchedB: 257, starterLitres: 1.5, generation: 3 });
  });

  it('takes what went into a starter to be what its task said', () => {
    const source = { kind: 'jar', jar: 'J1', harvestedOn: '2026-12-20', ageDays: 48 } as const;
    const later = heron({ source: { ...source, drawMl: 100 }, generation: 3 });
    const { viability, pitchedB } = later;
    const told = { brew: 'Heron', drawMl: 103, viability, pitchedB, initialB: 188, finalB: 351 };
    const plan = aPlan({
      brews: [aPlannedBrew(), quill(), later],
      told: { brews: [told], harvests: [] },
    });
    const { facts } = aRecord({ plan }).take(done('starter:Heron', '2027-02-04')).state();
    expect(facts.begun[0]?.source).toEqual({ kind: 'jar', jar: 'J1', drawMl: 103 });
  });

  it('spends the pin and the slip of the brew', () => {
    const record = aRecord({ today: '2027-01-04' })
      .take(slipped('Quill', '2027-01-31'))
      .take({ kind: 'pinned', brew: 'Quill', day: '2027-01-31' })
      .take(brewed('Millrace', '2027-01-09'), LATER)
      .take(harvested(288), LATER);
    expect(record.state().pins).toHaveLength(1);
    const { facts, pins } = record.take(brewed('Quill', '2027-01-31'), LATER).state();
    expect(pins).toEqual([]);
    expect(facts.notBefore).toEqual([]);
  });

  it.each([
    ['in the future', brewed('Millrace', '2027-06-02'), ['news.in-the-future'], 'day'],
    ['before the season', brewed('Millrace', '2026-01-09'), ['news.before-the-season'], 'day'],
    ['a name that is not there', brewed('Milrace', '2027-01-09'), ['news.unknown-brew'], 'brew'],
    [
      'a tank that is not there',
      brewed('Millrace', '2027-01-09', { tank: 'Keg C' }),
      ['news.unknown-tank'],
      'tank',
    ],
    [
      'mL of a pack',
      brewed('Millrace', '2027-01-09', { drawnMl: 100 }),
      ['news.packs-have-no-ml'],
      'drawnMl',
    ],
    ['yeast not harvested', brewed('Quill', '2027-01-30'), ['news.not-harvested'], 'brew'],
  ])('is refused: %s', (_, news, expected, field) => {
    const problems = aRecord().refuse(news);
    expect(codes(problems)).toEqual(expected);
    expect(problems[0]?.path).toBe(field);
  });

  it('tells all that is wrong at once', () => {
    const problems = aRecord().refuse(brewed('Milrace', '2027-06-09', { tank: 'Kegg A' }));
    expect(codes(problems)).toEqual([
      'news.in-the-future',
      'news.unknown-brew',
      'news.unknown-tank',
    ]);
    expect(problems[1]?.remedy).toBe('Did you mean Millrace?');
  });

  it('is refused twice, with the entry to take back', () => {
    const [problem] = aRecord()
      .take(brewed('Millrace', '2027-01-09'))
      .refuse(brewed('Millrace', '2027-01-10'));
    expect(problem?.code).toBe('news.already-brewed');
    expect(problem?.message).toContain('Sat 9 January (entry 1)');
    expect(problem?.remedy).toContain('take entry 1 back');
  });

  it.each([
    ['2027-01-22', 'news.before-harvest'], // harvested on the 23rd
    ['2027-01-23', null],
  ])('out of a harvest of 23 January, on %s: %s', (day, code) => {
    const record = aRecord().take(brewed('Millrace', '2027-01-09')).take(harvested(288));
    if (code === null) record.take(brewed('Quill', day));
    else expect(codes(record.refuse(brewed('Quill', day)))).toEqual([code]);
  });

  it.each([
    [183, 'news.more-than-there-is'], // 184 planned, 183 there: half a millilitre is allowed, one is not
    [184, null],
  ])('with %i mL harvested and 184 planned: %s', (ml, code) => {
    const record = aRecord().take(brewed('Millrace', '2027-01-09')).take(harvested(ml));
    if (code === null) record.take(brewed('Quill', '2027-01-30'));
    else expect(codes(record.refuse(brewed('Quill', '2027-01-30')))).toEqual([code]);
  });

  it.each([
    ['2027-01-22', 'news.tank-taken'], // by the plan Millrace leaves Keg A on the 23rd
    ['2027-01-23', null],
  ])('into a tank that the plan empties on 23 January, on %s: %s', (day, code) => {
    const record = aRecord().take(brewed('Millrace', '2027-01-09'));
    if (code === null) record.take(brewed('Heron', day));
    else expect(codes(record.refuse(brewed('Heron', day)))).toEqual([code]);
  });

  it('is refused into a tank that another beer was brewed into the same day', () => {
    const record = aRecord().take(brewed('Millrace', '2027-01-23'));
    expect(codes(record.refuse(brewed('Heron', '2027-01-23')))).toEqual(['news.tank-taken']);
  });

  it('is refused from a jar that is gone, or was not filled yet', () => {
    const jar = {
      kind: 'jar' as const,
      jar: 'J1',
      harvestedOn: '2027-01-20',
      drawMl: 100,
      ageDays: 10,
    };
    const house = aHouse({ jars: [aJar({ harvestedOn: '2027-01-20' })] });
    const plan = aPlan({ brews: [aPlannedBrew({ source: jar })] });
    const record = aRecord({ house, plan });
    expect(codes(record.refuse(brewed('Millrace', '2027-01-19')))).toEqual(['news.before-harvest']);
    record.take({ kind: 'jar-gone', jar: 'J1', day: '2027-01-22' });
    expect(codes(record.refuse(brewed('Millrace', '2027-01-23')))).toEqual(['news.jar-gone']);
    // pitched the day before it was found empty: no conflict
    record.take(brewed('Millrace', '2027-01-21'));
  });

  it('is refused where the plan left the brew out, for its yeast is not known', () => {
    const plan = aPlan({ brews: [aPlannedBrew()] });
    expect(codes(aRecord({ plan }).refuse(brewed('Heron', '2027-02-06')))).toEqual([
      'news.not-on-the-plan',
    ]);
  });
});

describe('harvested', () => {
  const record = () => aRecord().take(brewed('Millrace', '2027-01-09'));

  it('is kept with its mL', () => {
    expect(record().take(harvested(210)).state().facts.harvested).toEqual([
      { brew: 'Millrace', day: '2027-01-23', settledMl: 210, state: 'sound' },
    ]);
  });

  it('told again after settling is a better reading of the same harvest', () => {
    const { facts, done: ticks } = record()
      .take(harvested(288))
      .take(harvested(210, '2027-01-24'))
      .state();
    expect(facts.harvested).toEqual([
      { brew: 'Millrace', day: '2027-01-23', settledMl: 210, state: 'sound' },
    ]);
    expect(ticks).toContainEqual({ key: 'read-volume:Millrace', day: '2027-01-24' });
  });

  it.each([
    ['not brewed', aRecord(), harvested(100, '2027-02-20', 'Quill'), 'news.not-brewed'],
    ['on brew day', record(), harvested(100, '2027-01-09'), 'news.before-the-brew'],
    ['in the future', record(), harvested(100, '2027-06-02'), 'news.in-the-future'],
    // 20 L of beer are 20,000 mL
    ['more than the beer', record(), harvested(20_001), 'news.more-than-the-beer'],
    ['told twice', record().take(harvested(100)), harvested(100), 'news.already-harvested'],
    [
      'read before it was harvested',
      record().take(harvested(100)),
      harvested(90, '2027-01-22'),
      'news.before-harvest',
    ],
    [
      'after the tank was emptied',
      record().take(done('package:Millrace', '2027-01-23')),
      harvested(100, '2027-01-24'),
      'news.tank-empty',
    ],
    [
      'less than was pitched from it',
      record().take(harvested(288)).take(brewed('Quill', '2027-01-30')),
      harvested(183, '2027-02-01'), // Quill took 184
      'news.less-than-was-drawn',
    ],
  ])('is refused: %s', (_, told, news, code) => {
    expect(codes(told.refuse(news))).toEqual([code]);
  });

  it('of nothing is news too', () => {
    expect(record().take(harvested(0)).state().facts.harvested[0]?.settledMl).toBe(0);
  });
});

describe('slipped', () => {
  it('sets the first day on which it can be brewed; the last word holds', () => {
    const record = aRecord({ today: '2027-01-28' })
      .take(slipped('Quill', '2027-02-06'))
      .take(slipped('Quill', '2027-02-07'));
    expect(record.state().facts.notBefore).toEqual([{ brew: 'Quill', day: '2027-02-07' }]);
  });

  it.each([
    ['to a day that is past', slipped('Quill', '2027-01-27'), 'news.in-the-past'],
    ['past the season', slipped('Quill', '2027-06-28'), 'news.after-the-season'],
    ['of an unknown brew', slipped('Quilt', '2027-02-06'), 'news.unknown-brew'],
  ])('is refused %s', (_, news, code) => {
    expect(codes(aRecord({ today: '2027-01-28' }).refuse(news))).toEqual([code]);
  });

  it('is taken on the bounds: today and the last day of the season', () => {
    aRecord({ today: '2027-01-28' })
      .take(slipped('Quill', '2027-01-28'))
      .take(slipped('Quill', '2027-06-27'));
  });

  it('is refused for a brew that is brewed or pinned before', () => {
    const record = aRecord({ today: '2027-01-28' }).take(brewed('Millrace', '2027-01-09'));
    expect(codes(record.refuse(slipped('Millrace', '2027-02-06')))).toEqual([
      'news.already-brewed',
    ]);
    record.take({ kind: 'pinned', brew: 'Quill', day: '2027-01-30' });
    const [problem] = record.refuse(slipped('Quill', '2027-02-06'));
    expect(problem?.code).toBe('news.against-a-pin');
    expect(problem?.remedy).toContain('Unpin Quill');
  });
});

describe('pinned', () => {
  it('adds to what is pinned, and unpinned lets all of it go', () => {
    const record = aRecord({ today: '2027-01-04' })
      .take({ kind: 'pinned', brew: 'Quill', day: '2027-01-30' })
      .take({ kind: 'pinned', brew: 'Quill', tank: 'Keg B' });
    expect(record.state().pins).toEqual([
      { brew: 'Quill', day: '2027-01-30', tank: 'Keg B', source: null, forbidden: [] },
    ]);
    expect(record.take({ kind: 'unpinned', brew: 'Quill' }).state().pins).toEqual([]);
  });

  it.each([
    ['to nothing', { kind: 'pinned', brew: 'Quill' }, 'news.pins-nothing'],
    ['to the past', { kind: 'pinned', brew: 'Quill', day: '2027-01-03' }, 'news.in-the-past'],
    ['to an unknown tank', { kind: 'pinned', brew: 'Quill', tank: 'Vat' }, 'news.unknown-tank'],
    ['off what is not pinned', { kind: 'unpinned', brew: 'Quill' }, 'news.nothing-pinned'],
  ])('is refused %s', (_, news, code) => {
    expect(codes(aRecord({ today: '2027-01-04' }).refuse(news))).toEqual([code]);
  });

  it('is refused before the day to which the brew slipped', () => {
    const record = aRecord({ today: '2027-01-04' }).take(slipped('Quill', '2027-02-06'));
    expect(codes(record.refuse({ kind: 'pinned', brew: 'Quill', day: '2027-01-31' }))).toEqual([
      'news.against-a-slip',
    ]);
    record.take({ kind: 'pinned', brew: 'Quill', day: '2027-02-06' });
  });
});

describe('jar gone', () => {
  const gone = (jar: string, day: string) => ({ kind: 'jar-gone', jar, day });

  it('takes the jar off the shelf and its last day off the list', () => {
    const state = aRecord().take(gone('J1', '2027-01-10')).state();
    expect(state.facts.goneJars).toEqual(['J1']);
    expect(state.done).toEqual([{ key: 'discard-by:@shelf:J1', day: '2027-01-10' }]);
  });

  it.each([
    ['an unknown jar', gone('J9', '2027-01-10'), 'news.unknown-jar'],
    ['before it was filled', gone('J1', '2026-12-19'), 'news.before-harvest'],
    ['in the future', gone('J1', '2027-06-02'), 'news.in-the-future'],
  ])('is refused: %s', (_, news, code) => {
    expect(codes(aRecord().refuse(news))).toEqual([code]);
  });

  it('is refused twice, and for a jar that was pitched', () => {
    expect(
      codes(aRecord().take(gone('J1', '2027-01-10')).refuse(gone('J1', '2027-01-11'))),
    ).toEqual(['news.already-gone']);
    const jar = {
      kind: 'jar' as const,
      jar: 'J1',
      harvestedOn: '2026-12-20',
      drawMl: 100,
      ageDays: 20,
    };
    const plan = aPlan({ brews: [aPlannedBrew({ source: jar })] });
    const record = aRecord({ plan }).take(brewed('Millrace', '2027-01-09'));
    expect(codes(record.refuse(gone('J1', '2027-01-10')))).toEqual(['news.jar-opened']);
  });
});

describe('task done', () => {
  it('of the brew means brewed as planned, of the harvest harvested as planned', () => {
    const { facts } = aRecord()
      .take(done('brew-pitch:Millrace', '2027-01-10'))
      .take(done('harvest:Millrace', '2027-01-24'))
      .state();
    expect(facts.brewed[0]).toMatchObject({ brew: 'Millrace', day: '2027-01-10', tank: 'Keg A' });
    // 184 + 104 mL are in the jars
    expect(facts.harvested[0]).toMatchObject({ day: '2027-01-24', settledMl: 288 });
  });

  it('of packaging says when the tank was emptied', () => {
    const { facts } = aRecord()
      .take(brewed('Millrace', '2027-01-09'))
      .take(done('package:Millrace', '2027-01-24'))
      .state();
    expect(facts.brewed[0]?.emptiedOn).toBe('2027-01-24');
  });

  it('of discarding a spare jar takes its mL out of the harvest; of a shelf jar, it is gone', () => {
    const { facts } = aRecord()
      .take(brewed('Millrace', '2027-01-09'))
      .take(harvested(288))
      .take(done('discard-by:Millrace:S1', '2027-02-27'))
      .take(done('discard-by:@shelf:J1', '2027-02-27'))
      .state();
    expect(facts.harvested[0]?.settledMl).toBe(184); // 288 − 104
    expect(facts.goneJars).toEqual(['J1']);
  });

  it('of anything else is a tick with its day', () => {
    const state = aRecord().take(done('order:Heron', '2027-01-26')).state();
    expect(state.done).toEqual([{ key: 'order:Heron', day: '2027-01-26' }]);
    expect(state.facts.brewed).toEqual([]);
  });

  it.each([
    ['an unknown task', aRecord(), done('harvest:Nobody', '2027-01-26'), 'news.unknown-task'],
    ['in the future', aRecord(), done('order:Heron', '2027-06-02'), 'news.in-the-future'],
    [
      'twice',
      aRecord().take(done('order:Heron', '2027-01-26')),
      done('order:Heron', '2027-01-26'),
      'news.already-done',
    ],
    ['before the brew', aRecord(), done('crash:Millrace', '2027-01-21'), 'news.not-brewed'],
    [
      'read before the harvest',
      aRecord().take(brewed('Millrace', '2027-01-09')),
      done('read-volume:Millrace', '2027-01-24'),
      'news.not-harvested',
    ],
    [
      'packaged on brew day',
      aRecord().take(brewed('Millrace', '2027-01-09')),
      done('package:Millrace', '2027-01-09'),
      'news.before-the-brew',
    ],
    [
      'packaged before it was harvested',
      aRecord().take(brewed('Millrace', '2027-01-09')).take(harvested(288)),
      done('package:Millrace', '2027-01-22'),
      'news.before-the-brew',
    ],
    [
      'packaged twice',
      aRecord().take(brewed('Millrace', '2027-01-09')).take(done('package:Millrace', '2027-01-23')),
      done('package:Millrace', '2027-01-24'),
      'news.already-emptied',
    ],
    [
      'what the brew says is done',
      aRecord().take(brewed('Millrace', '2027-01-09')),
      done('take-out:Millrace', '2027-01-09'),
      'news.already-done',
    ],
    [
      'the brew again',
      aRecord().take(brewed('Millrace', '2027-01-09')),
      done('brew-pitch:Millrace', '2027-01-09'),
      'news.already-brewed',
    ],
  ])('is refused: %s', (_, record, news, code) => {
    expect(codes(record.refuse(news))).toEqual([code]);
  });
});

describe('undone', () => {
  it('appends an entry and takes an earlier one out', () => {
    const record = aRecord().take(brewed('Millrace', '2027-01-09')).take(undone(1));
    expect(record.entries()).toHaveLength(2);
    expect(record.state().facts.brewed).toEqual([]);
    // and it can be told anew
    record.take(brewed('Millrace', '2027-01-10'));
    expect(record.state().facts.brewed[0]?.day).toBe('2027-01-10');
  });

  it('of an undo brings back what was taken out', () => {
    const record = aRecord().take(brewed('Millrace', '2027-01-09')).take(undone(1)).take(undone(2));
    expect(record.state().facts.brewed[0]?.day).toBe('2027-01-09');
    // and once more out
    expect(record.take(undone(3)).state().facts.brewed).toEqual([]);
  });

  it('of a reading brings back the reading before it', () => {
    const record = aRecord()
      .take(brewed('Millrace', '2027-01-09'))
      .take(harvested(288))
      .take(harvested(210, '2027-01-24'))
      .take(undone(3));
    expect(record.state().facts.harvested[0]?.settledMl).toBe(288);
  });

  it('of a second pin leaves the first', () => {
    const record = aRecord({ today: '2027-01-04' })
      .take({ kind: 'pinned', brew: 'Quill', day: '2027-01-30' })
      .take({ kind: 'pinned', brew: 'Quill', tank: 'Keg B' })
      .take(undone(2));
    expect(record.state().pins).toEqual([
      { brew: 'Quill', day: '2027-01-30', tank: null, source: null, forbidden: [] },
    ]);
  });

  it('is refused where others rest on it, naming the entry to take back first', () => {
    const record = aRecord().take(brewed('Millrace', '2027-01-09')).take(harvested(288));
    const [problem] = record.refuse(undone(1));
    expect(problem?.code).toBe('news.others-rest-on-it');
    expect(problem?.message).toContain('entry 2 no longer holds');
    expect(problem?.remedy).toBe('Take entry 2 back first.');
    record.take(brewed('Quill', '2027-01-30'));
    expect(record.refuse(undone(2))[0]?.remedy).toBe('Take entry 3 back first.');
    // in this order all of it goes
    expect(record.take(undone(3)).take(undone(2)).take(undone(1)).state().facts.brewed).toEqual([]);
  });

  it('of an undo is refused where the thing was told anew since', () => {
    const record = aRecord()
      .take(brewed('Millrace', '2027-01-09'))
      .take(undone(1))
      .take(brewed('Millrace', '2027-01-10'));
    expect(codes(record.refuse(undone(2)))).toEqual(['news.others-rest-on-it']);
  });

  it.each([
    ['an entry that is not there', undone(7), 'news.no-such-entry'],
    ['an entry that is taken back', undone(1), 'news.already-undone'],
  ])('is refused: %s', (_, news, code) => {
    const record = aRecord().take(brewed('Millrace', '2027-01-09')).take(undone(1));
    expect(codes(record.refuse(news))).toEqual([code]);
  });
});
