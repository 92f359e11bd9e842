// How the tasks are laid out over days: what is still open from before, today, the next seven days, later.

import { addDays } from '../../parts/days.ts';
import type { TaskRow } from '../../queries/tasks.ts';

export type DayOfTasks = { day: string; tasks: TaskRow[] };
export type TaskGroups = {
  /** Not ticked off, and their day is past. */
  overdue: DayOfTasks[];
  today: DayOfTasks[];
  soon: DayOfTasks[];
  later: DayOfTasks[];
};

/** Days of 'the next seven days' after today. */
const SOON_DAYS = 7;

/** Groups tasks that come in order of day and time. What is done and past is left out. */
export function groupTasks(tasks: readonly TaskRow[], today: string): TaskGroups {
  const soonEnd = addDays(today, SOON_DAYS);
  const open = tasks.filter((task) => !task.done);
  return {
    overdue: byDay(open.filter((task) => task.day < today)),
    today: byDay(tasks.filter((task) => task.day === today)),
    soon: byDay(tasks.filter((task) => task.day > today && task.day <= soonEnd)),
    later: byDay(tasks.filter((task) => task.day > soonEnd)),
  };
}

function byDay(tasks: readonly TaskRow[]): DayOfTasks[] {
  const days: DayOfTasks[] = [];
  for (const task of tasks) {
    const last = days.at(-1);
    if (last?.day === task.day) last.tasks.push(task);
    else days.push({ day: task.day, tasks: [task] });
  }
  return days;
}
