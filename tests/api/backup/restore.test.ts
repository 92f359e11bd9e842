// The whole house out and in again: identical, previewed, refused where it does not fit, never half.
import { copyFileSync, mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { getTableName, is } from 'drizzle-orm';
import { SQLiteTable } from 'drizzle-orm/sqlite-core';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { WholeHouse } from '../../../api/backup/whole.ts';
import type { RestoreAnswer } from '../../../api/routes/backup-shapes.ts';
import { addPlan } from '../../../api/store/plans.ts';
import * as tables from '../../../api/store/tables.ts';
import { compare, plan } from '../../../planner/index.ts';
import { type OpenApp, openApp } from '../../builders/app.ts';
import { readCalendar } from '../../builders/calendar.ts';
import { aHouse, aPlan } from '../../builders/plan.ts';
import { readBack } from '../../builders/record.ts';

let open: OpenApp;
beforeEach(async () => {
  open = await openApp();
});
afterEach(() => open.close());

const exported = async (from = open) => (await from.ask('GET', '/api/backups/house.json')).text;
const restore = (body: object, headers: Record<string, string> = {}, at = open) =>
  at.ask('POST', '/api/backups/restore', body, headers);

/** A house in the middle of its season: two addresses, news told, a plan of the planner in force and a draft beside it. */
async function lived(at = open) {
  const house = aHouse();
  const made = plan({ house, today: '2027-01-04', steps: 50 });
  await at.putInForce(made);
  await at.ask('POST', '/api/feeds', {});
  await at.ask('POST', '/api/feeds', { kinds: ['harvest'], look: { allDay: true } });
  const { json } = await at.ask('GET', '/api/tasks');
  const { tasks } = json as { tasks: { key: string; day: string; kind: string }[] };
  const first = tasks.find(({ kind }) => kind === 'check-jar' || kind === 'order') ?? tasks[0];
  const news = { kind: 'task-done', task: first?.key, day: '2027-01-04' };
  const told = await at.ask('POST', '/api/news', news);
  expect(told.status, told.text).toBe(201);
  const other = plan({ house, today: '2027-01-04', seed: 7, steps: 10 });
  await at.parts.store.write((tx) =>
    addPlan(
      tx,
      {
        id: crypto.randomUUID(),
        season: 1,
        madeAt: '2027-01-04T09:00:00.000Z',
        houseRevision: 1,
        recordNo: 1,
        plan: other,
        changes: compare(made, other, house),
      },
      'draft',
    ),
  );
}

describe('one file', () => {
  test('out, into an empty database, out again: the same bytes', async () => {
    await lived();
    const first = await exported();
    const document = JSON.parse(first);
    expect(document.seasons[0].record).toHaveLength(1);
    expect(document.draft).not.toBeNull();
    expect(document.calendar.length).toBeGreaterThan(10);
    expect(document.feeds).toHaveLength(2);
    const empty = await openApp({ house: null });
    try {
      const body = { document, apply: true, addresses: true };
      const answer = await restore(body, { 'If-Match': '0' }, empty);
      expect(answer.status, answer.text).toBe(200);
      expect(await exported(empty)).toBe(first);
    } finally {
      await empty.close();
    }
  });

  test('and over itself: the same bytes, and the calendar does not notice', async () => {
    await lived();
    const first = await exported();
    const { json } = await open.ask('GET', '/api/feeds');
    const { feeds } = json as { feeds: { address: string }[] };
    const path = new URL(feeds[0]?.address ?? '').pathname;
    const tag = (await open.ask('GET', path)).headers.get('ETag') ?? '';
    const answer = await restore(
      { document: JSON.parse(first), apply: true, addresses: true },
      { 'If-Match': '1' },
    );
    expect(answer.json).toMatchObject({ applied: true, revision: 2 });
    expect(await exported()).toBe(first);
    expect((await open.ask('GET', path, undefined, { 'If-None-Match': tag })).status).toBe(304);
  });

  test('every table of the database is in it, or known not to belong to the house', () => {
    const inIt = new Set(['season', 'house', 'record', 'plan', 'calendar_entry', 'feed']);
    // Who is signed in is no part of a house: a copy brings no session back.
    const notOfTheHouse = new Set(['session']);
    const all = Object.values(tables).flatMap((table) =>
      is(table, SQLiteTable) ? [getTableName(table)] : [],
    );
    expect(all.filter((name) => !inIt.has(name) && !notOfTheHouse.has(name))).toEqual([]);
  });

  test('holds no secret: neither the address of a calendar nor a password', async () => {
    await lived();
    const { json } = await open.ask('GET', '/api/feeds');
    const { feeds } = json as { feeds: { address: string }[] };
    const text = await exported();
    for (const { address } of feeds) {
      expect(text).not.toContain(new URL(address).pathname.slice('/feed/'.length, -4));
    }
    expect(Object.keys(WholeHouse.shape)).not.toContain('session');
  });

  test('is offered as a download with a dated name', async () => {
    const { headers } = await open.ask('GET', '/api/backups/house.json');
    expect(headers.get('Content-Disposition')).toBe(
      'attachment; filename="barmline-house-2027-01-04.json"',
    );
  });
});

describe('a copy put back', () => {
  test('is shown first, and changes nothing by that', async () => {
    const name = await open.parts.backups.make('by-hand');
    await lived();
    const before = await exported();
    const { json } = await restore({ copy: name });
    const answer = json as RestoreAnswer;
    expect(answer).toMatchObject({ applied: false, revision: 1, kept: null, problems: [] });
    expect(answer.holds).toMatchObject({ name: aHouse().name, news: 0, addresses: 0 });
    expect(answer.now).toMatchObject({ news: 1, addresses: 2 });
    expect(await exported()).toBe(before);
  });

  test('brings house, record, plan and calendar back; what was there before is kept as a copy', async () => {
    await lived();
    const before = await exported();
    const name = await open.parts.backups.make('by-hand');
    open.setNow('2027-01-06T08:00:00Z');
    await open.ask('PUT', '/api/house', aHouse({ name: 'Renamed' }), { 'If-Match': '1' });
    await open.putInForce(aPlan());
    const answer = await restore({ copy: name, apply: true }, { 'If-Match': '2' });
    expect(answer.status, answer.text).toBe(200);
    const { kept } = answer.json as RestoreAnswer;
    const after = JSON.parse(await exported());
    const was = JSON.parse(before);
    expect({ ...after, calendar: null }).toEqual({ ...was, calendar: null });
    // The same entries; what calendars had seen meanwhile comes with marks that go on, not back.
    expect(after.calendar.map(({ uid }: { uid: string }) => uid)).toEqual(
      was.calendar.map(({ uid }: { uid: string }) => uid),
    );
    expect(kept).toBe('barmline-2027-01-06-080000-before-restore.db');
    const back = await restore({ copy: kept, apply: true }, { 'If-Match': '3' });
    expect(back.status).toBe(200);
    expect(JSON.parse(await exported()).house.name).toBe('Renamed');
  });

  test('calendars that saw newer entries are told again: stamps and SEQUENCE go on', async () => {
    const feed = (await open.ask('POST', '/api/feeds', {})).json as { made: { address: string } };
    const path = new URL(feed.made.address).pathname;
    const events = async () => readCalendar((await open.ask('GET', path)).text).events;
    const name = await open.parts.backups.make('by-hand');
    const before = await events();
    open.setNow('2027-01-05T08:00:00Z');
    const made = aPlan();
    const shifted = made.brews.map((brew) => ({ ...brew, day: '2027-02-13' }));
    await open.putInForce({ ...made, brews: shifted });
    const meanwhile = new Map((await events()).map((event) => [event.uid, event]));
    open.setNow('2027-01-06T08:00:00Z');
    await restore({ copy: name, apply: true }, { 'If-Match': '1' });
    const after = await events();
    expect(after.map(({ uid, start }) => [uid, start])).toEqual(
      before.map(({ uid, start }) => [uid, start]),
    );
    let moved = 0;
    for (const event of after) {
      const seen = meanwhile.get(event.uid);
      if (seen === undefined || seen.start === event.start) continue;
      moved += 1;
      expect(event.sequence).toBe(seen.sequence + 1);
      expect(event.stamp).toBe('2027-01-06T08:00:00Z');
    }
    expect(moved).toBeGreaterThan(0);
  });

  test('revoked addresses stay revoked, newer ones go on, and none of a stranger opens', async () => {
    const [old] = [(await open.ask('POST', '/api/feeds', {})).json as Made];
    const name = await open.parts.backups.make('by-hand');
    await open.ask('DELETE', `/api/feeds/${old.made.id}`);
    const young = (await open.ask('POST', '/api/feeds', {})).json as Made;
    await restore({ copy: name, apply: true, addresses: true }, { 'If-Match': '1' });
    const status = async (made: Made) =>
      (await open.ask('GET', new URL(made.made.address).pathname)).status;
    expect(await status(old)).toBe(404);
    expect(await status(young)).toBe(200);
    const document = JSON.parse(await exported());
    const stranger = { ...document.feeds[0], id: crypto.randomUUID(), tokenHash: 'a'.repeat(64) };
    document.feeds.push(stranger);
    await restore({ document, apply: true }, { 'If-Match': '2' });
    expect(JSON.parse(await exported()).feeds).toHaveLength(1);
  });

  test('an edit that was begun before is refused afterwards', async () => {
    const name = await open.parts.backups.make('by-hand');
    await restore({ copy: name, apply: true }, { 'If-Match': '1' });
    const late = await open.ask('PUT', '/api/house', aHouse({ name: 'Late' }), { 'If-Match': '1' });
    expect(late.status).toBe(409);
  });

  test('the record is as closed to change afterwards as before', async () => {
    await lived();
    const name = await open.parts.backups.make('by-hand');
    await restore({ copy: name, apply: true }, { 'If-Match': '1' });
    await expect(readBack(open.parts.store.db, 'DELETE FROM record')).rejects.toThrow();
    await expect(readBack(open.parts.store.db, "UPDATE record SET at = ''")).rejects.toThrow();
  });

  test('one of an earlier version is brought forward', async () => {
    const { createClient } = await import('@libsql/client');
    const name = await open.parts.backups.make('by-hand');
    const client = createClient({ url: `file:${join(open.parts.backups.folder, name)}` });
    for (const sql of [
      'ALTER TABLE feed DROP COLUMN look',
      "DELETE FROM migration WHERE id = '0003-feed-look'",
    ]) {
      await client.execute(sql);
    }
    client.close();
    const answer = await restore({ copy: name });
    expect(answer.json).toMatchObject({ problems: [], holds: { name: aHouse().name } });
  });
});

type Made = { made: { id: string; address: string } };

describe('what is refused, with nothing changed', () => {
  async function refused(body: object, status: number, words: RegExp, revision = '1') {
    await lived();
    const before = await exported();
    const answer = await restore({ ...body, apply: true }, { 'If-Match': revision });
    expect(answer.status, answer.text).toBe(status);
    expect(answer.text).toMatch(words);
    expect(await exported()).toBe(before);
    expect(open.reported).toEqual([]);
  }

  test('a copy that is not there', () =>
    refused({ copy: 'barmline-2020-01-01.db' }, 404, /no copy barmline-2020-01-01\.db/));

  test('a name that leads elsewhere', () =>
    refused({ copy: '../barmline-2020-01-01.db' }, 400, /copy/));

  test('a copy that is no database, one of a newer version, an empty one', async () => {
    const { folder } = open.parts.backups;
    mkdirSync(folder);
    writeFileSync(join(folder, 'barmline-2026-01-01.db'), 'hops '.repeat(1000));
    const name = await open.parts.backups.make('by-hand');
    const newer = join(folder, 'barmline-2026-01-02.db');
    copyFileSync(join(folder, name), newer);
    const { createClient } = await import('@libsql/client');
    const client = createClient({ url: `file:${newer}` });
    await client.execute("INSERT INTO migration (id, applied_at) VALUES ('9999-later', '')");
    client.close();
    writeFileSync(join(folder, 'barmline-2026-01-03.db'), '');
    await refused({ copy: 'barmline-2026-01-01.db' }, 422, /damaged, or is no database/);
    for (const [copy, words] of [
      ['barmline-2026-01-02.db', /newer version of Barmline/],
      ['barmline-2026-01-03.db', /holds no house/],
    ] as const) {
      const answer = await restore({ copy });
      expect(answer.status).toBe(200);
      expect((answer.json as RestoreAnswer).holds).toBeNull();
      expect(answer.text).toMatch(words);
    }
  });

  test('a document of a newer format', async () => {
    const document = { ...JSON.parse(await exported()), formatVersion: 2 };
    await refused({ document }, 422, /newer version of Barmline \(format 2; this one knows 1\)/);
  });

  test('anything but a house: every problem at once', async () => {
    const document = JSON.parse(await exported());
    document.house.tanks = 'none';
    document.season = 'first';
    delete document.feeds;
    const { json } = await restore({ document });
    const paths = (json as RestoreAnswer).problems.map(({ path }) => path);
    expect(paths).toEqual(expect.arrayContaining(['house.tanks', 'season', 'feeds']));
    await refused({ document }, 422, /Nothing was changed/);
  });

  test.each<[string, (document: WholeHouse) => void, RegExp]>([
    ['a plan of another house', (d) => swapBrews(d), /plan does not belong/],
    ['a season that is not there', (d) => Object.assign(d, { season: 7 }), /seasons/],
    ['an entry twice', (d) => d.calendar.push(...d.calendar.slice(0, 1)), /stands in it twice/],
    ['a record with a gap', (d) => d.seasons[0]?.record.splice(0, 1), /gap/],
    ['a house that contradicts itself', (d) => d.house.tanks.push(...d.house.tanks), /tank/i],
  ])('%s', async (_what, spoil, words) => {
    await lived();
    await open.ask('POST', '/api/news', { kind: 'slipped', brew: 'Quill', to: '2027-02-13' });
    const document = JSON.parse(await exported()) as WholeHouse;
    spoil(document);
    const before = await exported();
    const answer = await restore({ document, apply: true }, { 'If-Match': '1' });
    expect(answer.status, answer.text).toBe(422);
    expect(answer.text).toMatch(words);
    expect(await exported()).toBe(before);
  });

  test('what was looked at is no longer what is there', () =>
    refused({ copy: 'barmline-2027-01-04.db' }, 404, /no copy/, '9'));

  test('without the revision, or with an old one', async () => {
    const name = await open.parts.backups.make('by-hand');
    expect((await restore({ copy: name, apply: true })).status).toBe(428);
    const stale = await restore({ copy: name, apply: true }, { 'If-Match': '7' });
    expect(stale.status).toBe(409);
    expect(stale.text).toContain('Look again');
  });
});

/** Gives the plan in force a brew that the house has not. */
function swapBrews(document: WholeHouse): void {
  const [first] = document.inForce?.plan.brews ?? [];
  if (first) first.brew = 'Somebody else’s';
}

test('a copy is downloaded byte for byte; other names are not files', async () => {
  const { readFileSync } = await import('node:fs');
  const made = await open.ask('POST', '/api/backups');
  expect(made.status).toBe(201);
  const { made: name } = made.json as { made: string };
  const answer = await open.app.request(`/api/backups/copies/${name}`);
  const bytes = Buffer.from(await answer.arrayBuffer());
  expect(bytes.equals(readFileSync(join(open.parts.backups.folder, name)))).toBe(true);
  expect(answer.headers.get('Content-Disposition')).toBe(`attachment; filename="${name}"`);
  for (const path of ['barmline.db', '..%2Fbarmline.db', '%2e%2e%2ffeed.key', 'feed.key']) {
    expect((await open.ask('GET', `/api/backups/copies/${path}`)).status).toBe(400);
  }
});
