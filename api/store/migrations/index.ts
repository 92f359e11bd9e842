// The migrations in the order in which they run. They only add: a released one is never edited or removed.
import * as first from './0001-first.ts';
import * as sessions from './0002-sessions.ts';
import * as feedLook from './0003-feed-look.ts';
import * as planHistory from './0004-plan-history.ts';

export type Migration = { id: string; statements: readonly string[] };

export const MIGRATIONS: readonly Migration[] = [first, sessions, feedLook, planHistory];
