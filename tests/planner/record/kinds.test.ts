// Every further kind of news: what it comes to, what it contradicts with which way out, and that taking it back leaves no trace.
import { describe, expect, it } from 'vitest';
import {
  familyOf,
  foldRecord,
  type House,
  houseNow,
  NEWS_WORDS,
  News,
  type Plan,
  type RecordEntry,
  resolveNews,
  sayNews,
} from '../../../planner/index.ts';
import { aBrew, aHouse, aJar, aPlan, aPlannedBrew, heron, quill } from '../../builders/plan.ts';

const TODAY = '2027-02-20';

/** A record to which news is told one after the other, on one day. */
function aRecord(setting: { house?: House; plan?: Plan; today?: string } = {}) {
  const { house = aHouse(), plan = aPlan(), today = TODAY } = setting;
  let entries: RecordEntry[] = [];
  const tell = (news: unknown) =>
    resolveNews(News.parse(news), foldRecord(entries), house, plan, today);
  const record = {
    take(...all: unknown[]) {
      for (const news of all) {
        const before = state();
        const answer = tell(news);
        if (!('entry' in answer)) throw new Error(answer.problems.map((p) => p.message).join(' '));
        entries = [...entries, answer.entry];
        // taken back it leaves no trace; then it is told for good
        const back = tell({ kind: 'undone', entry: answer.entry.no });
        if (!('entry' in back)) throw new Error(back.problems[0]?.message);
        expect({ ...foldRecord([...entries, back.entry]), entries: [] }).toEqual(before);
        expect(sayNews(answer.entry.news)).toMatch(/^[A-Z0-9]/);
      }
      return record;
    },
    refuse(news: unknown): string {
      const answer = tell(news);
      if (!('problems' in answer)) throw new Error(`taken: ${JSON.stringify(answer.entry)}`);
      for (const { message, remedy } of answer.problems) {
        expect(message).toMatch(/^[A-Z0-9].*\.$/);
        expect(remedy).toMatch(/[.?]$/);
      }
      return answer.problems[0]?.code ?? '';
    },
    facts: () => foldRecord(entries).facts,
    pins: () => foldRecord(entries).pins,
    overlay: () => foldRecord(entries).overlay,
    now: () => houseNow(house, foldRecord(entries).overlay),
    brew: (name: string) => record.now().brews.find((row) => row.brew === name),
    jar: (name: string) => record.now().jars.find((row) => row.jar === name),
    state: () => state(),
    house,
    plan,
  };
  const state = () => ({ ...foldRecord(entries), entries: [] });
  return record;
}

const BREWED = { kind: 'brewed', brew: 'Millrace', day: '2027-01-09' };
const HARVESTED = { kind: 'harvested', brew: 'Millrace', day: '2027-01-23', settledMl: 288 };
const QUILL = { kind: 'brewed', brew: 'Quill', day: '2027-01-30' };
const crop = (brew: string) => ({ kind: 'harvest', brew });
const beer = (brew: string) => ({ kind: 'beer', brew });
const jar = (name: string) => ({ kind: 'jar', jar: name });
const day = TODAY;

it('each kind has its words', () => {
  const kinds = News.options.map((option) => option.shape.kind.value);
  expect(Object.keys(NEWS_WORDS).sort()).toEqual([...kinds].sort());
  for (const { title, says } of Object.values(NEWS_WORDS)) {
    expect(title).not.toBe('');
    expect(says).toMatch(/^[A-Z].*\.$/);
  }
});

