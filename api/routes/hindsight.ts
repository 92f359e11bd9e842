// Prediction against what happened, over the season.
import { Hono } from 'hono';
import { hindsightOf } from '../../planner/index.ts';
import { readState } from '../runs/state.ts';
import type { Parts } from './parts.ts';

export const hindsightRoutes = (parts: Parts) =>
  new Hono().get('/', async (c) => {
    const state = await readState(parts.store.db);
    return c.json({ hindsight: hindsightOf(state?.entries ?? []) }, 200);
  });
