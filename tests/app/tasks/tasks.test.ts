// The task list: groups by day, what a tick tells, and how it is taken back.
import { describe, expect, it } from 'vitest';
import { groupTasks } from '../../../app/pages/tasks/groups.ts';
import {
  dayDone,
  doneNews,
  expectedMl,
  figureOf,
  measuredNews,
  slipDays,
} from '../../../app/pages/tasks/telling.ts';
import { entryOfTask, newsWords, standing } from '../../../app/pages/tasks/told.ts';
import type { TaskRow } from '../../../app/queries/tasks.ts';
import { News, tasks } from '../../../planner/index.ts';
import { aHouse, aPlan } from '../../builders/plan.ts';

const TODAY = '2027-01-09';
const rows: TaskRow[] = tasks(aPlan(), aHouse()).map((task) => ({ ...task, uid: task.key }));

function row(key: string): TaskRow {
  const found = rows.find((task) => task.key === key);
  if (!found) throw new Error(`no task ${key}`);
  return found;
}

describe('groups', () => {
  it('splits at yesterday, today, seven days ahead and later', () => {
    const days = ['2027-01-08', TODAY, '2027-01-10', '2027-01-16', '2027-01-17'];
    const made = days.map((day, at) => ({ ...row('brew-pitch:Millrace'), key: String(at), day }));
    const groups = groupTasks(made, TODAY);
    const keys = (list: { tasks: TaskRow[] }[]) =>
      list.flatMap((day) => day.tasks.map((task) => task.key));
    expect(keys(groups.overdue)).toEqual(['0']);
    expect(keys(groups.today)).toEqual(['1']);
    expect(keys(groups.soon)).toEqual(['2', '3']);
    expect(keys(groups.later)).toEqual(['4']);
  });

  it('keeps what was done today in sight, and what was done before out of it', () => {
    const done = { ...row('brew-pitch:Millrace'), done: true };
    const groups = groupTasks([{ ...done, day: '2027-01-08' }, done], TODAY);
    expect(groups.overdue).toEqual([]);
    expect(groups.today[0]?.tasks).toEqual([done]);
  });
});

describe('telling', () => {
  it('says that a task ticked late was done on its day, one ticked early today', () => {
    const task = row('brew-pitch:Millrace');
    expect(dayDone(task, '2027-01-12')).toBe('2027-01-09');
    expect(dayDone(task, '2027-01-05')).toBe('2027-01-05');
    expect(News.safeParse(doneNews(task, TODAY)).success).toBe(true);
  });

  it('asks for a figure where one can be measured', () => {
    expect(figureOf(row('harvest:Millrace'))).toBe('settled');
    expect(figureOf(row('brew-pitch:Quill'))).toBe('drawn');
    expect(figureOf(row('package:Millrace'))).toBeNull();
    // Quill draws 184 mL; Millrace is pitched from a pack and has no mL to tell.
    expect(expectedMl(row('brew-pitch:Quill'), aPlan())).toBe(184);
    expect(expectedMl(row('brew-pitch:Millrace'), aPlan())).toBeNull();
    expect(expectedMl(row('harvest:Millrace'), aPlan())).toBe(288);
  });

  it('turns figures into news that the record takes', () => {
    const harvest = measuredNews(row('harvest:Millrace'), '2027-01-23', 150);
    expect(News.parse(harvest)).toEqual({
      kind: 'harvested',
      brew: 'Millrace',
      day: '2027-01-23',
      settledMl: 150,
    });
    const pitched = measuredNews(row('brew-pitch:Quill'), '2027-01-30', 170);
    expect(News.parse(pitched)).toMatchObject({ kind: 'brewed', brew: 'Quill', drawnMl: 170 });
  });

  it('offers brew days after the task and from today on, never closed ones, none after the season', () => {
    // The house brews on Saturdays and Sundays; Saturday the 16th is closed here.
    const house = aHouse({ closed: ['2027-01-16'] });
    expect(slipDays(row('brew-pitch:Millrace'), house, '2027-01-04', 3)).toEqual([
      '2027-01-10',
      '2027-01-17',
      '2027-01-23',
    ]);
    expect(slipDays(row('brew-pitch:Millrace'), house, '2027-01-20', 1)).toEqual(['2027-01-23']);
    expect(slipDays(row('brew-pitch:Millrace'), house, '2027-01-23', 1)).toEqual(['2027-01-23']);
    const short = aHouse({ to: '2027-01-10' });
    expect(slipDays(row('brew-pitch:Millrace'), short, '2027-01-04')).toEqual(['2027-01-10']);
  });
});

describe('told', () => {
  const done = News.parse({ kind: 'task-done', task: 'clean:Keg A', day: TODAY });
  const brewed = News.parse({ kind: 'brewed', brew: 'Millrace', day: TODAY });
  const undo = (entry: number) => News.parse({ kind: 'undone', entry });
  const entries = (...news: News[]) =>
    news.map((one, at) => ({ no: at + 1, at: '', says: '', news: one }));

  it('leaves out what was taken back, and brings back what was taken back twice', () => {
    expect(standing(entries(done, undo(1)))).toEqual([]);
    expect(standing(entries(done, undo(1), undo(2))).map((entry) => entry.no)).toEqual([1]);
  });

  it('finds the entry that ticked a task', () => {
    expect(entryOfTask(row('brew-pitch:Millrace'), entries(done, brewed))).toBe(2);
    expect(entryOfTask(row('brew-pitch:Millrace'), entries(done, brewed, undo(2)))).toBeNull();
  });

  it('says each piece of news in words', () => {
    expect(newsWords({ news: brewed, says: '' }, () => null)).toBe(
      'Millrace was brewed on Sat 9 Jan',
    );
    expect(newsWords({ news: done, says: '' }, () => 'Clean Keg A')).toBe(
      'Done on Sat 9 Jan: Clean Keg A',
    );
  });
});