describe('the season', () => {
  it('not yet: not before tomorrow, or where it slipped farther, not before then', () => {
    expect(aRecord().take({ kind: 'not-yet', brew: 'Quill' }).facts().notBefore).toEqual([
      { brew: 'Quill', day: '2027-02-21' },
    ]);
    const far = aRecord().take({ kind: 'slipped', brew: 'Quill', to: '2027-03-06' });
    expect(far.take({ kind: 'not-yet', brew: 'Quill' }).facts().notBefore[0]?.day).toBe(
      '2027-03-06',
    );
  });

  it('a brew more, one less, one of another size: laid over the house that was entered', () => {
    const record = aRecord();
    const entered = JSON.stringify(record.house);
    record.take(
      { kind: 'brew-added', row: aBrew({ brew: 'Extra' }) },
      { kind: 'brew-dropped', brew: 'Heron' },
      { kind: 'resized', brew: 'Quill', volumeL: 26 },
    );
    expect(record.now().brews.map((row) => [row.brew, row.volumeL])).toEqual([
      ['Millrace', 20],
      ['Quill', 26],
      ['Extra', 20],
    ]);
    expect(JSON.stringify(record.house)).toBe(entered);
    // twice is once
    expect(houseNow(record.now(), record.overlay())).toEqual(record.now());
  });

  it('what names an added brew rests on it', () => {
    const record = aRecord().take({ kind: 'brew-added', row: aBrew({ brew: 'Extra' }) });
    record.take({ kind: 'slipped', brew: 'Extra', to: '2027-03-06' });
    expect(record.refuse({ kind: 'undone', entry: 1 })).toBe('news.others-rest-on-it');
  });

  it('tanks out of use and days closed are in the house as it is now', () => {
    const record = aRecord().take(
      { kind: 'tank-out', tank: 'Keg A', from: '2027-03-01', to: '2027-03-07' },
      { kind: 'day-closed', day: '2027-03-06' },
    );
    expect(record.now().tanks[0]?.outOfUse).toEqual([{ from: '2027-03-01', to: '2027-03-07' }]);
    expect(record.now().closed).toEqual(['2027-03-06']);
  });

  it.each([
    ['a name that is there', { kind: 'brew-added', row: aBrew() }, 'news.doubled-name'],
    [
      'a yeast that is not',
      { kind: 'brew-added', row: aBrew({ brew: 'X', yeasts: ['Y'] }) },
      'news.unknown-yeast',
    ],
    ['a brew that is brewed', { kind: 'brew-dropped', brew: 'Millrace' }, 'news.already-brewed'],
    ['a size for no tank', { kind: 'resized', brew: 'Quill', volumeL: 31 }, 'news.fits-no-tank'],
    [
      'days reversed',
      { kind: 'tank-out', tank: 'Keg A', from: '2027-03-07', to: '2027-03-01' },
      'news.days-reversed',
    ],
    [
      'a tank that is out when it was full',
      { kind: 'tank-out', tank: 'Keg A', from: '2027-01-05', to: '2027-02-28' },
      'news.tank-taken',
    ],
    ['a day that is past', { kind: 'day-closed', day: '2027-02-19' }, 'news.in-the-past'],
    ['an unknown tank', { kind: 'tank-out', tank: 'Vat', from: day, to: day }, 'news.unknown-tank'],
  ])('is refused: %s', (_, news, code) => {
    expect(aRecord().take(BREWED).refuse(news)).toBe(code);
  });
});

describe('a beer in its tank', () => {
  const record = () => aRecord({ today: '2027-01-20' }).take(BREWED);

  it('slow, of another gravity, hopped early: its row says so', () => {
    const told = record().take(
      { kind: 'slow', brew: 'Millrace', until: '2027-01-30' },
      { kind: 'gravity', brew: 'Millrace', og: 1.072, fg: 1.016 },
      { kind: 'hopped', brew: 'Millrace', day: '2027-01-13' },
    );
    // 9 January and 21 days; and 4 days
    expect(told.brew('Millrace')).toMatchObject({
      tankDays: 21,
      harvestDay: 21,
      og: 1.072,
      fg: 1.016,
      dryHopDay: 4,
    });
  });

  it.each([
    [
      'slow before it was brewed',
      { kind: 'slow', brew: 'Quill', until: '2027-02-06' },
      'news.not-brewed',
    ],
    [
      'slow, but no later than planned',
      { kind: 'slow', brew: 'Millrace', until: '2027-01-23' },
      'news.no-later',
    ],
    ['foaming before it was brewed', { kind: 'lag', brew: 'Quill', hours: 12 }, 'news.not-brewed'],
    // brewed on 9 January, told on the day of the record
    ['foaming later than now', { kind: 'lag', brew: 'Millrace', hours: 336 }, 'news.in-the-future'],
    [
      'below its final gravity',
      { kind: 'gravity', brew: 'Millrace', og: 1.01 },
      'news.gravities-reversed',
    ],
    ['the gravity it has', { kind: 'gravity', brew: 'Millrace', og: 1.041 }, 'news.same-gravity'],
    [
      'hopped before it was brewed',
      { kind: 'hopped', brew: 'Millrace', day: '2027-01-08' },
      'news.before-the-brew',
    ],
    [
      'hopped tomorrow',
      { kind: 'hopped', brew: 'Millrace', day: '2027-01-21' },
      'news.in-the-future',
    ],
    [
      'passed on brew day',
      { kind: 'passed', brew: 'Millrace', day: '2027-01-09' },
      'news.before-the-brew',
    ],
  ])('is refused: %s', (_, news, code) => {
    expect(record().refuse(news)).toBe(code);
  });
});

