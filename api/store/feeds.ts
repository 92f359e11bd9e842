// Calendar feeds: what each shows, and the hash of the token that opens it.
import { and, asc, eq, isNull } from 'drizzle-orm';
import type { TaskKind } from '../../planner/index.ts';
import { type Alarm, FeedLook } from '../routes/feed-shapes.ts';
import type { Db } from './index.ts';
import { feed } from './tables.ts';

export type StoredFeed = {
  id: string;
  kinds: TaskKind[] | null;
  alarm: Alarm | null;
  look: FeedLook;
  tokenHash: string;
  createdAt: string;
};

function stored(row: typeof feed.$inferSelect): StoredFeed {
  return {
    id: row.id,
    kinds: row.kinds === null ? null : (JSON.parse(row.kinds) as TaskKind[]),
    alarm: row.alarm === null ? null : (JSON.parse(row.alarm) as Alarm),
    look: FeedLook.parse(row.look === null ? {} : JSON.parse(row.look)),
    tokenHash: row.tokenHash,
    createdAt: row.createdAt,
  };
}

/** The feeds that open, oldest first. */
export async function readFeeds(db: Db): Promise<StoredFeed[]> {
  const rows = await db
    .select()
    .from(feed)
    .where(isNull(feed.revokedAt))
    .orderBy(asc(feed.createdAt), asc(feed.id));
  return rows.map(stored);
}

export async function addFeed(tx: Db, added: StoredFeed): Promise<void> {
  await tx.insert(feed).values({
    id: added.id,
    kinds: added.kinds === null ? null : JSON.stringify(added.kinds),
    alarm: added.alarm === null ? null : JSON.stringify(added.alarm),
    look: JSON.stringify(added.look),
    tokenHash: added.tokenHash,
    createdAt: added.createdAt,
  });
}

/** Closes a feed for good. @returns false where there is no open feed of this id */
export async function revokeFeed(tx: Db, id: string, at: Date): Promise<boolean> {
  const revoked = await tx
    .update(feed)
    .set({ revokedAt: at.toISOString() })
    .where(and(eq(feed.id, id), isNull(feed.revokedAt)))
    .returning({ id: feed.id });
  return revoked.length > 0;
}
