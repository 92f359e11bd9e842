// A good plan, one thing spoilt, and the rule that has to be found broken: sources, amounts, starters.
import { describe, expect, it } from 'vitest';
import { type Hands, later, type Row, spoil } from './good-plan.ts';

const RULE_3: Row[] = [
  [
    '3 too-early',
    'slurry drawn before it has settled',
    (h) => {
      h.house.store.settleDays = 14;
    },
  ],
  [
    '3 strain',
    'a strain that the brew does not accept',
    (h) => {
      const brew = h.placed(() => true);
      h.recipe(brew.brew).yeasts = ['Strawfield Wheat', 'Mill Lane Ale', 'Harbour Lager'].filter(
        (y) => y !== brew.yeast,
      );
    },
  ],
  [
    '3 strain-temperature',
    'a strain at a temperature it cannot',
    (h) => {
      const brew = h.placed(() => true);
      h.strain(brew.yeast).minC = h.recipe(brew.brew).fermentC + 1;
    },
  ],
  [
    '3 strain-of-source',
    'a source of another strain',
    (h) => {
      h.repitch().harvest.yeast = 'Strawfield Wheat';
    },
  ],
  [
    '3 harvest-strain',
    'a harvest of a strain that is not in the tank',
    (h) => {
      h.repitch().harvest.yeast = 'Strawfield Wheat';
    },
  ],
  [
    '3 no-such-yeast',
    'a harvest that nobody takes',
    (h) => {
      const { source } = h.repitch();
      h.plan.harvests = h.plan.harvests.filter((harvest) => harvest.brew !== source.brew);
    },
  ],
  [
    '3 no-such-yeast',
    'a jar that is not in the house',
    (h) => {
      h.house.jars = h.house.jars.filter(
        (jar) => !h.plan.brews.some((b) => b.source.kind === 'jar' && b.source.jar === jar.jar),
      );
    },
  ],
  [
    '3 harvest-of-nothing',
    'a harvest of a beer that is not brewed',
    (h) => {
      h.repitch().harvest.brew = 'Nothing';
    },
  ],
  [
    '3 harvest-twice',
    'a beer harvested twice',
    (h) => {
      h.plan.harvests.push(h.repitch().harvest);
    },
  ],
  [
    '3 circle',
    'yeast that comes out of itself',
    (h) => {
      const { brew, source } = h.repitch();
      source.brew = brew.brew;
    },
  ],
  [
    '3 past',
    'a draw on a day that is over',
    (h) => {
      h.plan.today = later(h.repitch().brew.day, 1);
    },
  ],
  [
    '3 order',
    'packs that nobody orders',
    (h) => {
      const { source } = h.placed((b) => b.source.kind === 'fresh' && b.source.orderOn !== null);
      if (source.kind === 'fresh') source.orderOn = null;
    },
  ],
  [
    '3 order-past',
    'an order before today',
    (h) => {
      const { source } = h.placed((b) => b.source.kind === 'fresh' && b.source.orderOn !== null);
      if (source.kind === 'fresh') source.orderOn = later(h.plan.today, -1);
    },
  ],
  [
    '3 order-lead',
    'a lead time longer than the plan grants',
    (h) => {
      h.house.orderLeadDays += 1;
    },
  ],
  [
    '3 order-late',
    'packs that come after the pitch',
    (h) => {
      const brew = h.placed((b) => b.source.kind === 'fresh' && b.source.orderOn !== null);
      if (brew.source.kind === 'fresh') brew.source.arrivesOn = later(brew.day, 1);
    },
  ],
];

