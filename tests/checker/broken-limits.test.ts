// A good plan, one thing spoilt, and the rule that has to be found broken: what yeast comes out of,
// its age in days and generations, suspicion, and what has happened.
import { describe, expect, it } from 'vitest';
import { type Hands, later, type Row, spoil } from './good-plan.ts';

/** The jar of the shelf that the plan opens first. */
const openedJar = (h: Hands) => {
  const opened = h.placed((b) => b.source.kind === 'jar');
  const jar = h.house.jars.find((j) => opened.source.kind === 'jar' && j.jar === opened.source.jar);
  if (jar === undefined) throw new Error('no jar is opened');
  return { opened, jar };
};

/** A pitch out of the harvest of a beer that was itself pitched from a jar of the shelf. */
const grandchild = (h: Hands) =>
  h.repitch((b) => {
    const parent = b.source.kind === 'harvest' ? b.source.brew : '';
    return h.plan.brews.some((p) => p.brew === parent && p.source.kind === 'jar');
  });

/** Says that a brew was brewed as the plan has it. */
const brewed = (h: Hands, brew: Hands['plan']['brews'][number]) => {
  const { source } = brew;
  brew.done = true;
  h.facts.brewed.push({
    brew: brew.brew,
    day: brew.day,
    tank: brew.tank,
    yeast: brew.yeast,
    source:
      source.kind === 'fresh'
        ? { kind: 'fresh', packs: source.packs, packsFromHand: source.packsFromHand }
        : source.kind === 'jar'
          ? { kind: 'jar', jar: source.jar, drawMl: source.drawMl }
          : { kind: 'harvest', brew: source.brew, drawMl: source.drawMl },
    starterLitres: brew.starter?.litres ?? 0,
    generation: brew.generation,
    pitchedB: brew.pitchedB,
    emptiedOn: brew.emptiedOn,
    state: 'sound',
  });
};

const harvested = (h: Hands, state: 'sound' | 'watch' | 'suspect' = 'sound') => {
  const { harvest } = h.repitch();
  harvest.done = true;
  h.facts.harvested.push({
    brew: harvest.brew,
    day: harvest.day,
    settledMl: harvest.settledMl.likely,
    state,
  });
  return harvest;
};

const RULES_5_TO_8: Row[] = [
  [
    '5 gravity-ceiling',
    'a harvest of beer at the ceiling',
    (h) => {
      h.repitch().recipe.og = 1.07;
    },
  ],
  [
    '5 gravity-ceiling',
    'a jar of beer at the ceiling',
    (h) => {
      openedJar(h).jar.sourceOg = 1.07;
    },
  ],
  [
    '6 sour',
    'a harvest of kettle-soured beer',
    (h) => {
      h.repitch().recipe.souring = 'kettle';
    },
  ],
  [
    '6 sour',
    'a jar of kettle-soured beer',
    (h) => {
      openedJar(h).jar.sourceSouring = 'kettle';
    },
  ],
  [
    '6 mixed',
    'a harvest of mixed-culture beer',
    (h) => {
      h.repitch().recipe.souring = 'mixed';
    },
  ],
  [
    '6 mixed',
    'mixed-culture beer, and all rules relaxed',
    (h) => {
      h.house.relaxed = ['gravity-ceiling', 'kettle-soured', 'dry-hopped', 'additions'];
      openedJar(h).jar.sourceSouring = 'mixed';
    },
  ],
  [
    '7 hops',
    'a harvest after the dry hop',
    (h) => {
      h.repitch().recipe.dryHopDay = 1;
    },
  ],
  [
    '7 harvest-of-hopped',
    'a harvest after the dry hop',
    (h) => {
      h.repitch().recipe.dryHopDay = 1;
    },
  ],
  [
    '7 hops',
    'a jar of dry-hopped beer',
    (h) => {
      openedJar(h).jar.sourceDryHopped = true;
    },
  ],
  [
    '8 additions',
    'a harvest of beer with fruit',
    (h) => {
      h.repitch().recipe.additions = ['fruit'];
    },
  ],
  [
    '8 additions',
    'a jar of beer with smoke',
    (h) => {
      openedJar(h).jar.sourceAdditions = ['smoke'];
    },
  ],
];