describe('slurry', () => {
  it('lost before it was taken is a harvest of nothing; afterwards, what was not pitched is gone', () => {
    const lost = { kind: 'harvest-lost', brew: 'Millrace', day: '2027-01-31' };
    expect(aRecord().take(BREWED, lost).facts().harvested[0]?.settledMl).toBe(0);
    const some = aRecord().take(BREWED, HARVESTED, QUILL, lost);
    expect(some.facts().harvested[0]?.settledMl).toBe(184);
    expect(some.refuse(lost)).toBe('news.nothing-left');
  });

  it('found is on the list, counted is as counted, and the strain learns from the count', () => {
    const record = aRecord().take(
      { kind: 'jar-found', row: aJar({ jar: 'J2', harvestedOn: '2027-01-30' }) },
      { kind: 'measured', of: jar('J2'), day, stained: 40, total: 200, millionPerMl: 1500 },
    );
    expect(record.jar('J2')).toMatchObject({ measuredViability: 0.8, measuredOn: day });
    expect(record.facts().measured).toEqual([
      { of: jar('J2'), day, viability: 0.8, densityBPerMl: 1.5 },
    ]);
    expect(record.now().counts).toMatchObject([
      { yeast: 'Mill Lane Ale', stained: 40, total: 200 },
    ]);
  });

  it('frozen is on watch until it is counted', () => {
    const record = aRecord().take({ kind: 'frozen', of: jar('J1'), day });
    expect(record.jar('J1')?.state).toBe('watch');
    expect(record.refuse({ kind: 'sound', of: jar('J1'), day })).toBe('news.was-frozen');
    record.take({ kind: 'measured', of: jar('J1'), day, viability: 0.6 });
    expect(record.jar('J1')?.state).toBe('sound');
  });

  it.each([
    ['more stained than looked at', { stained: 201, total: 200 }, 'news.count-makes-no-sense'],
    ['half a count', { stained: 20 }, 'news.count-makes-no-sense'],
    ['nothing', {}, 'news.count-makes-no-sense'],
    ['two shares', { stained: 20, total: 200, viability: 0.5 }, 'news.count-makes-no-sense'],
    ['before it was filled', { viability: 0.5, day: '2026-12-19' }, 'news.before-harvest'],
    ['an unknown jar', { viability: 0.5, of: jar('J9') }, 'news.unknown-jar'],
    ['a harvest not taken', { viability: 0.5, of: crop('Millrace') }, 'news.not-harvested'],
  ])('a count is refused: %s', (_, part, code) => {
    expect(aRecord().refuse({ kind: 'measured', of: jar('J1'), day, ...part })).toBe(code);
  });
});