const RULE_4: Row[] = [
  [
    '4 harvest-overdrawn',
    'draws above what a harvest likely gives',
    (h) => {
      const { harvest, source } = h.repitch();
      harvest.settledMl.likely = source.drawMl - 1;
    },
  ],
  [
    '4 jar-overdrawn',
    'a draw above what a jar holds',
    (h) => {
      for (const jar of h.house.jars) jar.settledMl = 1;
    },
  ],
  [
    '4 jar-opened-twice',
    'a jar opened for two pitches',
    (h) => {
      const opened = h.placed((b) => b.source.kind === 'jar');
      h.placed((b) => b.source.kind !== 'jar').source = structuredClone(opened.source);
    },
  ],
  [
    '4 jars-cut',
    'jars that do not hold the draw',
    (h) => {
      const { brew, harvest } = h.repitch();
      for (const jar of harvest.jars) if (jar.for === brew.brew) jar.ml -= 5;
    },
  ],
  [
    '4 jars-counted',
    'a jar more than is cut',
    (h) => {
      h.repitch().source.jars += 1;
    },
  ],
  [
    '4 jar-too-full',
    'more in a jar than it holds',
    (h) => {
      h.house.store.jarMl = 20;
    },
  ],
  [
    '4 jar-for-nobody',
    'a jar for a brew that draws elsewhere',
    (h) => {
      const jar = h.repitch().harvest.jars[0];
      if (jar) jar.for = h.placed((b) => b.source.kind === 'fresh').brew;
    },
  ],
  [
    '4 shelf',
    'more jars than the shelf holds',
    (h) => {
      h.house.store.maxJars = 0;
    },
  ],
  [
    '4 packs-on-hand',
    'packs on hand used more often than there are',
    (h) => {
      const { source } = h.placed((b) => b.source.kind === 'fresh' && b.source.packsFromHand === 0);
      if (source.kind === 'fresh') source.packsFromHand = source.packs;
    },
  ],
  [
    '4 packs',
    'no packs at all',
    (h) => {
      const { source } = h.placed((b) => b.source.kind === 'fresh');
      if (source.kind === 'fresh') source.packs = 0;
    },
  ],
  [
    '4 pitched-short',
    'fewer living cells than the brew needs',
    (h) => {
      h.placed(() => true).pitchedB *= 0.9;
    },
  ],
];

const RULE_11: Row[] = [
  [
    '11 vessels',
    'more starters than vessels',
    (h) => {
      h.house.starterGear.vessels = 0;
    },
  ],
  [
    '11 size',
    'a starter larger than its vessel',
    (h) => {
      h.house.starterGear.maxLitres = 0.1;
    },
  ],
  [
    '11 dry',
    'a starter from dry packs',
    (h) => {
      const brew = h.placed((b) => b.source.kind === 'fresh' && b.starter !== null);
      h.strain(brew.yeast).form = 'dry';
    },
  ],
  [
    '11 day',
    'a starter on an evening that is not free',
    (h) => {
      const starter = h.placed((b) => b.starter !== null).starter;
      if (starter) h.house.closed.push(starter.startOn);
    },
  ],
  [
    '11 past',
    'a starter begun before today',
    (h) => {
      const starter = h.placed((b) => b.starter !== null).starter;
      if (starter) h.plan.today = later(starter.startOn, 1);
    },
  ],
];

/** A day after a starter was begun, which is on record with so many times the litres of the plan. */
function begunYesterday(h: Hands, times: number): void {
  const { brew, yeast, source, starter } = h.placed((b) => b.starter !== null);
  if (starter === null) throw new Error('no starter');
  h.plan.today = later(starter.startOn, 1);
  h.facts.begun.push({ brew, day: starter.startOn, yeast, litres: starter.litres * times, source });
}

describe('a starter that is begun', () => {
  it('may have been begun before today', async () => {
    expect(await spoil('lantern-shed', (h) => begunYesterday(h, 1))).not.toContain('11 past');
  });

  it('12 begun: keeps its size', async () => {
    expect(await spoil('lantern-shed', (h) => begunYesterday(h, 1))).not.toContain('12 begun');
    expect(await spoil('lantern-shed', (h) => begunYesterday(h, 2))).toContain('12 begun');
  });
});

describe.each([
  ['3', RULE_3],
  ['4', RULE_4],
  ['11', RULE_11],
])('rule %s', (_, rows) => {
  it.each(rows)('%s: %s', async (rule, _what, by, season = 'lantern-shed') => {
    expect(await spoil(season, by)).toContain(rule);
  });
});
