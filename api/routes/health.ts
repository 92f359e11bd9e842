// Whether the server is there.
import { Hono } from 'hono';
import type { z } from 'zod';
import type { Parts } from './parts.ts';
import type { HealthAnswer } from './shapes.ts';

export const healthRoutes = (parts: Parts) =>
  new Hono().get('/', (c) => {
    const answer: z.infer<typeof HealthAnswer> = { ok: true, version: parts.version };
    return c.json(answer, 200);
  });