const RULES_9_AND_10: Row[] = [
  [
    '9 generation',
    'a generation that is not its parent’s and one',
    (h) => {
      h.repitch().brew.generation += 1;
    },
  ],
  [
    '9 generation-of-harvest',
    'a harvest of its beer’s own generation',
    (h) => {
      h.repitch().harvest.generation -= 1;
    },
  ],
  [
    '9 limit',
    'a jar beyond the limit of the house',
    (h) => {
      openedJar(h).jar.generation = 6;
    },
  ],
  [
    '9 limit-of-strain',
    'a pitch beyond the limit of the strain',
    (h) => {
      h.strain(h.repitch().brew.yeast).maxGeneration = 0;
    },
  ],
  [
    '9 limit-after-strong',
    'generation 6 out of beer above 15 °P, in a house that goes to 10',
    (h) => {
      h.house.rules.maxGeneration = 10;
      const { jar } = openedJar(h);
      jar.generation = 6;
      // 1.065 is 15.9 °P by the ASBC tables.
      jar.sourceOg = 1.065;
    },
  ],
  [
    '10 storage-limit',
    'a jar a day older than the limit of 35 days',
    (h) => {
      const { opened, jar } = openedJar(h);
      jar.harvestedOn = later(opened.starter?.startOn ?? opened.day, -36);
    },
  ],
  [
    '10 storage-limit',
    'a starter does not lift the limit',
    (h) => {
      const { brew, harvest } = h.repitch((b) => b.starter !== null);
      harvest.day = later(brew.starter?.startOn ?? brew.day, -36);
    },
  ],
  [
    '10 viability-floor',
    'slurry below the floor without a starter',
    (h) => {
      h.repitch((b) => b.starter === null).brew.viability.likely = 0.69;
    },
  ],
  [
    '10 pack-expired',
    'packs older than they keep',
    (h) => {
      const brew = h.placed((b) => b.source.kind === 'fresh');
      if (brew.source.kind === 'fresh') brew.source.packsMadeOn = later(brew.day, -1000);
    },
  ],
];

