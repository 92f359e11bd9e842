// The tasks of the plan in force, by day.
import { Hono } from 'hono';
import { readHouse } from '../store/house.ts';
import { refuseProblems } from './errors.ts';
import type { Parts } from './parts.ts';
import { taskRows } from './rows.ts';
import { TasksQuery } from './shapes.ts';
import { query } from './valid.ts';

export const taskRoutes = (parts: Parts) =>
  new Hono().get('/', query(TasksQuery), async (c) => {
    const { from, to } = c.req.valid('query');
    if (from !== undefined && to !== undefined && to < from) {
      return refuseProblems(
        [
          {
            code: 'days-out-of-order',
            path: 'to',
            value: to,
            bound: `not before ${from}`,
            message: `to is ${to}, which is before from, ${from}.`,
            remedy: 'Swap the two days.',
            level: 'error',
          },
        ],
        400,
      );
    }
    const house = await readHouse(parts.store.db);
    const rows = await taskRows(parts.store.db, from);
    return c.json(
      {
        today: parts.today(house?.house.timeZone ?? 'utc'),
        tasks: rows.filter((row) => to === undefined || row.day <= to),
      },
      200,
    );
  });
