// Addresses that calendars subscribe to: list them, make one, revoke one.
import { randomUUID } from 'node:crypto';
import { Hono } from 'hono';
import { hashOf, matches, tokenOf } from '../feed/token.ts';
import { addFeed, readFeeds, revokeFeed, type StoredFeed } from '../store/feeds.ts';
import type { Db } from '../store/index.ts';
import { refuse } from './errors.ts';
import type { Parts } from './parts.ts';
import { type Feed, FeedRequest, IdParam } from './shapes.ts';
import { body, param } from './valid.ts';

const MAX_FEEDS = 100;

// From memory and by the kinds' own documentation; no promise of anybody.
const ADVICE = [
  'A calendar fetches the feed when it likes; the refresh hint in it is only a hint.',
  'Programs on a phone or laptop mostly fetch every few minutes to hours, and at once when asked to.',
  'Calendars on the web mostly fetch every several hours; some take a day or longer, and none can be hurried.',
  'When a brew day slips on the morning itself, trust the page, not the calendar.',
];

type FeedParts = Pick<Parts, 'feedKey' | 'base'>;

function shown(parts: FeedParts, feed: StoredFeed): Feed {
  const token = tokenOf(parts.feedKey, feed.id);
  const address = matches(token, feed.tokenHash) ? `${parts.base}/feed/${token}.ics` : null;
  return {
    id: feed.id,
    kinds: feed.kinds,
    alarm: feed.alarm,
    look: feed.look,
    createdAt: feed.createdAt,
    address,
    webcal: address === null ? null : address.replace(/^https?:/, 'webcal:'),
  };
}

/** The feeds with their addresses, as they are answered everywhere. */
export async function feedsAnswer(parts: FeedParts, db: Db) {
  const feeds = await readFeeds(db);
  return { feeds: feeds.map((feed) => shown(parts, feed)), advice: ADVICE };
}

/** Makes a feed. Its token is derived from its id, and only the hash is stored. */
export async function makeFeed(
  parts: FeedParts,
  tx: Db,
  now: Date,
  wanted: Pick<StoredFeed, 'kinds' | 'alarm' | 'look'>,
): Promise<Feed> {
  const id = randomUUID();
  const feed = {
    id,
    ...wanted,
    tokenHash: hashOf(tokenOf(parts.feedKey, id)),
    createdAt: now.toISOString(),
  };
  await addFeed(tx, feed);
  return shown(parts, feed);
}

export const feedRoutes = (parts: Parts) =>
  new Hono()
    .get('/', async (c) => c.json(await feedsAnswer(parts, parts.store.db), 200))
    .post('/', body(FeedRequest), async (c) => {
      const wanted = c.req.valid('json');
      const made = await parts.store.write(async (tx) => {
        if ((await readFeeds(tx)).length >= MAX_FEEDS) {
          return refuse(
            409,
            'too-many-feeds',
            `There are ${MAX_FEEDS} feeds, which is the most: revoke one that nobody uses.`,
          );
        }
        return makeFeed(parts, tx, parts.store.now(), wanted);
      });
      return c.json({ ...(await feedsAnswer(parts, parts.store.db)), made }, 201);
    })
    .delete('/:id', param(IdParam), async (c) => {
      const { id } = c.req.valid('param');
      const revoked = await parts.store.write((tx) => revokeFeed(tx, id, parts.store.now()));
      if (!revoked) {
        return refuse(
          404,
          'no-such-feed',
          `There is no feed ${id}: perhaps it was revoked already.`,
        );
      }
      return c.json(await feedsAnswer(parts, parts.store.db), 200);
    });
