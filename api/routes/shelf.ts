// The shelf: what stands in the cold, what is to come, and the family of all yeast of the season.
import { Hono } from 'hono';
import { asTold, type Shelf, shelfOf } from '../../planner/index.ts';
import { houseOf, readState } from '../runs/state.ts';
import type { Parts } from './parts.ts';

export const shelfRoutes = (parts: Parts) =>
  new Hono().get('/', async (c) => {
    const state = await readState(parts.store.db);
    if (state === null || state.inForce === null) {
      return c.json({ shelf: null as Shelf | null }, 200);
    }
    const house = houseOf(state);
    const today = parts.today(house.timeZone);
    // a label says the mL that the task says
    const plan = asTold(state.inForce.plan);
    const now = { house, facts: state.record.facts, plan, today };
    return c.json({ shelf: shelfOf(now) as Shelf | null }, 200);
  });
