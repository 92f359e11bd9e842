// The tables as the code sees them. What the database really holds is made by the migrations alone;
// a test compares the two.
import { integer, primaryKey, sqliteTable, text } from 'drizzle-orm/sqlite-core';

/** Seasons: a new one begins when a house is imported over an old one; what belongs to the old stays with it. */
export const season = sqliteTable('season', {
  no: integer('no').primaryKey({ autoIncrement: true }),
  startedAt: text('started_at').notNull(),
});

/** The house, one row for each saved revision; the newest is the house. */
export const house = sqliteTable('house', {
  revision: integer('revision').primaryKey(),
  season: integer('season').notNull(),
  document: text('document').notNull(),
  demo: integer('demo', { mode: 'boolean' }).notNull(),
  savedAt: text('saved_at').notNull(),
});

/** What happened: rows are only ever added, and counted from 1 in each season. */
export const record = sqliteTable(
  'record',
  {
    season: integer('season').notNull(),
    no: integer('no').notNull(),
    at: text('at').notNull(),
    entry: text('entry').notNull(),
  },
  (row) => [primaryKey({ columns: [row.season, row.no] })],
);

/** Plans; at most one is in force and at most one is a draft. */
export const plan = sqliteTable('plan', {
  id: text('id').primaryKey(),
  season: integer('season').notNull(),
  madeAt: text('made_at').notNull(),
  status: text('status', { enum: ['in-force', 'draft', 'superseded', 'dismissed'] }).notNull(),
  houseRevision: integer('house_revision').notNull(),
  recordNo: integer('record_no').notNull(),
  document: text('document').notNull(),
  changes: text('changes'),
  inForceAt: text('in_force_at'),
});

/** Entries of the calendar. A UID is random, kept for the life of the entry, and never used again. */
export const calendarEntry = sqliteTable('calendar_entry', {
  uid: text('uid').primaryKey(),
  taskKey: text('task_key').notNull(),
  task: text('task').notNull(),
  day: text('day').notNull(),
  contentHash: text('content_hash').notNull(),
  sequence: integer('sequence').notNull(),
  changedAt: text('changed_at').notNull(),
  firstSeenAt: text('first_seen_at').notNull(),
  goneAt: text('gone_at'),
});

/** Calendar feeds. The token itself is not stored, only its hash. */
export const feed = sqliteTable('feed', {
  id: text('id').primaryKey(),
  kinds: text('kinds'),
  alarm: text('alarm'),
  look: text('look'),
  tokenHash: text('token_hash').notNull(),
  createdAt: text('created_at').notNull(),
  revokedAt: text('revoked_at'),
});

/** Who is signed in. Of what the browser holds only the hash is stored. */
export const session = sqliteTable('session', {
  id: text('id').primaryKey(),
  tokenHash: text('token_hash').notNull(),
  password: text('password').notNull(),
  startedAt: text('started_at').notNull(),
  seenAt: text('seen_at').notNull(),
  browser: text('browser').notNull(),
});