describe('a culture that went bad', () => {
  // J1 → Millrace → its harvest → Quill; and Heron from J1 too
  const from = {
    kind: 'jar' as const,
    jar: 'J1',
    harvestedOn: '2026-12-20',
    drawMl: 100,
    ageDays: 20,
  };
  const plan = aPlan({
    brews: [
      aPlannedBrew({ source: from, generation: 3 }),
      quill(),
      heron({ source: from, starter: null }),
    ],
  });
  const house = aHouse({ jars: [aJar(), aJar({ jar: 'J2' }), aJar({ jar: 'J3', generation: 1 })] });
  const HERON = { kind: 'brewed', brew: 'Heron', day: '2027-02-06' };
  const record = () => aRecord({ house, plan }).take(BREWED, HARVESTED, QUILL, HERON);
  const states = (told: ReturnType<typeof record>) => ({
    ...Object.fromEntries(told.facts().brewed.map(({ brew, state }) => [brew, state])),
    ...Object.fromEntries(told.facts().harvested.map(({ brew, state }) => [`crop ${brew}`, state])),
    ...Object.fromEntries(told.now().jars.map(({ jar: name, state }) => [name, state])),
  });
  const SOUND = {
    Millrace: 'sound',
    Quill: 'sound',
    Heron: 'sound',
    'crop Millrace': 'sound',
    J1: 'sound',
    J2: 'sound',
    J3: 'sound',
  };

  it.each([
    // a jar: all beers out of it and what came of them; its mate of the same harvest on watch
    [
      'a jar',
      jar('J1'),
      {
        J1: 'suspect',
        J2: 'watch',
        Millrace: 'suspect',
        'crop Millrace': 'suspect',
        Quill: 'suspect',
        Heron: 'suspect',
      },
    ],
    // a beer: its crop and what came of that; the jar it came from and its sibling on watch
    [
      'a beer',
      beer('Millrace'),
      {
        Millrace: 'suspect',
        'crop Millrace': 'suspect',
        Quill: 'suspect',
        J1: 'watch',
        Heron: 'watch',
      },
    ],
    // a harvest: the beer out of it; the beer it came from on watch
    [
      'a harvest',
      crop('Millrace'),
      { 'crop Millrace': 'suspect', Quill: 'suspect', Millrace: 'watch' },
    ],
    // the last of the line: the harvest and the beer behind it on watch, nobody suspect but itself
    [
      'a finished beer',
      beer('Quill'),
      { Quill: 'suspect', 'crop Millrace': 'watch', Millrace: 'watch' },
    ],
  ] as const)(
    '%s: descendants suspect, siblings and parent on watch; sound again, all come back',
    (_, of, changed) => {
      const told = record().take({ kind: 'suspect', of, day });
      expect(states(told)).toEqual({ ...SOUND, ...changed });
      told.take({ kind: 'sound', of, day });
      expect(states(told)).toEqual(SOUND);
    },
  );

  it('a thing on watch comes off it by being passed, and goes on again with the next suspicion', () => {
    const told = record().take({ kind: 'suspect', of: beer('Millrace'), day });
    told.take({ kind: 'passed', brew: 'Heron', day });
    expect(states(told).Heron).toBe('sound');
    told.take(
      { kind: 'sound', of: beer('Millrace'), day },
      { kind: 'suspect', of: beer('Millrace'), day },
    );
    expect(states(told).Heron).toBe('watch');
  });

  it('what comes of a suspect is not marked sound by itself', () => {
    const told = record().take({ kind: 'suspect', of: jar('J1'), day });
    expect(told.refuse({ kind: 'sound', of: beer('Quill'), day })).toBe('news.comes-of-a-suspect');
    expect(told.refuse({ kind: 'passed', brew: 'Quill', day })).toBe('news.comes-of-a-suspect');
    expect(told.refuse({ kind: 'suspect', of: jar('J1'), day })).toBe('news.already-suspect');
    expect(told.refuse({ kind: 'sound', of: jar('J3'), day })).toBe('news.is-sound');
  });

  it('the family tells where each one is and which beers to taste', () => {
    const told = record().take({ kind: 'suspect', of: beer('Millrace'), day });
    const now = { house: told.now(), facts: told.facts(), plan, today: TODAY };
    const family = familyOf({ kind: 'beer', brew: 'Millrace' }, now);
    const kin = family?.members.map(({ kin: how, says }) => `${how}: ${says}`);
    expect(kin).toContain('itself: Millrace: ready to drink, suspect.');
    expect(kin).toContain('descendant: The harvest of Millrace: on the shelf, suspect.');
    expect(kin).toContain('parent: Jar J1: used up, on watch.');
    expect(kin?.some((line) => line.startsWith('sibling: Heron: in Keg'))).toBe(true);
    expect(family?.taste.sort()).toEqual(['Heron', 'Millrace', 'Quill']);
    expect(familyOf({ kind: 'jar', jar: 'J9' }, now)).toBeNull();
  });
});

