// A good plan, one thing spoilt, and what has to be found wrong: dates, amounts and book-keeping.
import { describe, expect, it } from 'vitest';
import { later, type Row, spoil } from './good-plan.ts';

const DATES: Row[] = [
  [
    'dates emptied',
    'a tank emptied a day early',
    (h) => {
      const brew = h.placed(() => true);
      brew.emptiedOn = later(brew.emptiedOn, -1);
    },
  ],
  [
    'dates emptied',
    'the work day of an emptying closed',
    (h) => {
      h.house.closed.push(h.placed(() => true).emptiedOn);
    },
  ],
  [
    'dates tank-free',
    'a tank free a day early',
    (h) => {
      const brew = h.placed(() => true);
      brew.tankFreeOn = later(brew.tankFreeOn, -1);
    },
  ],
  [
    'dates tank-free',
    'the turnaround of a diastatic strain not doubled',
    (h) => {
      h.strain(h.placed(() => true).yeast).nature = 'diastatic';
    },
  ],
  [
    'dates ready',
    'a beer ready early',
    (h) => {
      const brew = h.placed(() => true);
      brew.readyOn = later(brew.readyOn, -1);
    },
  ],
  [
    'dates late',
    'days late not counted',
    (h) => {
      h.placed((b) => b.daysLate > 0).daysLate = 0;
    },
  ],
  [
    'dates dry-hop',
    'a dry hop on another day',
    (h) => {
      const brew = h.placed((b) => b.dryHopOn !== null);
      brew.dryHopOn = brew.day;
    },
  ],
  [
    'dates crash',
    'a crash after the beer is gone',
    (h) => {
      const brew = h.placed((b) => b.crashOn !== null);
      brew.crashOn = later(brew.emptiedOn, 1);
    },
  ],
  [
    'dates crash-tank',
    'a crash in a tank that is not able',
    (h) => {
      h.tank(h.placed((b) => b.crashOn !== null).tank).minC = 6;
    },
  ],
  [
    'dates crash-before-harvest',
    'a crash that ends after the harvest',
    (h) => {
      const { parent, harvest } = h.repitch(
        (b) => b.source.kind === 'harvest' && h.harvest(b.source.brew).crashed,
      );
      parent.crashOn = harvest.day;
    },
  ],
  [
    'dates harvest-work-day',
    'a harvest on a closed day',
    (h) => {
      h.house.closed.push(h.repitch().harvest.day);
    },
  ],
  [
    'dates harvest-past',
    'a harvest on a day that is over',
    (h) => {
      h.plan.today = later(h.repitch().harvest.day, 1);
    },
  ],
  [
    'dates harvest-at-emptying',
    'a harvest from below in a tank without an outlet',
    (h) => {
      const { parent, harvest } = h.repitch();
      h.tank(parent.tank).bottomOutlet = false;
      harvest.day = later(parent.emptiedOn, -3);
    },
  ],
  [
    'dates harvest-late',
    'a harvest from a tank that is empty',
    (h) => {
      const { parent, harvest } = h.repitch();
      h.tank(parent.tank).bottomOutlet = true;
      harvest.day = later(parent.emptiedOn, 1);
    },
  ],
  [
    'dates harvest-early',
    'a harvest before the crop of its kind',
    (h) => {
      const { parent, harvest, recipe } = h.repitch();
      h.tank(parent.tank).bottomOutlet = true;
      recipe.harvestDay = null;
      harvest.day = later(parent.day, 4);
    },
  ],
  [
    'dates harvest-early',
    'a harvest before the brew’s own day',
    (h) => {
      const { parent, harvest, recipe } = h.repitch();
      h.tank(parent.tank).bottomOutlet = true;
      recipe.harvestDay = 10;
      harvest.day = later(parent.day, 9);
    },
  ],
  [
    'dates usable-from',
    'slurry called settled too early',
    (h) => {
      const { harvest } = h.repitch();
      harvest.usableFrom = harvest.day;
    },
  ],
  [
    'dates age',
    'slurry called younger than it is',
    (h) => {
      h.repitch().source.ageDays -= 1;
    },
  ],
  [
    'dates harvested-on',
    'another harvest day at the pitch',
    (h) => {
      const { source } = h.repitch();
      source.harvestedOn = later(source.harvestedOn, 1);
    },
  ],
  [
    'dates jar-leaves',
    'a jar that leaves before its draw',
    (h) => {
      const { brew, harvest } = h.repitch();
      for (const jar of harvest.jars)
        if (jar.for === brew.brew) jar.leavesOn = later(jar.leavesOn, -1);
    },
  ],
  [
    'dates shelf-leaves',
    'a jar of the shelf that leaves before its draw',
    (h) => {
      for (const jar of h.plan.shelf) jar.leavesOn = later(jar.leavesOn, -1);
    },
  ],
  [
    'dates check',
    'slurry checked after it is pitched',
    (h) => {
      const { brew } = h.repitch();
      brew.checkOn = later(brew.day, 1);
    },
  ],
  [
    'dates check',
    'slurry that is never checked',
    (h) => {
      h.repitch().brew.checkOn = null;
    },
  ],
  [
    'dates check-closed',
    'slurry checked on a closed day',
    (h) => {
      h.house.closed.push(h.repitch().brew.checkOn ?? '');
    },
  ],
  [
    'dates fallback',
    'a fallback decided too late to be ordered',
    (h) => {
      const { brew } = h.repitch();
      brew.fallback = {
        kind: 'order',
        decideBy: later(brew.day, -h.house.orderLeadDays + 1),
        says: '',
      };
    },
  ],
  [
    'dates pack-age',
    'packs called younger than they are',
    (h) => {
      const { source } = h.placed((b) => b.source.kind === 'fresh');
      if (source.kind === 'fresh') source.packAgeDays -= 1;
    },
  ],
  [
    'dates pack-made',
    'packs that arrive fresher than assumed',
    (h) => {
      h.house.packAgeOnArrivalDays += 1;
    },
  ],
  [
    'dates order',
    'an order on another day than its brew says',
    (h) => {
      const order = h.plan.orders[0];
      if (order) order.orderOn = later(order.orderOn, -1);
    },
  ],
  [
    'dates starter-grows',
    'a starter of three days',
    (h) => {
      const { starter } = h.placed((b) => b.starter !== null);
      if (starter) starter.growDays = 3;
    },
  ],
  [
    'dates starter-days',
    'a starter begun on brew day',
    (h) => {
      const brew = h.placed((b) => b.starter !== null);
      if (brew.starter) brew.starter.startOn = brew.day;
    },
  ],
  [
    'dates starter-decant',
    'a large starter pitched whole',
    (h) => {
      const { starter } = h.placed((b) => b.starter !== null && b.starter.chillOn !== null);
      if (starter) starter.chillOn = null;
    },
  ],
];

