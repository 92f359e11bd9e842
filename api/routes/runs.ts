// Runs of the planner: start one, watch it, stop it.
import { Hono } from 'hono';
import { seasonOver } from '../../planner/index.ts';
import { startPlanning } from '../runs/planning.ts';
import { houseOf, readState } from '../runs/state.ts';
import { refuse, refuseProblems } from './errors.ts';
import { runEvents } from './events.ts';
import type { Parts } from './parts.ts';
import { IdParam, RunRequest } from './shapes.ts';
import { body, param } from './valid.ts';

function noSuchRun(id: string): never {
  return refuse(
    404,
    'no-such-run',
    `There is no run ${id}; the server remembers only the last few. GET /api/runs/current tells the last one.`,
  );
}

export const runRoutes = (parts: Parts) =>
  new Hono()
    .post('/', body(RunRequest), async (c) => {
      const { seed, anew, replace, ...asked } = c.req.valid('json');
      const steps = asked.steps ?? parts.steps;
      const state = await readState(parts.store.db);
      if (state === null) {
        return refuse(409, 'no-house', 'There is no house to plan for: put one in first.');
      }
      const today = parts.today(state.stored.house.timeZone);
      const over = seasonOver(houseOf(state), today);
      if (over !== null) return refuseProblems([over], 409, 'season-over');
      const run = startPlanning(parts, state, { today, seed, steps, anew, replace });
      if (run === null) {
        return refuse(
          409,
          'run-under-way',
          'A plan is being made already. Wait for it, stop it, or send "replace": true to discard it.',
        );
      }
      return c.json({ run }, 202);
    })
    .get('/current', (c) => c.json({ run: parts.runs.current() }, 200))
    .get('/:id/events', param(IdParam), (c) => {
      const { id } = c.req.valid('param');
      if (parts.runs.get(id) === null) return noSuchRun(id);
      return runEvents(c, parts.runs, id);
    })
    .post('/:id/stop', param(IdParam), (c) => {
      const { id } = c.req.valid('param');
      const run = parts.runs.stop(id);
      if (run === null) return noSuchRun(id);
      return c.json({ run }, 200);
    });
