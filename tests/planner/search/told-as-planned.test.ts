// A season that goes exactly as planned, told day by day: the plan must still stand, with nothing to mend.
import { beforeAll, describe, expect, it } from 'vitest';
import { readFolder } from '../../../api/folder/index.ts';
import {
  defaultToday,
  foldRecord,
  type House,
  type Plan,
  plan,
  type RecordEntry,
  replan,
  resolveNews,
  tasks,
} from '../../../planner/index.ts';
import { findings } from '../../../planner/report/index.ts';
import { Judge } from '../../../planner/search/score.ts';
import { standingPlan } from '../../../planner/search/standing.ts';
import { isoDay } from '../../../planner/timeline/calendar.ts';
import { compile } from '../../../planner/timeline/problem.ts';

/** Ticks every task up to a day, each on its own day, but for kinds that people forget. */
function tell(house: House, made: Plan, until: string, forgets: readonly string[]) {
  const entries: RecordEntry[] = [];
  for (const task of tasks(made, house)) {
    if (task.day > until || forgets.includes(task.kind)) continue;
    const news = { kind: 'task-done' as const, task: task.key, day: task.day };
    const told = resolveNews(news, foldRecord(entries), house, made, until);
    // some tasks are done by what was told before: a harvest is read, a jar is out
    if ('entry' in told) entries.push(told.entry);
  }
  return foldRecord(entries);
}

describe.each(['lantern-shed', 'quay-seven'])('%s', (name) => {
  let house: House;
  let made: Plan;
  beforeAll(async () => {
    const read = await readFolder(new URL(`../../seasons/${name}`, import.meta.url).pathname);
    if (!read.house) throw new Error(`${name} cannot be read`);
    house = read.house;
    made = plan({ house, today: defaultToday(house), steps: 4000, seed: 3 });
    expect(made.totals.hard).toBe(0);
  });

  const days = [0.15, 0.4, 0.7];
  describe.each([
    ['everything', []],
    ['everything but packaging', ['package']],
    ['everything but cleaning and dry hops', ['clean', 'dry-hop']],
  ] as const)('telling %s', (_what, forgets) => {
    it.each(days)('after %d of the brews the plan stands as it was', (share) => {
      const until = made.brews[Math.floor(made.brews.length * share)]?.day ?? made.today;
      const state = tell(house, made, until, forgets);
      expect(state.facts.brewed.length).toBeGreaterThan(0);
      const problem = compile(house, until, state.facts, state.pins, made);
      const t = standingPlan(problem, made);
      const broken = findings(new Judge(problem), t);
      // a beer that nobody has emptied by its day is still in its tank: only that may be in the way
      const tolerated = forgets.includes('package' as never) ? ['tank-conflict'] : [];
      expect(broken.filter((one) => !tolerated.includes(one.rule)).map((one) => one.says)).toEqual(
        [],
      );
      for (const was of made.brews) {
        const b = problem.brews.findIndex((brew) => brew.name === was.brew);
        expect(isoDay(t.day[b] ?? 0), was.brew).toBe(was.day);
        const crop = made.harvests.find((one) => one.brew === was.brew);
        if (crop && forgets.length === 0)
          expect(isoDay(t.harvestDay[b] ?? 0), was.brew).toBe(crop.day);
      }
    });
  });

  it('never buys again what was ordered, and never uses a pack twice', () => {
    const until = made.brews[Math.floor(made.brews.length / 2)]?.day ?? made.today;
    const { facts, pins } = tell(house, made, until, []);
    const ordered = facts.bought.reduce((sum, line) => sum + line.packs, 0);
    expect(ordered).toBeGreaterThan(0);
    const asked = { house, today: until, facts, pins, inForce: made, steps: 500 };
    const { plan: next, changes } = replan(asked);
    const used = facts.brewed.reduce(
      (sum, one) => sum + (one.source.kind === 'fresh' ? one.source.packs : 0),
      0,
    );
    const stillThere =
      house.yeasts.reduce((sum, yeast) => sum + yeast.packsOnHand, 0) + ordered - used;
    const fromHand = next.brews.reduce(
      (sum, brew) =>
        sum + (!brew.done && brew.source.kind === 'fresh' ? brew.source.packsFromHand : 0),
      0,
    );
    expect(fromHand).toBeLessThanOrEqual(stillThere);
    const later = made.orders.filter((order) => order.orderOn > until);
    const packs = (orders: Plan['orders']) =>
      orders.reduce(
        (sum, order) => sum + order.lines.reduce((all, line) => all + line.packs, 0),
        0,
      );
    // before anything is moved, what is still ordered is what was planned to be
    expect(changes.before.packs).toBe(packs(later));
  });

  it('chills no beer before it has fermented, nor before its dry hop', () => {
    for (const brew of made.brews) {
      if (brew.crashOn === null) continue;
      expect(brew.crashOn > brew.day, brew.brew).toBe(true);
      if (brew.dryHopOn) expect(brew.crashOn >= brew.dryHopOn, brew.brew).toBe(true);
      const drawn = made.harvests.some((one) => one.brew === brew.brew);
      if (!drawn) {
        const before = new Date(`${brew.emptiedOn}T00:00Z`).getTime() - 2 * 86_400_000;
        expect(brew.crashOn, brew.brew).toBe(new Date(before).toISOString().slice(0, 10));
      }
    }
  });

  it('puts cleaning after packaging and harvest on the same day', () => {
    const all = tasks(made, house);
    for (const [i, task] of all.entries()) {
      if (task.kind !== 'clean') continue;
      const later = all
        .slice(i + 1)
        .filter((one) => one.day === task.day && one.brew === task.brew);
      expect(
        later.filter((one) => ['package', 'harvest'].includes(one.kind)).map((one) => one.key),
      ).toEqual([]);
    }
  });
});