const AMOUNTS: Row[] = [
  [
    'amounts need',
    'a need two per cent too small',
    (h) => {
      h.placed(() => true).needB *= 0.98;
    },
  ],
  [
    'amounts draw',
    'a draw two per cent too large',
    (h) => {
      h.repitch().source.drawMl *= 1.02;
    },
  ],
  [
    'amounts density',
    'slurry denser than it is',
    (h) => {
      const { brew, source } = h.repitch();
      if (brew.densityBPerMl) brew.densityBPerMl.likely *= 1.1;
      source.drawMl /= 1.1;
    },
  ],
  [
    'amounts viability',
    'yeast more alive than storage leaves it',
    (h) => {
      h.repitch().brew.viability.likely = 0.999;
    },
  ],
  [
    'amounts crop-viability',
    'a crop more alive than beer leaves it',
    (h) => {
      h.repitch().harvest.cropViability.likely = 1;
    },
  ],
  [
    'amounts crop',
    'a harvest of more cells than grow',
    (h) => {
      h.repitch().harvest.cellsB *= 1.02;
    },
  ],
  [
    'amounts settled',
    'a harvest of more mL than its cells fill',
    (h) => {
      h.repitch().harvest.settledMl.likely *= 1.02;
    },
  ],
  [
    'amounts packs-hold',
    'packs of more cells than they hold',
    (h) => {
      const brew = h.placed((b) => b.source.kind === 'fresh');
      h.strain(brew.yeast).packCellsB *= 0.9;
    },
  ],
  [
    'amounts starter-gives',
    'a pitch of more than its starter gives',
    (h) => {
      h.placed((b) => b.starter !== null).pitchedB *= 1.02;
    },
  ],
  [
    'amounts starter-growth',
    'a starter that grows on nothing',
    (h) => {
      const { starter } = h.placed((b) => b.starter !== null);
      if (starter) starter.litres /= 4;
    },
  ],
  [
    'amounts starter-extract',
    'a starter with too little extract',
    (h) => {
      const { starter } = h.placed((b) => b.starter !== null);
      if (starter) starter.extractG /= 2;
    },
  ],
  [
    'amounts starter-seed',
    'a starter begun with too little',
    (h) => {
      const { starter } = h.placed((b) => b.starter !== null);
      if (starter) starter.initialB = starter.finalB * 0.1;
    },
  ],
];

