// Plans: the one in force, the draft that may take its place, and those of before.
import { and, eq, inArray, isNotNull, sql } from 'drizzle-orm';
import { type Changes, type Plan, settledPlan } from '../../planner/index.ts';
import type { Db } from './index.ts';
import { plan } from './tables.ts';

export type StoredPlan = {
  id: string;
  season: number;
  madeAt: string;
  houseRevision: number;
  recordNo: number;
  plan: Plan;
  changes: Changes | null;
  /** When it came in force; null: it never was. */
  inForceAt: string | null;
};

export type PlanStatus = (typeof plan.$inferSelect)['status'];

// A stored plan was made by the planner and is trusted: it is not parsed again on every read.
function stored(row: typeof plan.$inferSelect): StoredPlan {
  return {
    id: row.id,
    season: row.season,
    madeAt: row.madeAt,
    houseRevision: row.houseRevision,
    recordNo: row.recordNo,
    plan: JSON.parse(row.document) as Plan,
    changes: row.changes === null ? null : (JSON.parse(row.changes) as Changes),
    inForceAt: row.inForceAt,
  };
}

/** The plan with this status (there is at most one in force and one draft), or null. */
export async function readPlan(db: Db, status: 'in-force' | 'draft'): Promise<StoredPlan | null> {
  const [row] = await db.select().from(plan).where(eq(plan.status, status));
  return row === undefined ? null : stored(row);
}

/**
 * The order in which plans were stored, which is that in which they came in force: there is one draft at a time. A
 * clock that was wrong for a while does not change it.
 */
const NEWEST_FIRST = sql`rowid DESC`;

/** How many plans that are no longer wanted stay to look back at: a house that re-plans daily does not grow for ever. */
const KEPT_PLANS = 50;

/** Adds a plan; one that had its status steps back to superseded. */
export async function addPlan(
  tx: Db,
  added: Omit<StoredPlan, 'inForceAt'>,
  status: 'in-force' | 'draft',
): Promise<void> {
  await retire(tx, status, 'superseded');
  await tx.insert(plan).values({
    id: added.id,
    season: added.season,
    madeAt: added.madeAt,
    status,
    houseRevision: added.houseRevision,
    recordNo: added.recordNo,
    document: JSON.stringify(added.plan),
    changes: added.changes === null ? null : JSON.stringify(added.changes),
    inForceAt: status === 'in-force' ? added.madeAt : null,
  });
  const old = await tx
    .select({ id: plan.id })
    .from(plan)
    .where(inArray(plan.status, ['superseded', 'dismissed']))
    .orderBy(NEWEST_FIRST)
    .limit(1000)
    .offset(KEPT_PLANS);
  if (old.length > 0) {
    await tx.delete(plan).where(
      inArray(
        plan.id,
        old.map(({ id }) => id),
      ),
    );
  }
}

/** Takes the plan with a status out of it. */
export async function retire(
  tx: Db,
  from: 'in-force' | 'draft',
  to: 'superseded' | 'dismissed',
): Promise<void> {
  await tx.update(plan).set({ status: to }).where(eq(plan.status, from));
}

/**
 * Puts the draft in force; the plan before it is kept as superseded. What it cost to move away from that one is past.
 * @returns false where there is no such draft
 */
export async function adopt(tx: Db, id: string, at: Date): Promise<boolean> {
  const [row] = await tx
    .select()
    .from(plan)
    .where(and(eq(plan.id, id), eq(plan.status, 'draft')));
  if (row === undefined) return false;
  await retire(tx, 'in-force', 'superseded');
  const document = JSON.stringify(settledPlan(stored(row).plan));
  await tx
    .update(plan)
    .set({ status: 'in-force', document, inForceAt: at.toISOString() })
    .where(eq(plan.id, id));
  return true;
}

/**
 * A plan that says the same as the one in force, made from the newest state, takes its place without a word: nobody
 * follows anything else than before.
 */
export async function renewInForce(tx: Db, made: Omit<StoredPlan, 'inForceAt'>): Promise<void> {
  await tx
    .update(plan)
    .set({
      houseRevision: made.houseRevision,
      recordNo: made.recordNo,
      document: JSON.stringify(settledPlan(made.plan)),
    })
    .where(eq(plan.status, 'in-force'));
}

/** The plans of a season that are or were in force, the newest first. */
export async function readHistory(db: Db, season: number): Promise<StoredPlan[]> {
  const rows = await db
    .select()
    .from(plan)
    .where(and(eq(plan.season, season), isNotNull(plan.inForceAt)))
    .orderBy(NEWEST_FIRST);
  return rows.map(stored);
}
