// Documents about the API itself: its description, and the schemas of the house and of the plan.
import { Hono } from 'hono';
import { schemas } from '../schema-command.ts';
import { openApi } from './openapi.ts';
import type { Parts } from './parts.ts';

export const documentRoutes = (parts: Parts) =>
  new Hono()
    .get('/openapi.json', (c) => c.json(openApi(parts.version), 200))
    .get('/schema/house', (c) => c.json(schemas().house, 200))
    .get('/schema/plan', (c) => c.json(schemas().plan, 200));
