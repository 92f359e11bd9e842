// The two shared seasons, planned: every kind of task appears, and each task fits the plan that it comes from.
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { NEEDED_FILES, readSeason } from '../../../api/folder/index.ts';
import {
  defaultToday,
  foldRecord,
  type House,
  type Plan,
  plan,
  resolveNews,
  TASK_KINDS,
  tasks,
} from '../../../planner/index.ts';
import { daysAfter } from '../../builders/plan.ts';

function season(name: string): House {
  const folder = fileURLToPath(new URL(`../../seasons/${name}/`, import.meta.url));
  const files = Object.fromEntries(NEEDED_FILES.map((file) => [file, readFileSync(folder + file)]));
  const { house } = readSeason(files);
  if (house === null) throw new Error(`the season ${name} does not read`);
  return house;
}

// A small budget: the tasks of any plan must be right, not only of a good one.
const SEASONS = ['lantern-shed', 'quay-seven', 'lantern-shed with a reserve'].map(
  (name): [string, House, Plan] => {
    const [folder = name, careful] = name.split(' with ');
    const plain = season(folder);
    const house = careful ? { ...plain, rules: { ...plain.rules, reserve: 1 } } : plain;
    return [name, house, plan({ house, today: defaultToday(house), steps: 3000 })];
  },
);

it('lantern-shed has every kind of task', () => {
  const [, house, planned] = SEASONS[0] ?? [];
  if (house === undefined || planned === undefined) throw new Error('no season');
  const kinds = new Set(tasks(planned, house).map((task) => task.kind));
  expect(kinds).toEqual(new Set(TASK_KINDS));
});

describe.each(SEASONS)('%s', (name, house, planned) => {
  const made = tasks(planned, house);

  it('gives each brew its brewing, packaging and cleaning, on the days of the plan', () => {
    for (const brew of planned.brews) {
      const day = (key: string) => made.find((task) => task.key === key)?.day;
      expect(day(`brew-pitch:${brew.brew}`)).toBe(brew.day);
      expect(day(`package:${brew.brew}`)).toBe(brew.emptiedOn);
      const cleaned = day(`clean:${brew.brew}`) ?? '';
      expect(cleaned >= brew.emptiedOn && cleaned <= brew.tankFreeOn).toBe(true);
      // the plan keeps the check off closed days, the task also off days without hands
      if (brew.checkOn !== null) {
        const checked = day(`check-jar:${brew.brew}`) ?? '';
        expect(checked >= planned.today && checked <= brew.checkOn).toBe(true);
      }
    }
  });

  it('harvests what it draws, and reads it before the first draw', () => {
    for (const harvest of planned.harvests) {
      if (harvest.jars.length === 0) continue;
      const read = made.find((task) => task.key === `read-volume:${harvest.brew}`);
      const draws = harvest.jars.filter((jar) => jar.for !== null).map((jar) => jar.leavesOn);
      const first = draws.sort()[0] ?? harvest.discardBy;
      expect(read !== undefined && read.day >= harvest.day && read.day <= first).toBe(true);
    }
  });

  it('asks for no handwork on closed days', () => {
    const closed = new Set(house.closed);
    expect(made.filter((task) => closed.has(task.day)).map((task) => task.key)).toEqual([]);
  });

  it('takes the season done task by task as the plan says, and undoes it again', () => {
    const today = daysAfter(planned.brews.at(-1)?.readyOn ?? house.to, 400);
    let record = foldRecord([]);
    for (const task of made) {
      const answer = resolveNews(
        { kind: 'task-done', task: task.key, day: task.day },
        record,
        house,
        planned,
        today,
      );
      // Brewing says that the yeast was taken out before; on one day a task may then be done already.
      if ('problems' in answer) {
        expect(answer.problems.map((problem) => problem.code)).toEqual(['news.already-done']);
        continue;
      }
      record = foldRecord([...record.entries, answer.entry]);
    }
    expect(record.facts.brewed.map((fact) => fact.brew).sort()).toEqual(
      planned.brews.map((brew) => brew.brew).sort(),
    );
    expect(record.facts.brewed.every((fact) => fact.emptiedOn !== null)).toBe(true);
    expect(tasks(planned, house, record.done).every((task) => task.done)).toBe(true);
    if (name !== 'lantern-shed') return; // the larger season would take its time and show nothing new
    for (let no = record.entries.length; no >= 1; no--) {
      const answer = resolveNews({ kind: 'undone', entry: no }, record, house, planned, today);
      if ('problems' in answer) throw new Error(answer.problems[0]?.message);
      record = foldRecord([...record.entries, answer.entry]);
    }
    expect({ ...record, entries: [] }).toEqual(foldRecord([]));
  });
});
