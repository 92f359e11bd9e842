// Plans of houses that ask for a reserve against what the second checker makes of them, and copies with one thing spoilt.
import { describe, expect, it } from 'vitest';
import {
  defaultToday,
  type Facts,
  type House,
  type Plan,
  plan,
  replan,
} from '../../planner/index.ts';
import { goodPlan, later, the } from './good-plan.ts';
import { checkPlan } from './index.ts';
import { randomHouse } from './random-house.ts';

const careful = (house: House): House => ({ ...house, rules: { ...house.rules, reserve: 1 } });
const reserves = (made: Plan) =>
  made.harvests.flatMap((harvest) =>
    harvest.jars.flatMap((jar) => (jar.untilPassed === undefined ? [] : [{ harvest, jar }])),
  );

async function season(name: 'lantern-shed' | 'quay-seven') {
  const house = careful((await goodPlan(name)).house);
  return { house, made: plan({ house, today: defaultToday(house), steps: 800, seed: 3 }) };
}

describe('with a reserve asked for', () => {
  it.each(['lantern-shed', 'quay-seven'] as const)('%s keeps some and is sound', async (name) => {
    const { house, made } = await season(name);
    expect(made.totals.hard).toBe(0);
    expect(reserves(made).length).toBeGreaterThan(1);
    expect(checkPlan(house, made)).toEqual([]);
  });

  it('says of which harvests too little is left', async () => {
    const { house, made } = await season('lantern-shed');
    const fed = new Set(
      made.brews.flatMap(({ source }) => (source.kind === 'harvest' ? [source.brew] : [])),
    );
    const without = [...fed].filter(
      (brew) => !reserves(made).some(({ harvest }) => harvest.brew === brew),
    );
    const note = made.notes.find((says) => says.startsWith('No reserve is kept of')) ?? '';
    for (const brew of without) expect(note).toContain(brew);
    expect(note === '').toBe(without.length === 0);
    expect(
      plan({ house: { ...house, rules: {} }, today: made.today, steps: 10 }).notes.join(' '),
    ).not.toContain('No reserve');
  });

  it.each(Array.from({ length: 15 }, (_, at) => at + 1))('season %i by chance', (seed) => {
    const house = careful(randomHouse(seed));
    const made = plan({ house, today: defaultToday(house), steps: 300, seed: 1 });
    if (made.totals.hard === 0) expect(checkPlan(house, made)).toEqual([]);
    else expect(checkPlan(house, made).length).toBeGreaterThan(0);
  });
});

describe('one thing spoilt', () => {
  it.each<[string, (made: Plan, house: House) => void]>([
    [
      'amounts reserve-missing',
      (made) => {
        for (const harvest of made.harvests)
          harvest.jars = harvest.jars.filter((jar) => jar.untilPassed === undefined);
      },
    ],
    ['amounts reserve-too-many', (_made, house) => Object.assign(house.rules, { reserve: 0 })],
    [
      'amounts reserve-ml',
      (made) => {
        for (const { jar } of reserves(made)) jar.ml *= 0.9;
      },
    ],
    [
      'dates reserve-leaves',
      (made) => {
        for (const { jar } of reserves(made)) jar.leavesOn = later(jar.leavesOn, -1);
      },
    ],
    [
      'amounts reserve-beer',
      (made) => {
        for (const { jar, harvest } of reserves(made)) jar.untilPassed = harvest.brew;
      },
    ],
  ])('%s', async (rule, spoil) => {
    const { house, made } = await season('lantern-shed');
    spoil(made, house);
    expect(checkPlan(house, made).map((found) => found.rule)).toContain(rule);
  });
});

it('is kept in a season under way until its beer is passed, and not after', async () => {
  const { house, made } = await season('lantern-shed');
  const one = the(reserves(made), ({ harvest, jar }) => jar.leavesOn < harvest.discardBy);
  const beer = one.jar.untilPassed ?? '';
  const today = one.jar.leavesOn;
  const facts: Facts = {
    brewed: made.brews
      .filter(({ day }) => day < today)
      .map(({ brew, day, tank, yeast, source, starter, generation, pitchedB, emptiedOn }) => ({
        brew,
        day,
        tank,
        yeast,
        source:
          source.kind === 'fresh'
            ? { kind: source.kind, packs: source.packs, packsFromHand: source.packsFromHand }
            : source.kind === 'jar'
              ? { kind: source.kind, jar: source.jar, drawMl: source.drawMl }
              : { kind: source.kind, brew: source.brew, drawMl: source.drawMl },
        starterLitres: starter?.litres ?? 0,
        generation,
        pitchedB,
        emptiedOn: emptiedOn < today ? emptiedOn : null,
        state: 'sound' as const,
      })),
    harvested: made.harvests
      .filter(({ day }) => day < today)
      .map(({ brew, day, settledMl }) => ({
        brew,
        day,
        settledMl: settledMl.likely,
        state: 'sound' as const,
      })),
    notBefore: [],
    begun: [],
    bought: [],
    goneJars: [],
    measured: [],
    passed: [],
    lostPacks: [],
  };
  const ask = (told: Facts) =>
    replan({ house, today, inForce: made, facts: told, steps: 300 }).plan;
  const before = ask(facts);
  const kept = (after: Plan) =>
    reserves(after).find(({ harvest }) => harvest.brew === one.harvest.brew)?.jar;
  expect(kept(before)).toMatchObject({ untilPassed: beer, leavesOn: later(today, 1) });
  const told = { ...facts, passed: [{ brew: beer, day: today }] };
  const after = ask(told);
  expect(kept(after)).toBeUndefined();
  for (const [found, known] of [
    [before, facts],
    [after, told],
  ] as const) {
    const rules = checkPlan(house, found, known).map(({ rule }) => rule);
    expect(rules.filter((rule) => rule.includes('reserve'))).toEqual([]);
  }
});
