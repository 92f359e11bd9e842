// What a tick, a figure or a slip on a task tells the record.
import type { House, Plan } from '../../../planner/index.ts';
import { dayNumber, isoDay, nextDays, weekdayKey } from '../../parts/days.ts';
import type { NewsGiven } from '../../queries/news.ts';
import type { TaskRow } from '../../queries/tasks.ts';

/** The kinds that may be told with a figure, and what the figure is. */
export function figureOf(task: TaskRow): 'settled' | 'drawn' | null {
  if (task.brew === null) return null;
  if (task.kind === 'harvest' || task.kind === 'read-volume') return 'settled';
  return task.kind === 'brew-pitch' && isPitch(task) ? 'drawn' : null;
}

/** Whether it is the pitch itself and not a later turn of the kettle for the same brew. */
export function isPitch(task: TaskRow): boolean {
  return task.kind === 'brew-pitch' && task.key === `brew-pitch:${task.brew}`;
}

/** A task ticked late was most likely done on its day, one ticked early today. */
export function dayDone(task: TaskRow, today: string): string {
  return task.day < today ? task.day : today;
}

/** 'Done', as planned; what that comes to for a brew or a harvest, the record works out. */
export function doneNews(task: TaskRow, today: string): NewsGiven {
  return { kind: 'task-done', task: task.key, day: dayDone(task, today) };
}

/** 'Done', with the figure that was measured. */
export function measuredNews(task: TaskRow, day: string, ml: number): NewsGiven | null {
  const figure = figureOf(task);
  if (figure === null || task.brew === null) return null;
  if (figure === 'settled') return { kind: 'harvested', brew: task.brew, day, settledMl: ml };
  return { kind: 'brewed', brew: task.brew, day, drawnMl: ml };
}

/** The figure that the plan expects, for the field to start from; null where there is none (packs). */
export function expectedMl(task: TaskRow, plan: Plan): number | null {
  const figure = figureOf(task);
  if (figure === 'settled') {
    const harvest = plan.harvests.find((one) => one.brew === task.brew);
    return harvest ? Math.round(harvest.settledMl.likely) : null;
  }
  const source = plan.brews.find((one) => one.brew === task.brew)?.source;
  return figure === 'drawn' && source && source.kind !== 'fresh' ? Math.round(source.drawMl) : null;
}

/** The next brew days of the season, after the task's own day and not before today, to which a brew can slip. */
export function slipDays(task: TaskRow, house: House, today: string, count = 6): string[] {
  const closed = new Set(house.closed);
  const from = isoDay(Math.max(dayNumber(task.day) + 1, dayNumber(today)));
  const last = dayNumber(house.to);
  return nextDays(
    from,
    count,
    (day) => day <= last && house.brewDays.includes(weekdayKey(day)) && !closed.has(isoDay(day)),
  );
}
