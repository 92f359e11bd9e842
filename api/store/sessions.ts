// Sessions: who is signed in, by the hash of what their browser holds.
import { and, asc, desc, eq, lt, notInArray, or } from 'drizzle-orm';
import type { Db } from './index.ts';
import { session } from './tables.ts';

const MOST_SESSIONS = 50;

export type StoredSession = typeof session.$inferSelect;

/** The session of a token's hash, however old. */
export async function readSession(db: Db, tokenHash: string): Promise<StoredSession | null> {
  const [row] = await db.select().from(session).where(eq(session.tokenHash, tokenHash));
  return row ?? null;
}

/** All sessions, the one used last first. */
export function readSessions(db: Db): Promise<StoredSession[]> {
  return db.select().from(session).orderBy(desc(session.seenAt), asc(session.id));
}

/** Adds a session, and drops those that were over before these moments or are too many. */
export async function addSession(
  tx: Db,
  added: StoredSession,
  over: { startedBefore: string; seenBefore: string },
): Promise<void> {
  await tx
    .delete(session)
    .where(or(lt(session.startedAt, over.startedBefore), lt(session.seenAt, over.seenBefore)));
  await tx.insert(session).values(added);
  const kept = (await readSessions(tx)).slice(0, MOST_SESSIONS).map(({ id }) => id);
  await tx.delete(session).where(notInArray(session.id, kept));
}

export async function touchSession(tx: Db, id: string, seenAt: string): Promise<void> {
  await tx.update(session).set({ seenAt }).where(eq(session.id, id));
}

/** Ends a session. @returns false where there is none of this id under this password */
export async function endSession(tx: Db, id: string, password: string): Promise<boolean> {
  const ended = await tx
    .delete(session)
    .where(and(eq(session.id, id), eq(session.password, password)))
    .returning({ id: session.id });
  return ended.length > 0;
}
