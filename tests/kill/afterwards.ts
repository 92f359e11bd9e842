// What has to hold in the database of a server that was killed.
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { createClient } from '@libsql/client';
import { inArray } from 'drizzle-orm';
import { listCopies } from '../../api/backup/copies.ts';
import { syncCalendar } from '../../api/runs/planning.ts';
import { readState } from '../../api/runs/state.ts';
import { readEntries } from '../../api/store/calendar.ts';
import { readFeeds } from '../../api/store/feeds.ts';
import { readRevision } from '../../api/store/house.ts';
import { openStore } from '../../api/store/index.ts';
import { plan } from '../../api/store/tables.ts';
import { Plan } from '../../planner/index.ts';
import type { Acknowledged } from './user.ts';

async function integrity(url: string): Promise<string> {
  const client = createClient({ url });
  try {
    return String((await client.execute('PRAGMA integrity_check')).rows[0]?.integrity_check);
  } finally {
    client.close();
  }
}

/**
 * Opens what a killed server left and looks for anything that is lost or there by half.
 * @returns one line for each thing that is wrong
 */
export async function wrongAfterwards(dataFolder: string, kept: Acknowledged): Promise<string[]> {
  const wrong: string[] = [];
  const url = pathToFileURL(join(dataFolder, 'barmline.db')).href;
  const said = await integrity(url);
  if (said !== 'ok') wrong.push(`the database says: ${said}`);
  const store = await openStore({ url });
  try {
    const { db } = store;
    const state = await readState(db);
    if (state === null) return [...wrong, 'there is no house'];
    const { entries, inForce } = state;
    if (entries.some(({ no }, at) => no !== at + 1)) wrong.push('the record has a gap');
    for (const [no, news] of kept.news) {
      const found = entries[no - 1];
      const told = JSON.parse(news) as Record<string, unknown>;
      const same = Object.entries(told).every(
        ([key, value]) => Reflect.get(found?.news ?? {}, key) === value,
      );
      if (found === undefined || !same) wrong.push(`entry ${no} is lost: ${news}`);
    }
    const lastSaved = Math.max(0, ...kept.houses.keys());
    if (state.stored.revision < lastSaved) wrong.push(`revision ${lastSaved} is lost`);
    for (const [revision, name] of kept.houses) {
      if (revision <= state.stored.revision - 200) continue;
      const found = await readRevision(db, revision);
      if (found?.house.name !== name) wrong.push(`revision ${revision} is not '${name}'`);
    }
    const feeds = new Set((await readFeeds(db)).map(({ id }) => id));
    for (const id of kept.feeds) if (!feeds.has(id)) wrong.push(`feed ${id} is lost`);

    if (inForce === null || !Plan.safeParse(inForce.plan).success) {
      return [...wrong, 'the plan in force is not there, or not whole'];
    }
    const last = kept.adopted.at(-1);
    if (last !== undefined && last !== inForce.id) {
      // Another one may have been adopted whose answer did not get through any more.
      const rows = await db
        .select()
        .from(plan)
        .where(inArray(plan.id, [last]));
      if (rows[0]?.status !== 'superseded') wrong.push(`plan ${last} was adopted and is not`);
    }
    const before = JSON.stringify(await readEntries(db));
    await store.write((tx) => syncCalendar(tx, store.now()));
    const calendar = await readEntries(db);
    if (calendar.length === 0) wrong.push('the calendar is empty');
    if (JSON.stringify(calendar) !== before) wrong.push('the calendar is not that of the plan');
  } finally {
    store.close();
  }
  for (const { name } of await listCopies(join(dataFolder, 'backups'))) {
    const copy = await integrity(pathToFileURL(join(dataFolder, 'backups', name)).href);
    if (copy !== 'ok') wrong.push(`the copy ${name} says: ${copy}`);
  }
  return wrong;
}
