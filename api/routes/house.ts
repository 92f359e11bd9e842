// The house: read it, save it, bring it in from a season folder's files, take it out again.
import { Hono } from 'hono';
import type { z } from 'zod';
import { checkHouse, type House, houseNow, parseHouse } from '../../planner/index.ts';
import { demoHouse } from '../demo/index.ts';
import { writeSeason } from '../folder/index.ts';
import { houseOf, readState } from '../runs/state.ts';
import { readHouse, type StoredHouse } from '../store/house.ts';
import { listed, refuse, refuseProblems } from './errors.ts';
import { type Import, readImport } from './import.ts';
import type { ImportAnswer, ImportRequest } from './import-shapes.ts';
import type { Parts } from './parts.ts';
import { revisionOf, save } from './saving.ts';
import { type HouseAnswer, HouseQuery } from './shapes.ts';
import { bodyBy, query } from './valid.ts';

async function houseAnswer(parts: Parts, saved?: StoredHouse): Promise<HouseAnswer> {
  const state = await readState(parts.store.db);
  const stored = saved ?? state?.stored ?? null;
  if (stored === null || state === null) {
    const today = parts.today('utc');
    return { house: null, now: null, revision: 0, savedAt: null, demo: false, problems: [], today };
  }
  return {
    house: stored.house,
    now: houseNow(stored.house, state.record.overlay),
    revision: stored.revision,
    savedAt: stored.savedAt,
    demo: stored.demo,
    problems: listed(checkHouse(stored.house)),
    today: parts.today(stored.house.timeZone),
  };
}

const houseBody = bodyBy<z.input<typeof House>, House>((value) => {
  const { house, problems } = parseHouse(value);
  return house ?? refuseProblems(problems, 400);
});

const importBody = bodyBy<z.input<typeof ImportRequest>, Import>((_value, c) => readImport(c));

export const houseRoutes = (parts: Parts) =>
  new Hono()
    .get('/', async (c) => c.json(await houseAnswer(parts), 200))
    .put('/', query(HouseQuery), houseBody, async (c) => {
      const revision = revisionOf(c.req.header('If-Match'));
      const startOver = c.req.valid('query').startOver === 'true';
      const house = c.req.valid('json');
      const stored = await save(parts.store, { house, revision, startOver });
      if (startOver) parts.runs.discard();
      return c.json(await houseAnswer(parts, stored), 200);
    })
    .post('/import', importBody, async (c) => {
      const { house, rest, problems, tables, apply, startOver } = c.req.valid('json');
      if (!apply) {
        const revision = (await readHouse(parts.store.db))?.revision ?? 0;
        const shown: ImportAnswer = {
          house: rest,
          tables,
          problems: listed(problems),
          applied: false,
          revision,
        };
        return c.json(shown, 200);
      }
      const revision = revisionOf(c.req.header('If-Match'));
      if (house === null) return refuseProblems(problems);
      const stored = await save(parts.store, { house, revision, startOver });
      if (startOver) parts.runs.discard();
      const { revision: made } = stored;
      const answer: ImportAnswer = {
        house,
        tables,
        problems: listed(problems),
        applied: true,
        revision: made,
      };
      return c.json(answer, 200);
    })
    .post('/demo', async (c) => {
      const revision = revisionOf(c.req.header('If-Match'));
      const house = demoHouse(parts.today('Europe/Dublin'));
      const stored = await save(parts.store, { house, revision, startOver: true, demo: true });
      parts.runs.discard();
      return c.json(await houseAnswer(parts, stored), 200);
    })
    .get('/export', async (c) => {
      const state = await readState(parts.store.db);
      if (state === null) return refuse(404, 'no-house', 'There is no house to take out yet.');
      return c.json({ files: writeSeason(houseOf(state)) }, 200);
    });
