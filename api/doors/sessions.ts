// Sessions in a cookie: 256 random bits that only the browser holds; the database holds their hash.
import { createHash, randomBytes, randomUUID } from 'node:crypto';
import type { Context } from 'hono';
import { deleteCookie, getCookie, setCookie } from 'hono/cookie';
import type { Parts } from '../routes/parts.ts';
import { addSession, readSession, type StoredSession, touchSession } from '../store/sessions.ts';

const NAME = 'barmline';
const DAY_MS = 86_400_000;
/** A session that nobody uses for so long is over. */
export const IDLE_DAYS = 30;
/** A session is over after this, however much it is used. */
export const MOST_DAYS = 180;
const TOUCH_MS = 3_600_000;
const TOKEN_BYTES = 32;
const TOKEN = /^[A-Za-z0-9_-]{43}$/;

export type DoorParts = Pick<Parts, 'store' | 'doors' | 'base'>;

const sha256 = (text: string) => createHash('sha256').update(text).digest('hex');

/** Which password a session was opened with: another password, and it opens nothing. */
export const markOf = (passwordHash: string): string => sha256(passwordHash);

function cookieOptions(base: string) {
  const https = base.startsWith('https:');
  return {
    httpOnly: true,
    sameSite: 'Strict',
    path: '/',
    // Over https the name itself insists: a browser takes it only with Secure and for this host alone.
    ...(https ? { secure: true, prefix: 'host' as const } : {}),
  } as const;
}

const before = (now: Date, days: number) => new Date(now.getTime() - days * DAY_MS).toISOString();

/** The session that a request brings, or null where it brings none that holds. */
export async function sessionOf(c: Context, parts: DoorParts): Promise<StoredSession | null> {
  const password = parts.doors.password();
  const token = getCookie(c, NAME, cookieOptions(parts.base).prefix);
  if (password === null || token === undefined || !TOKEN.test(token)) return null;
  const found = await readSession(parts.store.db, sha256(token));
  const now = parts.store.now();
  if (
    found === null ||
    found.password !== markOf(password) ||
    found.seenAt < before(now, IDLE_DAYS) ||
    found.startedAt < before(now, MOST_DAYS)
  ) {
    return null;
  }
  // Noted once an hour and not at every request: reading should not have to write.
  if (now.getTime() - Date.parse(found.seenAt) >= TOUCH_MS) {
    await parts.store.write((tx) => touchSession(tx, found.id, now.toISOString()));
  }
  return found;
}

/** Opens a session and hands its token to the browser. A token that the browser brought along is never taken over. */
export async function openSession(
  c: Context,
  parts: DoorParts,
  passwordHash: string,
): Promise<StoredSession> {
  const token = randomBytes(TOKEN_BYTES).toString('base64url');
  const now = parts.store.now();
  const opened: StoredSession = {
    id: randomUUID(),
    tokenHash: sha256(token),
    password: markOf(passwordHash),
    startedAt: now.toISOString(),
    seenAt: now.toISOString(),
    browser: (c.req.header('User-Agent') ?? '').slice(0, 200),
  };
  await parts.store.write((tx) =>
    addSession(tx, opened, {
      startedBefore: before(now, MOST_DAYS),
      seenBefore: before(now, IDLE_DAYS),
    }),
  );
  setCookie(c, NAME, token, { ...cookieOptions(parts.base), maxAge: MOST_DAYS * 86_400 });
  return opened;
}

/** Tells the browser to forget its token. */
export function forgetCookie(c: Context, base: string): void {
  deleteCookie(c, NAME, cookieOptions(base));
}
