// Putting an earlier plan back: it becomes the draft, with what differs from the plan in force.
import { randomUUID } from 'node:crypto';
import { earlierPlan, type Finding } from '../../planner/index.ts';
import type { Store } from '../store/index.ts';
import { addPlan, readHistory, type StoredPlan } from '../store/plans.ts';
import { readState, recordAt, requestOf, type State, samePlanning } from './state.ts';

/** What came of it: the draft's id, or what the earlier plan would break now. */
export type PutBack = { draft: string } | { broken: Finding[] };

/**
 * Makes an earlier plan the draft, with all that has happened since applied to it.
 * @returns null where the state has moved on meanwhile
 */
export async function putBackEarlier(
  store: Store,
  state: State,
  earlier: StoredPlan,
  today: string,
): Promise<PutBack | null> {
  const ask = { today, seed: earlier.plan.seed, steps: 0, anew: false };
  const { plan, changes } = earlierPlan(requestOf(state, ask), earlier.plan);
  if (plan.broken.length > 0) return { broken: plan.broken };
  return store.write(async (tx) => {
    const now = await readState(tx);
    const same = now?.recordNo === state.recordNo && now.stored.revision === state.stored.revision;
    if (!same || now.inForce?.id !== state.inForce?.id) return null;
    const id = randomUUID();
    const made = {
      id,
      season: state.stored.season,
      madeAt: store.now().toISOString(),
      houseRevision: state.stored.revision,
      recordNo: state.recordNo,
      plan,
      changes,
    };
    await addPlan(tx, made, 'draft');
    return { draft: id };
  });
}

/** The newest earlier plan in force that was made of just this state: news taken back leads to it. */
export async function earlierOfThisState(store: Store, state: State): Promise<StoredPlan | null> {
  const history = await readHistory(store.db, state.stored.season);
  const found = history.find(
    (one) =>
      one.id !== state.inForce?.id &&
      one.houseRevision === state.stored.revision &&
      samePlanning(recordAt(state, one.recordNo), state.record),
  );
  return found ?? null;
}