describe('packs and starters', () => {
  const bought = {
    kind: 'packs-bought',
    yeast: 'Harbour Lager',
    packs: 2,
    arrivesOn: '2027-02-25',
  };
  const late = { kind: 'packs-late', yeast: 'Harbour Lager', arrivesOn: '2027-03-01' };

  it('late packs come on the new day; which of several has to be said', () => {
    const record = aRecord().take(bought, late);
    expect(record.facts().bought).toEqual([
      { yeast: 'Harbour Lager', packs: 2, arrivesOn: '2027-03-01' },
    ]);
    record.take({ ...bought, arrivesOn: '2027-03-08' });
    expect(record.refuse({ ...late, arrivesOn: '2027-03-15' })).toBe('news.which-delivery');
    record.take({ ...late, arrivesOn: '2027-03-15', expectedOn: '2027-03-08' });
  });

  it('a failed starter takes its packs along, and its tasks are to be done again', () => {
    const begun = { kind: 'task-done', task: 'starter:Heron', day: '2027-02-04' };
    const record = aRecord().take(begun);
    expect(record.facts().begun).toHaveLength(1);
    record.take({ kind: 'starter-failed', brew: 'Heron', day: '2027-02-05' });
    expect(record.facts().begun).toEqual([]);
    expect(record.facts().lostPacks).toHaveLength(1);
    expect(record.state().done).toEqual([]);
  });

  it.each([
    ['packs that nobody ordered', late, 'news.no-such-delivery'],
    ['an unknown yeast', { ...bought, yeast: 'Nope' }, 'news.unknown-yeast'],
    [
      'a starter that was not begun',
      { kind: 'starter-failed', brew: 'Heron', day },
      'news.no-starter',
    ],
  ])('is refused: %s', (_, news, code) => {
    expect(aRecord().refuse(news)).toBe(code);
  });
});

describe('pins', () => {
  const pin = (part: object) => ({ kind: 'pinned', brew: 'Quill', ...part });
  const forbid = (source: object) => ({ kind: 'source-forbidden', brew: 'Quill', source });

  it('day, tank and source are held and let go each alone', () => {
    const record = aRecord().take(
      pin({ day: '2027-02-27' }),
      pin({ tank: 'Keg B' }),
      pin({ source: jar('J1') }),
    );
    expect(record.pins()).toEqual([
      { brew: 'Quill', day: '2027-02-27', tank: 'Keg B', source: jar('J1'), forbidden: [] },
    ]);
    record.take({ kind: 'unpinned', brew: 'Quill', what: 'tank' });
    expect(record.pins()[0]).toMatchObject({ day: '2027-02-27', tank: null });
    expect(record.refuse({ kind: 'unpinned', brew: 'Quill', what: 'tank' })).toBe(
      'news.nothing-pinned',
    );
    expect(record.refuse(forbid(jar('J1')))).toBe('news.against-a-pin');
  });

  it('a source is ruled out, and allowed again', () => {
    const record = aRecord().take(forbid(jar('J1')), forbid({ kind: 'fresh' }));
    expect(record.pins()[0]?.forbidden).toEqual([jar('J1'), { kind: 'fresh' }]);
    expect(record.refuse(pin({ source: jar('J1') }))).toBe('news.source-forbidden');
    expect(record.refuse(forbid(jar('J1')))).toBe('news.already-forbidden');
    record.take({ kind: 'source-allowed', brew: 'Quill', source: jar('J1') });
    expect(record.pins()[0]?.forbidden).toEqual([{ kind: 'fresh' }]);
  });

  it.each([
    // 9 January 2027 is a Saturday: the house brews on Saturdays and Sundays, until 27 June
    ['before the season', pin({ day: '2027-01-03' }), 'news.before-the-season', '2027-01-01'],
    ['after the season', pin({ day: '2027-07-03' }), 'news.after-the-season', TODAY],
    ['on no brew day', pin({ day: '2027-03-01' }), 'news.no-brew-day', TODAY],
    ['to its own harvest', pin({ source: crop('Quill') }), 'news.feeds-itself', TODAY],
    ['to an unknown jar', pin({ source: jar('J9') }), 'news.unknown-jar', TODAY],
  ])('is refused %s', (_, news, code, today) => {
    expect(aRecord({ today }).refuse(news)).toBe(code);
  });
});
