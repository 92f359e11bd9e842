// A good plan, one thing spoilt, and the rule that has to be found broken: brew days and tanks.
import { describe, expect, it } from 'vitest';
import { type Hands, later, type Row, spoil } from './good-plan.ts';

const wait = (brew: Hands['plan']['brews'][number], days: number) => {
  brew.day = later(brew.day, days);
};

const RULE_1: Row[] = [
  [
    '1 brew-day',
    'a brew on a Monday',
    (h) => {
      const brew = h.placed(() => true);
      while (new Date(brew.day).getUTCDay() !== 1) wait(brew, 1);
      for (const turn of brew.kettle) turn.day = brew.day;
    },
  ],
  [
    '1 brew-day',
    'a brew on a closed day',
    (h) => {
      h.house.closed.push(h.placed(() => true).day);
    },
  ],
  [
    '1 season',
    'a season that begins a day later',
    (h) => {
      h.house.from = later(h.placed(() => true).day, 1);
    },
  ],
  [
    '1 season',
    'a season that ends before the last turn',
    (h) => {
      h.house.to = later(
        h.plan.brews
          .map((brew) => brew.day)
          .sort()
          .at(-1) ?? '',
        -1,
      );
    },
  ],
  [
    '1 turns-a-day',
    'two brews on the one turn of a day',
    (h) => {
      const [first, second] = h.plan.brews;
      if (first && second) second.kettle = [{ day: first.day, turns: 1 }];
    },
  ],
  [
    '1 turns',
    'a brew above the brew length in one turn',
    (h) => {
      h.house.brewLengthL = 12;
    },
  ],
  [
    '1 first-turn',
    'a brew pitched the day after its first turn',
    (h) =>
      wait(
        h.placed(() => true),
        1,
      ),
  ],
  [
    '1 consecutive',
    'turns a fortnight apart',
    (h) => {
      const brew = h.placed((b) => b.kettle.reduce((sum, turn) => sum + turn.turns, 0) > 1);
      brew.kettle = [
        { day: brew.day, turns: 1 },
        { day: later(brew.day, 14), turns: 1 },
      ];
    },
    'quay-seven',
  ],
  [
    '1 window',
    'a brew before its first possible day',
    (h) => {
      const brew = h.placed(() => true);
      h.recipe(brew.brew).notBefore = later(brew.day, 1);
    },
  ],
  [
    '1 window',
    'a brew that slipped and is brewed before',
    (h) => {
      const brew = h.placed(() => true);
      h.facts.notBefore.push({ brew: brew.brew, day: later(brew.day, 1) });
    },
  ],
  [
    '1 past',
    'a brew on a day that is over',
    (h) => {
      h.plan.today = later(h.placed(() => true).day, 1);
    },
  ],
  [
    '1 fixed-day',
    'a brew that is not on its fixed day',
    (h) => {
      const brew = h.placed(() => true);
      h.recipe(brew.brew).brewOn = later(brew.day, 7);
    },
  ],
  [
    '1 too-late',
    'a beer one day later than the limit',
    (h) => {
      const brew = h.placed(() => true);
      // A home brewery's limit: 28 days.
      h.recipe(brew.brew).readyBy = later(brew.readyOn, -29);
    },
  ],
];

const RULE_2: Row[] = [
  [
    '2 one-at-a-time',
    'two brews in a tank at once',
    (h) => {
      const [first, second] = h.plan.brews;
      if (first && second) second.tank = first.tank;
      if (first && second) second.day = first.day;
    },
  ],
  [
    '2 one-at-a-time',
    'a turnaround too long for the next brew',
    (h) => {
      for (const tank of h.house.tanks) tank.turnaroundDays = 60;
    },
  ],
  [
    '2 one-at-a-time',
    'a wild strain that doubles the turnaround',
    (h) => {
      // The gap to the next brew in a tank, where it is longer than nothing, just holds one turnaround.
      const tank = h.tank(h.placed(() => true).tank);
      const there = h.plan.brews.filter((b) => b.tank === tank.tank);
      const gaps = there.slice(1).map((b, at) => {
        const before = there[at];
        return before === undefined
          ? 0
          : Math.round(Date.parse(b.day) - Date.parse(before.emptiedOn)) / 86_400_000;
      });
      tank.turnaroundDays = Math.max(1, Math.min(...gaps));
      for (const yeast of h.house.yeasts) yeast.nature = 'wild';
    },
  ],
  [
    '2 tank',
    'a tank that is not there',
    (h) => {
      h.placed(() => true).tank = 'The bathtub';
    },
  ],
  [
    '2 fill',
    'a tank too small',
    (h) => {
      h.tank(h.placed(() => true).tank).maxFillL = 14;
    },
  ],
  [
    '2 fill',
    'a tank too large',
    (h) => {
      h.tank(h.placed(() => true).tank).minFillL = 20.5;
    },
  ],
  [
    '2 temperature',
    'a tank that cannot be so cold',
    (h) => {
      const brew = h.placed((b) => h.recipe(b.brew).fermentC < 14);
      h.tank(brew.tank).minC = 14;
    },
  ],
  [
    '2 temperature',
    'a tank that cannot be so warm',
    (h) => {
      h.tank(h.placed(() => true).tank).maxC = 5;
    },
  ],
  [
    '2 out-of-use',
    'a tank under repair',
    (h) => {
      const brew = h.placed(() => true);
      h.tank(brew.tank).outOfUse.push({ from: later(brew.day, 3), to: later(brew.day, 4) });
    },
  ],
  [
    '2 conditioning',
    'no room to condition',
    (h) => {
      h.house.conditioningRoomL = 19;
    },
  ],
];

describe.each([
  ['1', RULE_1],
  ['2', RULE_2],
])('rule %s', (_, rows) => {
  it.each(rows)('%s: %s', async (rule, _what, by, season = 'lantern-shed') => {
    expect(await spoil(season, by)).toContain(rule);
  });
});
