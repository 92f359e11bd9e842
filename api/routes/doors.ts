// Signing in and out, and the list of those who are signed in.
import { Hono } from 'hono';
import type { z } from 'zod';
import { addressOf } from '../doors/address.ts';
import { type DoorEnv, isShut } from '../doors/guard.ts';
import { isPassword } from '../doors/password.ts';
import { forgetCookie, markOf, openSession } from '../doors/sessions.ts';
import { createTries } from '../doors/tries.ts';
import { endSession, readSessions, type StoredSession } from '../store/sessions.ts';
import { type DoorsAnswer, SignIn } from './door-shapes.ts';
import { refuse } from './errors.ts';
import type { Parts } from './parts.ts';
import { problemsOf } from './problems.ts';
import { IdParam } from './shapes.ts';
import { bodyBy, param } from './valid.ts';

/** Who is signed in is told only to those who are. */
async function doorsAnswer(parts: Parts, session: StoredSession | null): Promise<DoorsAnswer> {
  const shut = isShut(parts);
  if (session === null) return { shut, signedIn: false, sessions: [] };
  const sessions = (await readSessions(parts.store.db)).filter(
    ({ password }) => password === session.password,
  );
  return {
    shut,
    signedIn: true,
    sessions: sessions.map(({ id, startedAt, seenAt, browser }) => ({
      id,
      startedAt,
      seenAt,
      browser,
      here: id === session.id,
    })),
  };
}

/** A refusal never says back what may be a password. */
const signInBody = bodyBy<z.input<typeof SignIn>, SignIn>((value) => {
  const read = SignIn.safeParse(value);
  if (read.success) return read.data;
  const hidden =
    typeof value === 'object' && value !== null && 'password' in value
      ? { ...value, password: '(not shown)' }
      : value;
  const problems = problemsOf(read.error, hidden, '(body)');
  return refuse(400, 'bad-request', 'The body has to be {"password": "…"}.', problems);
});

export const doorRoutes = (parts: Parts) => {
  const tries = createTries();
  return new Hono<DoorEnv>()
    .get('/', async (c) => c.json(await doorsAnswer(parts, c.get('session')), 200))
    .post('/sign-in', signInBody, async (c) => {
      const stored = parts.doors.password();
      if (stored === null) {
        return refuse(
          409,
          'no-password',
          'No password is set, so there is nothing to sign in to. `npm run password` sets one.',
        );
      }
      const address = addressOf(c, parts.doors.proxies);
      const waitS = await tries.count(address);
      if (waitS > 0) {
        c.header('Retry-After', String(waitS));
        const minutes = Math.ceil(waitS / 60);
        return refuse(
          429,
          'too-many-tries',
          `Too many wrong passwords. Try again in ${minutes === 1 ? 'a minute' : `${minutes} minutes`}.`,
        );
      }
      if (!(await isPassword(stored, c.req.valid('json').password))) {
        return refuse(401, 'wrong-password', 'That is not the password.');
      }
      await tries.forget(address);
      return c.json(await doorsAnswer(parts, await openSession(c, parts, stored)), 200);
    })
    .post('/sign-out', async (c) => {
      const session = c.get('session');
      if (session !== null) {
        await parts.store.write((tx) => endSession(tx, session.id, session.password));
      }
      forgetCookie(c, parts.base);
      return c.json(await doorsAnswer(parts, null), 200);
    })
    .delete('/sessions/:id', param(IdParam), async (c) => {
      const stored = parts.doors.password();
      const { id } = c.req.valid('param');
      const ended =
        stored !== null && (await parts.store.write((tx) => endSession(tx, id, markOf(stored))));
      if (!ended) return refuse(404, 'no-such-session', 'There is no session of this id.');
      const session = c.get('session');
      const mine = session?.id === id;
      if (mine) forgetCookie(c, parts.base);
      return c.json(await doorsAnswer(parts, mine ? null : session), 200);
    });
};
