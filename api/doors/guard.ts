// The door itself: where a password is set, or others can reach the server, nothing is told without a session.
import type { MiddlewareHandler } from 'hono';
import { refuse } from '../routes/errors.ts';
import { needsSession } from '../routes/places.ts';
import type { StoredSession } from '../store/sessions.ts';
import { type DoorParts, sessionOf } from './sessions.ts';

export type DoorEnv = { Variables: { session: StoredSession | null } };

/** Whether the door is shut. It stays shut where others can reach the server, even if its password is lost meanwhile. */
export function isShut({ doors }: Pick<DoorParts, 'doors'>): boolean {
  return doors.reachable || doors.password() !== null;
}

/** Goes before every route, also before those that are added later: see `needsSession`. */
export const door =
  (parts: DoorParts): MiddlewareHandler<DoorEnv> =>
  async (c, next) => {
    const session = isShut(parts) ? await sessionOf(c, parts) : null;
    c.set('session', session);
    if (isShut(parts) && session === null && needsSession(c.req.method, c.req.path)) {
      c.header('WWW-Authenticate', 'Session realm="Barmline"');
      return refuse(401, 'signed-out', 'Sign in first: this server is kept shut by a password.');
    }
    return next();
  };
