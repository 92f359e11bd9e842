// What happened, in order.
import { Hono } from 'hono';
import { sayNews } from '../../planner/index.ts';
import { readHouse } from '../store/house.ts';
import { readRecord } from '../store/record.ts';
import type { Parts } from './parts.ts';

export const recordRoutes = (parts: Parts) =>
  new Hono().get('/', async (c) => {
    const house = await readHouse(parts.store.db);
    const entries = house === null ? [] : await readRecord(parts.store.db, house.season);
    const said = entries.map((one) => ({ ...one, says: sayNews(one.entry.news) }));
    return c.json({ entries: said }, 200);
  });
