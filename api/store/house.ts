// The house and its revisions: read, save against the revision that was edited, tell what changed.
import { desc, eq, lte } from 'drizzle-orm';
import { House } from '../../planner/index.ts';
import type { Db } from './index.ts';
import { house, season } from './tables.ts';

const KEPT_REVISIONS = 200;

export type StoredHouse = {
  house: House;
  revision: number;
  season: number;
  demo: boolean;
  savedAt: string;
};

function frozen<T>(value: T): T {
  if (typeof value === 'object' && value !== null && !Object.isFrozen(value)) {
    Object.freeze(value);
    Object.values(value).forEach(frozen);
  }
  return value;
}

let lastRead: { document: string; house: House } | null = null;

/** A house is read several times for every answer, and reading sixty brews takes 20 ms: the last one is kept, frozen. */
function houseIn(document: string): House {
  if (lastRead?.document !== document) {
    lastRead = { document, house: frozen(House.parse(JSON.parse(document))) };
  }
  return lastRead.house;
}

function stored(row: typeof house.$inferSelect): StoredHouse {
  return {
    house: houseIn(row.document),
    revision: row.revision,
    season: row.season,
    demo: row.demo,
    savedAt: row.savedAt,
  };
}

/** The house as it stands, or null in an empty database. */
export async function readHouse(db: Db): Promise<StoredHouse | null> {
  const [row] = await db.select().from(house).orderBy(desc(house.revision)).limit(1);
  return row === undefined ? null : stored(row);
}

/** The house as it stood at a revision, or null where that is no longer kept. */
export async function readRevision(db: Db, revision: number): Promise<StoredHouse | null> {
  const [row] = await db.select().from(house).where(eq(house.revision, revision));
  return row === undefined ? null : stored(row);
}

export type SaveHouse = {
  house: House;
  demo: boolean;
  at: Date;
  /** A new season: record, plans and facts of the old one no longer count. */
  startOver: boolean;
};

/** Saves the next revision. The caller has compared revisions inside the same transaction. */
export async function saveHouse(tx: Db, save: SaveHouse): Promise<StoredHouse> {
  const before = await readHouse(tx);
  const savedAt = save.at.toISOString();
  let seasonNo = before?.season;
  if (seasonNo === undefined || save.startOver) {
    const [made] = await tx.insert(season).values({ startedAt: savedAt }).returning();
    if (made === undefined) throw new Error('the season was not stored');
    seasonNo = made.no;
  }
  const revision = (before?.revision ?? 0) + 1;
  await tx.insert(house).values({
    revision,
    season: seasonNo,
    document: JSON.stringify(save.house),
    demo: save.demo,
    savedAt,
  });
  await tx.delete(house).where(lte(house.revision, revision - KEPT_REVISIONS));
  return { house: save.house, revision, season: seasonNo, demo: save.demo, savedAt };
}
