// Sessions of those who are signed in. Released: never to be edited; changes go into a migration of their own.
export const id = '0002-sessions';

export const statements = [
  // `password` marks the password that a session was opened with: another one ends it.
  `CREATE TABLE session (
    id TEXT PRIMARY KEY,
    token_hash TEXT NOT NULL UNIQUE,
    password TEXT NOT NULL,
    started_at TEXT NOT NULL,
    seen_at TEXT NOT NULL,
    browser TEXT NOT NULL
  )`,
] as const;
