// The house: read it, save it, bring it in from a season folder's files, take it out again.
import { type Context, Hono } from 'hono';
import type { z } from 'zod';
import { checkHouse, type House, parseHouse } from '../../planner/index.ts';
import { readFolder, writeFolder } from '../folder/index.ts';
import { readHouse, type StoredHouse } from '../store/house.ts';
import { refuse, refuseProblems } from './errors.ts';
import type { Parts } from './parts.ts';
import { revisionOf, save } from './saving.ts';
import { type HouseAnswer, HouseQuery, ImportRequest } from './shapes.ts';
import { bodyBy, parsed, query } from './valid.ts';

function houseAnswer(parts: Parts, stored: StoredHouse | null): HouseAnswer {
  if (stored === null) {
    const today = parts.today('utc');
    return { house: null, revision: 0, savedAt: null, demo: false, problems: [], today };
  }
  return {
    house: stored.house,
    revision: stored.revision,
    savedAt: stored.savedAt,
    demo: stored.demo,
    problems: checkHouse(stored.house),
    today: parts.today(stored.house.timeZone),
  };
}

const houseBody = bodyBy<z.input<typeof House>, House>((value) => {
  const { house, problems } = parseHouse(value);
  return house ?? refuseProblems(problems, 400);
});

type Import = { files: Record<string, string>; apply: boolean; startOver: boolean };

/** The files of a season folder, sent as JSON or as a form with one part a file. */
async function importOf(c: Context): Promise<Import> {
  const kind = c.req.header('Content-Type') ?? '';
  if (!kind.toLowerCase().startsWith('multipart/form-data')) {
    return parsed(ImportRequest, await c.req.json(), '(body)');
  }
  const form = await c.req.formData();
  const files: Record<string, string> = {};
  const fields: Record<string, unknown> = {};
  for (const [name, part] of form.entries()) {
    // Only the last part of a name counts: what is sent is never looked up on a disk.
    if (typeof part !== 'string') {
      files[part.name.split(/[\\/]/).at(-1) ?? part.name] = await part.text();
    } else {
      fields[name] = part === 'true' ? true : part === 'false' ? false : part;
    }
  }
  return parsed(ImportRequest, { ...fields, files }, '(form)');
}

const importBody = bodyBy<z.input<typeof ImportRequest>, Import>((_value, c) => importOf(c));

export const houseRoutes = (parts: Parts) =>
  new Hono()
    .get('/', async (c) => c.json(houseAnswer(parts, await readHouse(parts.store.db)), 200))
    .put('/', query(HouseQuery), houseBody, async (c) => {
      const revision = revisionOf(c.req.header('If-Match'));
      const startOver = c.req.valid('query').startOver === 'true';
      const house = c.req.valid('json');
      const stored = await save(parts.store, { house, revision, startOver });
      if (startOver) parts.runs.discard();
      return c.json(houseAnswer(parts, stored), 200);
    })
    .post('/import', importBody, async (c) => {
      const { files, apply, startOver } = c.req.valid('json');
      const { house, problems } = readFolder(files);
      if (!apply) {
        const revision = (await readHouse(parts.store.db))?.revision ?? 0;
        return c.json({ house, problems, applied: false, revision }, 200);
      }
      const revision = revisionOf(c.req.header('If-Match'));
      if (house === null || problems.some((problem) => problem.level === 'error')) {
        return refuseProblems(problems);
      }
      const stored = await save(parts.store, { house, revision, startOver });
      if (startOver) parts.runs.discard();
      return c.json({ house, problems, applied: true, revision: stored.revision }, 200);
    })
    .get('/export', async (c) => {
      const stored = await readHouse(parts.store.db);
      if (stored === null) return refuse(404, 'no-house', 'There is no house to take out yet.');
      return c.json({ files: writeFolder(stored.house) }, 200);
    });