const RULES_12_AND_13: Row[] = [
  [
    '12 brewed',
    'a brew that happened and is left out',
    (h) => {
      const brew = h.placed(() => true);
      brewed(h, brew);
      h.plan.brews = h.plan.brews.filter((b) => b !== brew);
    },
  ],
  [
    '12 day',
    'a brew that happened on another day',
    (h) => {
      const brew = h.placed(() => true);
      brewed(h, brew);
      brew.day = later(brew.day, 1);
    },
  ],
  ...(['tank', 'yeast', 'generation'] as const).map(
    (field): Row => [
      `12 ${field}`,
      `a brew that happened with another ${field}`,
      (h) => {
        const brew = h.placed(() => true);
        brewed(h, brew);
        if (field === 'generation') brew.generation += 1;
        else brew[field] = 'Another';
      },
    ],
  ),
  [
    '12 source',
    'a brew that happened with other yeast',
    (h) => {
      const brew = h.placed((b) => b.source.kind === 'fresh');
      brewed(h, brew);
      if (brew.source.kind === 'fresh') brew.source.packs += 1;
    },
  ],
  [
    '12 cells',
    'a brew that happened with other cells',
    (h) => {
      const brew = h.placed(() => true);
      brewed(h, brew);
      brew.pitchedB *= 1.1;
    },
  ],
  [
    '12 emptying',
    'a tank that was emptied on another day',
    (h) => {
      const brew = h.placed(() => true);
      brewed(h, brew);
      brew.emptiedOn = later(brew.emptiedOn, 1);
    },
  ],
  [
    '12 not-brewed',
    'a brew called done that has not happened',
    (h) => {
      h.placed(() => true).done = true;
    },
  ],
  [
    '12 harvested',
    'a harvest that happened on another day',
    (h) => {
      const harvest = harvested(h);
      harvest.day = later(harvest.day, 1);
    },
  ],
  [
    '12 harvested-ml',
    'a harvest that gave another amount',
    (h) => {
      harvested(h).settledMl.likely *= 1.1;
    },
  ],
  [
    '12 not-harvested',
    'a harvest called done that has not happened',
    (h) => {
      h.repitch().harvest.done = true;
    },
  ],
  [
    '12 gone-jar',
    'a jar that is gone',
    (h) => {
      h.facts.goneJars.push(openedJar(h).jar.jar);
    },
  ],
  [
    '12 pin-day',
    'a brew held on another day',
    (h) => {
      const { brew, day } = h.placed(() => true);
      h.pins.push({ brew, day: later(day, 7), tank: null, source: null, forbidden: [] });
    },
  ],
  [
    '12 pin-tank',
    'a brew held in another tank',
    (h) => {
      const { brew } = h.placed(() => true);
      h.pins.push({ brew, day: null, tank: 'Another', source: null, forbidden: [] });
    },
  ],
  [
    '12 pin-source',
    'a brew held to fresh packs',
    (h) => {
      h.pins.push({
        brew: h.repitch().brew.brew,
        day: null,
        tank: null,
        source: { kind: 'fresh' },
        forbidden: [],
      });
    },
  ],
  [
    '12 pin-source',
    'a brew held to a jar',
    (h) => {
      h.pins.push({
        brew: h.repitch().brew.brew,
        day: null,
        tank: null,
        source: { kind: 'jar', jar: 'J1' },
        forbidden: [],
      });
    },
  ],
  [
    '12 pin-placed',
    'a brew held on a day and left out',
    (h) => {
      const brew = h.placed(() => true);
      h.pins.push({ brew: brew.brew, day: brew.day, tank: null, source: null, forbidden: [] });
      h.plan.brews = h.plan.brews.filter((b) => b !== brew);
    },
  ],
  [
    '13 suspect',
    'a suspect jar',
    (h) => {
      openedJar(h).jar.state = 'suspect';
    },
  ],
  [
    '13 suspect',
    'a suspect harvest',
    (h) => {
      harvested(h, 'suspect');
    },
  ],
  [
    '13 descends',
    'a harvest of beer that was pitched from a suspect jar',
    (h) => {
      const { parent } = grandchild(h);
      const { source } = parent;
      for (const jar of h.house.jars)
        if (source.kind === 'jar' && jar.jar === source.jar) jar.state = 'suspect';
    },
  ],
  [
    '13 watch',
    'a jar on watch',
    (h) => {
      openedJar(h).jar.state = 'watch';
    },
  ],
  [
    '13 watch',
    'a harvest on watch',
    (h) => {
      harvested(h, 'watch');
    },
  ],
];

describe.each([
  ['5–8', RULES_5_TO_8],
  ['9, 10', RULES_9_AND_10],
  ['12, 13', RULES_12_AND_13],
])('rules %s', (_, rows) => {
  it.each(rows)('%s: %s', async (rule, _what, by) => {
    expect(await spoil('lantern-shed', by)).toContain(rule);
  });
});

describe('relaxed rules', () => {
  const relaxed: [string, string, (h: Hands) => void][] = [
    [
      'gravity-ceiling',
      '5 gravity-ceiling',
      (h) => {
        openedJar(h).jar.sourceOg = 1.07;
      },
    ],
    [
      'kettle-soured',
      '6 sour',
      (h) => {
        openedJar(h).jar.sourceSouring = 'kettle';
      },
    ],
    [
      'dry-hopped',
      '7 hops',
      (h) => {
        openedJar(h).jar.sourceDryHopped = true;
      },
    ],
    [
      'additions',
      '8 additions',
      (h) => {
        openedJar(h).jar.sourceAdditions = ['spice'];
      },
    ],
    [
      'generation-limit',
      '9 limit',
      (h) => {
        openedJar(h).jar.generation = 6;
      },
    ],
    [
      'storage-limit',
      '10 storage-limit',
      (h) => {
        h.house.rules.maxStorageDays = 1;
      },
    ],
    [
      'viability-floor',
      '10 viability-floor',
      (h) => {
        h.house.rules.viabilityFloor = 1;
      },
    ],
  ];

  it.each(relaxed)('%s: forbidden, and relaxed no violation', async (id, rule, by) => {
    expect(await spoil('lantern-shed', by)).toContain(rule);
    const found = await spoil('lantern-shed', (h) => {
      h.house.relaxed = [id];
      by(h);
    });
    expect(found).not.toContain(rule);
  });
});
