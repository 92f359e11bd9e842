// Tasks of the plan in force as the page and the feed see them: each with the UID of its calendar entry.
import type { IsoDay } from '../../planner/index.ts';
import { readEntries } from '../store/calendar.ts';
import type { Db } from '../store/index.ts';
import type { PlanAnswer, TaskRow } from './shapes.ts';

const NEXT_TASKS = 8;

/** The tasks with their UIDs, in order of day and clock time. */
export async function taskRows(db: Db, fromDay?: IsoDay): Promise<TaskRow[]> {
  const rows = (await readEntries(db, fromDay)).map(({ task, uid }) => ({ ...task, uid }));
  const when = (row: TaskRow) => `${row.day} ${row.time ?? ''}`;
  return rows.sort((a, b) => (when(a) < when(b) ? -1 : when(a) > when(b) ? 1 : 0));
}

/** How many tasks there are and which come next. */
export function taskSummary(rows: readonly TaskRow[], today: IsoDay): PlanAnswer['tasks'] {
  const open = rows.filter((row) => !row.done);
  return {
    count: rows.length,
    done: rows.length - open.length,
    overdue: open.filter((row) => row.day < today).length,
    next: open.filter((row) => row.day >= today).slice(0, NEXT_TASKS),
  };
}
