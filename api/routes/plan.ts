// The plan that people follow now, with a glance at its tasks.
import { Hono } from 'hono';
import { behind, readState } from '../runs/state.ts';
import type { Parts } from './parts.ts';
import { taskRows, taskSummary } from './rows.ts';
import type { PlanAnswer } from './shapes.ts';

/** The plan in force as it is answered everywhere. */
export async function planAnswer(parts: Parts): Promise<PlanAnswer> {
  const state = await readState(parts.store.db);
  const today = parts.today(state?.stored.house.timeZone ?? 'utc');
  if (state === null || state.inForce === null) {
    return {
      plan: null,
      id: null,
      madeAt: null,
      today,
      behind: { house: false, record: false, says: null },
      tasks: { count: 0, done: 0, overdue: 0, next: [] },
    };
  }
  return {
    plan: state.inForce.plan,
    id: state.inForce.id,
    madeAt: state.inForce.madeAt,
    today,
    behind: behind(state, state.inForce),
    tasks: taskSummary(await taskRows(parts.store.db), today),
  };
}

export const planRoutes = (parts: Parts) =>
  new Hono().get('/', async (c) => c.json(await planAnswer(parts), 200));