const SUMS: Row[] = [
  [
    'sums placed-or-left-out',
    'a brew that is nowhere',
    (h) => {
      h.plan.brews.pop();
    },
  ],
  [
    'sums placed-or-left-out',
    'a brew placed and left out',
    (h) => {
      const { brew } = h.placed(() => true);
      h.plan.leftOut.push({ brew, priority: 1, blockedBy: [], nearestDay: null, wayOut: '' });
    },
  ],
  [
    '1 fixed-day',
    'a brew with a fixed day left out',
    (h) => {
      const { brew, day } = h.placed(() => true);
      h.recipe(brew).brewOn = day;
      h.plan.leftOut.push({ brew, priority: 1, blockedBy: [], nearestDay: null, wayOut: '' });
    },
  ],
  [
    'sums unknown-brew',
    'a brew that the house does not know',
    (h) => {
      h.placed(() => true).brew = 'Nothing';
    },
  ],
  ...(['cash', 'work', 'risk'] as const).map(
    (part): Row => [
      `sums ${part}`,
      `a line of ${part} left out of its total`,
      (h) => {
        const at = h.plan.costs.findIndex((line) => line.part === part && line.amountMinor !== 0);
        h.plan.costs.splice(at, 1);
      },
    ],
  ),
  [
    'sums cost',
    'a cost that is not the sum of its parts',
    (h) => {
      h.plan.totals.costMinor -= 1;
    },
  ],
  [
    'sums hard',
    'a broken rule not counted',
    (h) => {
      h.plan.totals.hard += 1;
    },
  ],
  [
    'sums leftOut',
    'a brew left out and not counted',
    (h) => {
      h.plan.totals.leftOut += 1;
    },
  ],
  [
    'sums leftOutPriority',
    'a priority not counted',
    (h) => {
      h.plan.totals.leftOutPriority += 1;
    },
  ],
  [
    'sums lateDays',
    'late days not counted',
    (h) => {
      h.plan.totals.lateDays += 1;
    },
  ],
  [
    'sums packs',
    'a pack not counted',
    (h) => {
      h.plan.totals.packs += 1;
    },
  ],
  [
    'sums deliveries',
    'a delivery not counted',
    (h) => {
      h.plan.totals.deliveries += 1;
    },
  ],
  [
    'sums status',
    'a whole plan called broken',
    (h) => {
      h.plan.status = 'broken';
    },
  ],
  [
    'sums delivery',
    'a delivery for nothing',
    (h) => {
      h.house.deliveryCost += 1;
    },
  ],
  [
    'sums order-price',
    'packs at another price',
    (h) => {
      for (const yeast of h.house.yeasts) yeast.packPrice += 1;
    },
  ],
  [
    'sums order',
    'a pack more ordered than is used',
    (h) => {
      const line = h.plan.orders[0]?.lines[0];
      if (line) line.packs += 1;
    },
  ],
  [
    'sums ordered-for',
    'an order for nobody',
    (h) => {
      const line = h.plan.orders[0]?.lines[0];
      if (line) line.for = [];
    },
  ],
  [
    'sums shelf',
    'a jar that the plan does not mention',
    (h) => {
      h.plan.shelf = [];
    },
  ],
  [
    'sums shelf-use',
    'a jar shown as unused',
    (h) => {
      for (const jar of h.plan.shelf) jar.usedFor = null;
    },
  ],
];

describe.each([
  ['dates', DATES],
  ['amounts', AMOUNTS],
  ['sums', SUMS],
])('%s', (_, rows) => {
  it.each(rows)('%s: %s', async (rule, _what, by, season = 'lantern-shed') => {
    expect(await spoil(season, by)).toContain(rule);
  });
});
