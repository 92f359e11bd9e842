// The calendar itself, behind an address that nobody guesses; calendars know nothing but GET, HEAD and ETag.
import { createHash } from 'node:crypto';
import { Hono } from 'hono';
import { DateTime } from 'luxon';
import type { House, IsoDay } from '../../planner/index.ts';
import { calendarText } from '../feed/calendar.ts';
import { HISTORY_DAYS } from '../feed/entries.ts';
import { matches } from '../feed/token.ts';
import { houseOf, readState } from '../runs/state.ts';
import { readEntries } from '../store/calendar.ts';
import { readFeeds, type StoredFeed } from '../store/feeds.ts';
import { errorBody } from './errors.ts';
import type { Parts } from './parts.ts';

const MAX_KEPT = 100;

/** The feed that a token opens; all are tried, so that the time taken does not tell which one. */
function opened(feeds: readonly StoredFeed[], token: string): StoredFeed | null {
  let found: StoredFeed | null = null;
  for (const feed of feeds) if (matches(token, feed.tokenHash)) found = feed;
  return found;
}

/** What the house calls its things: left as it is where figures are turned into other units. */
function namesOf(house: House): string[] {
  return [
    ...house.brews.map(({ brew }) => brew),
    ...house.tanks.map(({ tank }) => tank),
    ...house.yeasts.map(({ yeast }) => yeast),
    ...house.jars.map(({ jar }) => jar),
  ];
}

type Rendered = { bytes: Uint8Array<ArrayBuffer>; tag: string; timeZone: string; today: IsoDay };

async function render(parts: Parts, feed: StoredFeed): Promise<Rendered> {
  const { db } = parts.store;
  const state = await readState(db);
  const house = state === null ? null : houseOf(state);
  const timeZone = house?.timeZone ?? 'utc';
  const today = parts.today(timeZone);
  const from = DateTime.fromISO(today, { zone: 'utc' })
    .minus({ days: HISTORY_DAYS })
    .toFormat('yyyy-MM-dd');
  const entries = (await readEntries(db, from)).filter(
    (row) => feed.kinds === null || feed.kinds.includes(row.task.kind),
  );
  const text = calendarText({
    name: house === null ? 'Barmline' : `${house.name}: yeast tasks`,
    timeZone,
    base: parts.base,
    alarm: feed.alarm,
    look: feed.look,
    names: house === null ? [] : namesOf(house),
    entries: entries.map((row) => ({
      uid: row.uid,
      sequence: row.sequence,
      changedAt: new Date(row.changedAt),
      task: row.task,
    })),
  });
  // Encoded here, once, and not at every fetch.
  const bytes = new TextEncoder().encode(text);
  const tag = `"${createHash('sha256').update(bytes).digest('base64url')}"`;
  return { bytes, tag, timeZone, today };
}

/**
 * Renders a feed anew only when something was written or the day has changed: calendars ask far more often. Those who
 * ask while it is rendered wait for the same one.
 */
function renderer(parts: Parts): (feed: StoredFeed) => Promise<Rendered> {
  const kept = new Map<string, { version: number; rendered: Promise<Rendered> }>();
  return async (feed) => {
    const version = parts.store.version();
    const found = kept.get(feed.id);
    if (found?.version === version) {
      const rendered = await found.rendered;
      if (rendered.today === parts.today(rendered.timeZone)) return rendered;
    }
    const rendered = render(parts, feed);
    kept.delete(feed.id);
    if (kept.size >= MAX_KEPT) kept.clear();
    if (version !== null) {
      const mine = { version, rendered };
      kept.set(feed.id, mine);
      // One that failed is tried anew.
      rendered.catch(() => kept.get(feed.id) === mine && kept.delete(feed.id));
    }
    return rendered;
  };
}

/** The feeds that open, read anew only when something was written. */
function openFeeds({ store }: Parts): () => Promise<StoredFeed[]> {
  let kept: { feeds: StoredFeed[]; version: number } | null = null;
  return async () => {
    const version = store.version();
    if (kept !== null && kept.version === version) return kept.feeds;
    const feeds = await readFeeds(store.db);
    if (version !== null) kept = { feeds, version };
    return feeds;
  };
}

/** Whether If-None-Match names this tag (RFC 9110 §13.1.2: compared weakly; `*` names all). */
export function namesTag(ifNoneMatch: string | undefined, tag: string): boolean {
  if (ifNoneMatch === undefined) return false;
  if (ifNoneMatch.trim() === '*') return true;
  return ifNoneMatch.split(',').some((given) => given.trim().replace(/^W\//, '') === tag);
}

export const calendarRoutes = (parts: Parts) => {
  const rendered = renderer(parts);
  const feeds = openFeeds(parts);
  return new Hono().get('/:file{[A-Za-z0-9_-]{43}\\.ics}', async (c) => {
    const token = c.req.param('file').slice(0, -'.ics'.length);
    const feed = opened(await feeds(), token);
    if (feed === null) {
      return c.json(
        errorBody(
          'no-such-feed',
          'There is no calendar here: its address was revoked or mistyped.',
        ),
        404,
      );
    }
    const { bytes, tag } = await rendered(feed);
    // Nothing but the tag tells versions apart: no Last-Modified that could go backwards.
    c.header('ETag', tag);
    c.header('Cache-Control', 'private, no-cache');
    if (namesTag(c.req.header('If-None-Match'), tag)) return c.body(null, 304);
    c.header('Content-Type', 'text/calendar; charset=utf-8');
    c.header('Content-Length', String(bytes.length));
    return c.body(bytes, 200);
  });
};
