// The first tables. Released: never to be edited; changes go into a migration of their own.
export const id = '0001-first';

export const statements = [
  `CREATE TABLE season (
    no INTEGER PRIMARY KEY AUTOINCREMENT,
    started_at TEXT NOT NULL
  )`,
  `CREATE TABLE house (
    revision INTEGER PRIMARY KEY,
    season INTEGER NOT NULL REFERENCES season (no),
    document TEXT NOT NULL,
    demo INTEGER NOT NULL,
    saved_at TEXT NOT NULL
  )`,
  `CREATE TABLE record (
    season INTEGER NOT NULL REFERENCES season (no),
    no INTEGER NOT NULL CHECK (no > 0),
    at TEXT NOT NULL,
    entry TEXT NOT NULL,
    PRIMARY KEY (season, no)
  )`,
  // What happened cannot be rewritten, not even by a mistake in the code.
  `CREATE TRIGGER record_is_not_changed BEFORE UPDATE ON record
    BEGIN SELECT RAISE (ABORT, 'the record is only ever added to'); END`,
  `CREATE TRIGGER record_is_not_deleted BEFORE DELETE ON record
    BEGIN SELECT RAISE (ABORT, 'the record is only ever added to'); END`,
  `CREATE TABLE plan (
    id TEXT PRIMARY KEY,
    season INTEGER NOT NULL REFERENCES season (no),
    made_at TEXT NOT NULL,
    status TEXT NOT NULL CHECK (status IN ('in-force', 'draft', 'superseded', 'dismissed')),
    house_revision INTEGER NOT NULL,
    record_no INTEGER NOT NULL,
    document TEXT NOT NULL,
    changes TEXT
  )`,
  `CREATE UNIQUE INDEX plan_one_in_force ON plan (status) WHERE status = 'in-force'`,
  `CREATE UNIQUE INDEX plan_one_draft ON plan (status) WHERE status = 'draft'`,
  `CREATE TABLE calendar_entry (
    uid TEXT PRIMARY KEY,
    task_key TEXT NOT NULL,
    task TEXT NOT NULL,
    day TEXT NOT NULL,
    content_hash TEXT NOT NULL,
    sequence INTEGER NOT NULL,
    changed_at TEXT NOT NULL,
    first_seen_at TEXT NOT NULL,
    gone_at TEXT
  )`,
  'CREATE UNIQUE INDEX calendar_entry_live_key ON calendar_entry (task_key) WHERE gone_at IS NULL',
  'CREATE INDEX calendar_entry_live_day ON calendar_entry (day) WHERE gone_at IS NULL',
  `CREATE TABLE feed (
    id TEXT PRIMARY KEY,
    kinds TEXT,
    alarm TEXT,
    token_hash TEXT NOT NULL,
    created_at TEXT NOT NULL,
    revoked_at TEXT
  )`,
] as const;
