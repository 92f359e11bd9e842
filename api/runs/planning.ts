// From a wish for a plan to a plan that is stored: starts the run, and puts its result in force or beside as a draft.
import { randomUUID } from 'node:crypto';
import { DateTime } from 'luxon';
import { type Changes, compare, type IsoDay, tasks } from '../../planner/index.ts';
import type { Run } from '../routes/shapes.ts';
import { syncEntries } from '../store/calendar.ts';
import { readHouse, readRevision } from '../store/house.ts';
import type { Db, Store } from '../store/index.ts';
import { addPlan, readPlan, renewInForce, retire, type StoredPlan } from '../store/plans.ts';
import type { Runs, Settled } from './index.ts';
import type { PlanResult } from './messages.ts';
import { houseOf, readState, requestOf, type State } from './state.ts';

export type Planning = { store: Store; runs: Runs };

export type Ask = { seed: number; steps: number | null; anew: boolean; replace: boolean };

/** The clock's date where the house stands. */
export function todayIn(timeZone: string, now: Date): IsoDay {
  return DateTime.fromJSDate(now, { zone: timeZone }).toFormat('yyyy-MM-dd');
}

/**
 * Starts a run on the state as it is.
 * @returns the run, or null while another one is under way that is not to be replaced
 */
export function startPlanning(
  { store, runs }: Planning,
  state: State,
  ask: Ask & { today: IsoDay },
): Run | null {
  const request = requestOf(state, ask);
  const kind = request.inForce === null ? 'plan' : 'replan';
  const against = kind === 'plan' ? (state.inForce?.plan ?? null) : null;
  return runs.start(
    { kind, request, against },
    (result) => store.write((tx) => keepResult(tx, store.now(), state, result)),
    { replace: ask.replace },
  );
}

/** A first plan goes in force at once; every later one is a draft until it is adopted. */
async function keepResult(tx: Db, now: Date, state: State, result: PlanResult): Promise<Settled> {
  const made: Omit<StoredPlan, 'inForceAt'> = {
    id: randomUUID(),
    season: state.stored.season,
    madeAt: now.toISOString(),
    houseRevision: state.stored.revision,
    recordNo: state.recordNo,
    plan: result.plan,
    changes: result.changes,
  };
  // Another season has begun, or a backup was put in place meanwhile: the plan is of a house that is gone.
  const gone =
    (await readHouse(tx))?.season !== made.season ||
    (await readRevision(tx, made.houseRevision)) === null;
  if (gone) return { plan: made.id, became: 'nothing' };
  const inForce = await readPlan(tx, 'in-force');
  if (inForce === null) {
    await addPlan(tx, { ...made, changes: null }, 'in-force');
    await syncCalendar(tx, now);
    return { plan: made.id, became: 'in-force' };
  }
  const changes = made.changes ?? compare(inForce.plan, made.plan, houseOf(state));
  if (saysNothing(changes)) {
    await renewInForce(tx, made);
    await retire(tx, 'draft', 'superseded');
    await syncCalendar(tx, now);
    return { plan: inForce.id, became: 'in-force' };
  }
  await addPlan(tx, { ...made, changes }, 'draft');
  return { plan: made.id, became: 'draft' };
}

/** A draft that differs in nothing that people follow is none. */
function saysNothing({ changes, smaller, tasksAdded, tasksGone, tasksMoved }: Changes): boolean {
  const all = [changes, smaller, tasksAdded, tasksGone, tasksMoved];
  return all.every((list) => list.length === 0);
}

/** Brings the calendar in step with the plan in force and with what is done; inside the transaction that changed them. */
export async function syncCalendar(tx: Db, now: Date): Promise<void> {
  const state = await readState(tx);
  if (state === null || state.inForce === null) return;
  await syncEntries(tx, tasks(state.inForce.plan, houseOf(state), state.record.done), now);
}
