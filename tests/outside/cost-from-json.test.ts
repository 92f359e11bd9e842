// A plan's cost recomputed to the minor unit from its JSON, its house and docs/planner.md, sharing no code with the planner.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readFolder } from '../../api/folder/index.ts';
import {
  defaultToday,
  type House,
  type Plan,
  type PlannedSource,
  plan,
  replan,
} from '../../planner/index.ts';
import { seasons } from '../builders/random-season.ts';
import { twoBrews } from '../builders/two-brews.ts';
import { costByRule } from './cost/sum.ts';

async function season(name: string): Promise<House> {
  const { house } = await readFolder(new URL(`../seasons/${name}`, import.meta.url).pathname);
  if (!house) throw new Error(`${name} cannot be read`);
  return house;
}

/** The plan's own lines, summed by rule. */
function told(found: Plan): [string, number][] {
  const sums = new Map<string, number>();
  for (const line of found.costs) {
    sums.set(line.rule, (sums.get(line.rule) ?? 0) + line.amountMinor);
  }
  return [...sums].filter(([, minor]) => minor !== 0).sort();
}

/** Through JSON and back, as an outsider gets it. */
function hold(house: House, found: Plan, inForce: Plan | null = null): void {
  const read = JSON.parse(JSON.stringify(found)) as Plan;
  const again = costByRule(house, read, inForce);
  expect([...again].sort()).toEqual(told(found));
  const sum = [...again.values()].reduce((a, b) => a + b, 0);
  expect(sum).toBe(found.totals.costMinor);
}

test.each(['lantern-shed', 'quay-seven'])('%s', async (name) => {
  const house = await season(name);
  hold(house, plan({ house, today: defaultToday(house), steps: 4000 }));
});

test.each([3, 14])('with %i slack days', async (slackDays) => {
  const house = await season('lantern-shed');
  const steady = { ...house, rules: { ...house.rules, slackDays } };
  const found = plan({ house: steady, today: defaultToday(house), steps: 4000 });
  const rules = new Set(found.costs.map(({ rule }) => rule));
  expect([...rules]).toEqual(expect.arrayContaining(['no-slack', 'thin-yeast', 'thin-harvest']));
  hold(steady, found);
});

test.each(['lantern-shed', 'quay-seven'])('%s with a reserve asked for', async (name) => {
  const house = await season(name);
  const careful = { ...house, rules: { ...house.rules, reserve: 1, slackDays: 3 } };
  const found = plan({ house: careful, today: defaultToday(house), steps: 2000 });
  const reserves = found.harvests.flatMap(({ jars }) => jars.filter((jar) => jar.untilPassed));
  expect(reserves.length).toBeGreaterThan(2);
  hold(careful, found);
});

test('random seasons', () => {
  fc.assert(
    fc.property(seasons, fc.nat({ max: 999 }), (house, seed) => {
      hold(house, plan({ house, today: '2027-02-25', steps: 300, seed }));
    }),
    { numRuns: 25, seed: 20270303 },
  );
});

/** A source as a fact keeps it. */
function drawn(source: Exclude<PlannedSource, { kind: 'fresh' }>) {
  return source.kind === 'jar'
    ? { kind: source.kind, jar: source.jar, drawMl: source.drawMl }
    : { kind: source.kind, brew: source.brew, drawMl: source.drawMl };
}

test('a re-plan, with what it moved and pitched from elsewhere', () => {
  const two = twoBrews();
  const house = {
    ...two,
    weights: { moved: 3.7, 'source-changed': 1.3 },
    brews: two.brews.map((row) => ({ ...row, brewOn: null, readyBy: '2027-04-10' })),
  };
  const inForce = plan({ house, today: '2027-02-01', steps: 800 });
  const facts = { notBefore: [{ brew: 'First', day: '2027-04-03' }] };
  const { plan: after } = replan({ house, today: '2027-02-20', inForce, facts, steps: 800 });
  expect(after.costs.some((line) => line.rule === 'moved' && line.amountMinor > 0)).toBe(true);
  hold(house, after, inForce);
});

test('a season under way: brewed brews cost no more, harvests taken are no more work', async () => {
  const house = await season('lantern-shed');
  const inForce = plan({ house, today: defaultToday(house), steps: 2000 });
  const today = inForce.brews[6]?.day ?? '';
  const past = inForce.brews.filter((brew) => brew.day < today);
  const facts = {
    brewed: past.map((brew) => ({
      brew: brew.brew,
      day: brew.day,
      tank: brew.tank,
      yeast: brew.yeast,
      source:
        brew.source.kind === 'fresh'
          ? { kind: 'fresh' as const, packs: brew.source.packs }
          : drawn(brew.source),
      starterLitres: brew.starter?.litres ?? 0,
      generation: brew.generation,
      pitchedB: brew.pitchedB,
    })),
    // three quarters of what was expected came
    harvested: inForce.harvests
      .filter((harvest) => harvest.day < today)
      .map(({ brew, day, settledMl }) => ({ brew, day, settledMl: 0.75 * settledMl.likely })),
  };
  expect(facts.brewed.length).toBeGreaterThan(3);
  expect(facts.harvested.length).toBeGreaterThan(0);
  const { plan: after } = replan({ house, today, inForce, facts, steps: 2000 });
  expect(after.brews.filter((brew) => brew.done)).toHaveLength(facts.brewed.length);
  hold(house, after, inForce);
});
