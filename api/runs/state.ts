// Everything that planning starts from, read in one go: the house, what happened, the plan in force.
import {
  foldRecord,
  type House,
  houseNow,
  type PlanRequest,
  type RecordEntry,
  type RecordState,
} from '../../planner/index.ts';
import { readHouse, type StoredHouse } from '../store/house.ts';
import type { Db } from '../store/index.ts';
import { readPlan, type StoredPlan } from '../store/plans.ts';
import { readRecord } from '../store/record.ts';

export type State = {
  stored: StoredHouse;
  entries: RecordEntry[];
  /** Number of the newest entry; 0: none. */
  recordNo: number;
  record: RecordState;
  inForce: StoredPlan | null;
};

/** The state of the season, or null in an empty database. */
export async function readState(db: Db): Promise<State | null> {
  const stored = await readHouse(db);
  if (stored === null) return null;
  const entries = (await readRecord(db, stored.season)).map(({ entry }) => entry);
  return {
    stored,
    entries,
    recordNo: entries.at(-1)?.no ?? 0,
    record: foldRecord(entries),
    inForce: await readPlan(db, 'in-force'),
  };
}

/** The house as it is now: as it was entered, with what news changed about it. This is what is planned and shown. */
export function houseOf({ stored, record }: Pick<State, 'stored' | 'record'>): House {
  return houseNow(stored.house, record.overlay);
}

/** The record as it stood when its newest entry was this one. */
export function recordAt(state: State, recordNo: number): RecordState {
  if (recordNo === state.recordNo) return state.record;
  return foldRecord(state.entries.filter((entry) => entry.no <= recordNo));
}

/** Whether two states of the record ask for the same plan: finished tasks alone move nothing. */
export function samePlanning(a: RecordState, b: RecordState): boolean {
  // packs bought and starters begun as planned move nothing; the next re-plan counts on them
  const planning = (state: RecordState) => {
    const { bought: _bought, begun: _begun, ...facts } = state.facts;
    return JSON.stringify([facts, state.pins, state.overlay]);
  };
  return planning(a) === planning(b);
}

/** How a plan made from an earlier state lags behind, in a sentence; null where it does not. */
export function behind(
  state: State,
  made: Pick<StoredPlan, 'houseRevision' | 'recordNo'>,
): { house: boolean; record: boolean; says: string | null } {
  const house = made.houseRevision !== state.stored.revision;
  const record = !samePlanning(recordAt(state, made.recordNo), state.record);
  const reasons = [...(house ? ['the house was edited'] : []), ...(record ? ['news came in'] : [])];
  return {
    house,
    record,
    says:
      reasons.length === 0
        ? null
        : `Since this plan was made, ${reasons.join(' and ')}. Plan again to take it in.`,
  };
}

/** What the planner is asked. */
export function requestOf(
  state: State,
  ask: { today: string; seed: number; steps: number | null; anew: boolean },
): PlanRequest {
  return {
    house: houseOf(state),
    today: ask.today,
    facts: state.record.facts,
    pins: state.record.pins,
    inForce: ask.anew ? null : (state.inForce?.plan ?? null),
    seed: ask.seed,
    steps: ask.steps,
  };
}
