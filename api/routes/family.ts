// The family of a jar, a harvest or a beer: each member with its state and where it is now, and which beers to taste.
import { Hono } from 'hono';
import { type CultureRef, familyOf } from '../../planner/index.ts';
import { houseOf, readState } from '../runs/state.ts';
import { refuse } from './errors.ts';
import { FamilyParam } from './history-shapes.ts';
import type { Parts } from './parts.ts';
import { param } from './valid.ts';

export const familyRoutes = (parts: Parts) =>
  new Hono().get('/:kind/:name', param(FamilyParam), async (c) => {
    const { kind, name } = c.req.valid('param');
    const state = await readState(parts.store.db);
    if (state === null || state.inForce === null) {
      return refuse(409, 'no-plan', 'There is no plan yet that would tell families: plan first.');
    }
    const house = houseOf(state);
    const of: CultureRef = kind === 'jar' ? { kind, jar: name } : { kind, brew: name };
    const { facts } = state.record;
    const today = parts.today(house.timeZone);
    const family = familyOf(of, { house, facts, plan: state.inForce.plan, today });
    if (family === null) {
      return refuse(404, 'no-such-culture', `There is no ${kind} called ${name} in this season.`);
    }
    return c.json({ family }, 200);
  });
