// Backups: the dated copies, the whole house as one file, and putting either back after a look at it.
import { createReadStream } from 'node:fs';
import { stat } from 'node:fs/promises';
import { Readable } from 'node:stream';
import { Hono } from 'hono';
import { z } from 'zod';
import { wholeText } from '../backup/copies.ts';
import { type Reading, readCopy, readDocument } from '../backup/read-copy.ts';
import { replaceWhole } from '../backup/replace.ts';
import { readWhole, type WholeHouse } from '../backup/whole.ts';
import { readHouse } from '../store/house.ts';
import {
  type BackupsAnswer,
  CopyName,
  type HouseSummary,
  type RestoreAnswer,
  RestoreRequest,
} from './backup-shapes.ts';
import { listed, refuse, refuseProblems } from './errors.ts';
import type { Parts } from './parts.ts';
import { revisionOf } from './saving.ts';
import { body, param } from './valid.ts';

const CopyParam = z.strictObject({ name: CopyName });

async function backupsAnswer({ backups }: Parts): Promise<BackupsAnswer> {
  const { folder, kept, failure, list } = backups;
  return { folder, ...kept, failure: failure(), copies: await list() };
}

function summaryOf(whole: WholeHouse | null): HouseSummary | null {
  if (whole === null) return null;
  const entries = whole.seasons.flatMap(({ record }) => record);
  return {
    name: whole.house.name,
    savedAt: whole.savedAt,
    brews: whole.house.brews.length,
    tanks: whole.house.tanks.length,
    yeasts: whole.house.yeasts.length,
    jars: whole.house.jars.length,
    seasons: whole.seasons.length,
    news: entries.length,
    lastNewsAt: entries.at(-1)?.at ?? null,
    planMadeAt: whole.inForce?.madeAt ?? null,
    tasks: whole.calendar.filter(({ goneAt }) => goneAt === null).length,
    addresses: whole.feeds.length,
  };
}

function noSuchCopy(name: string): never {
  return refuse(404, 'no-such-copy', `There is no copy ${name}: perhaps it is not kept any more.`);
}

async function read(parts: Parts, wanted: z.infer<typeof RestoreRequest>): Promise<Reading> {
  if (wanted.copy === null) return readDocument(wanted.document);
  return readCopy(parts.backups.file(wanted.copy) ?? noSuchCopy(wanted.copy));
}

/** Puts the document in place, all in one transaction, after a copy of what was there. */
async function restore(
  parts: Parts,
  whole: WholeHouse,
  wanted: { addresses: boolean; revision: number },
): Promise<{ revision: number; kept: string | null }> {
  const { store, backups, runs } = parts;
  const insist = (current: number) => {
    if (current === wanted.revision) return;
    refuse(
      409,
      'stale-revision',
      `Nothing was changed: the house is at revision ${current} now, and what was looked at was revision ${wanted.revision}. Look again.`,
    );
  };
  const before = await readHouse(store.db);
  insist(before?.revision ?? 0);
  const kept = before === null ? null : await backups.make('before-restore');
  const revision = await store.write(async (tx) => {
    insist((await readHouse(tx))?.revision ?? 0);
    return replaceWhole(tx, whole, { now: store.now(), addresses: wanted.addresses });
  });
  runs.discard();
  return { revision, kept };
}

export const backupRoutes = (parts: Parts) =>
  new Hono()
    .get('/', async (c) => c.json(await backupsAnswer(parts), 200))
    .post('/', async (c) => {
      if ((await readHouse(parts.store.db)) === null) {
        return refuse(404, 'no-house', 'There is no house to copy yet.');
      }
      const made = await parts.backups.make('by-hand');
      return c.json({ ...(await backupsAnswer(parts)), made }, 201);
    })
    .get('/house.json', async (c) => {
      const whole = await readWhole(parts.store.db);
      if (whole === null) return refuse(404, 'no-house', 'There is no house to take out yet.');
      const day = parts.today(whole.house.timeZone);
      c.header('Content-Type', 'application/json; charset=utf-8');
      c.header('Content-Disposition', `attachment; filename="barmline-house-${day}.json"`);
      c.header('Cache-Control', 'no-store');
      return c.body(wholeText(whole), 200);
    })
    .get('/copies/:name', param(CopyParam), async (c) => {
      const { name } = c.req.valid('param');
      const file = parts.backups.file(name) ?? noSuchCopy(name);
      c.header('Content-Type', 'application/octet-stream');
      c.header('Content-Disposition', `attachment; filename="${name}"`);
      c.header('Content-Length', String((await stat(file)).size));
      c.header('Cache-Control', 'no-store');
      return c.body(Readable.toWeb(createReadStream(file)) as ReadableStream, 200);
    })
    .post('/restore', body(RestoreRequest), async (c) => {
      const wanted = c.req.valid('json');
      const { whole, problems } = await read(parts, wanted);
      const now = summaryOf(await readWhole(parts.store.db));
      const revision = (await readHouse(parts.store.db))?.revision ?? 0;
      const seen = { holds: summaryOf(whole), now, problems: listed(problems) };
      if (!wanted.apply) {
        const shown: RestoreAnswer = { ...seen, applied: false, revision, kept: null };
        return c.json(shown, 200);
      }
      const given = revisionOf(c.req.header('If-Match'));
      if (whole === null) return refuseProblems(problems);
      const { addresses } = wanted;
      const done = await restore(parts, whole, { addresses, revision: given });
      const answer: RestoreAnswer = { ...seen, applied: true, ...done };
      return c.json(answer, 200);
    });
