// Plans that are or were in force, and putting an earlier one back as a draft.
import { Hono } from 'hono';
import { earlierOfThisState, putBackEarlier } from '../runs/earlier.ts';
import { readState, recordAt, type State, samePlanning } from '../runs/state.ts';
import { readHistory, type StoredPlan } from '../store/plans.ts';
import { draftAnswer } from './draft.ts';
import { refuse, refuseProblems } from './errors.ts';
import type { HistoryAnswer } from './history-shapes.ts';
import type { Parts } from './parts.ts';
import { IdParam } from './shapes.ts';
import { param } from './valid.ts';

async function history(parts: Parts): Promise<{ state: State; plans: StoredPlan[] } | null> {
  const state = await readState(parts.store.db);
  if (state === null) return null;
  return { state, plans: await readHistory(parts.store.db, state.stored.season) };
}

function row(state: State, one: StoredPlan): HistoryAnswer['plans'][number] {
  const { id, madeAt, recordNo, houseRevision, plan } = one;
  return {
    id,
    madeAt,
    inForceAt: one.inForceAt ?? madeAt,
    inForce: id === state.inForce?.id,
    today: plan.today,
    recordNo,
    houseRevision,
    totals: plan.totals,
    sameState:
      houseRevision === state.stored.revision &&
      samePlanning(recordAt(state, recordNo), state.record),
  };
}

export const historyRoutes = (parts: Parts) =>
  new Hono()
    .get('/', async (c) => {
      const found = await history(parts);
      const plans = found?.plans.map((one) => row(found.state, one)) ?? [];
      return c.json({ plans } satisfies HistoryAnswer, 200);
    })
    .post('/:id/put-back', param(IdParam), async (c) => {
      const found = await history(parts);
      const earlier = found?.plans.find(({ id }) => id === c.req.valid('param').id);
      if (found === null || earlier === undefined || found.state.inForce === null) {
        return refuse(404, 'no-such-plan', 'No plan of this season with this id was in force.');
      }
      if (earlier.id === found.state.inForce.id) {
        return refuse(409, 'in-force', 'This plan is in force already.');
      }
      const today = parts.today(found.state.stored.house.timeZone);
      const result = await putBackEarlier(parts.store, found.state, earlier, today);
      if (result === null) {
        return refuse(
          409,
          'state-moved',
          'Nothing was changed: news came in meanwhile. Try again.',
        );
      }
      if ('broken' in result) {
        const problems = result.broken.map(({ rule, subject, amount, unit, says, remedy }) => ({
          code: `plan.${rule}`,
          path: subject,
          value: `${amount} ${unit}`,
          bound: null,
          message: says,
          remedy,
          level: 'error' as const,
        }));
        return refuseProblems(problems, 409, 'facts-forbid');
      }
      parts.runs.discard();
      return c.json(await draftAnswer(parts.store.db), 200);
    });

/** The draft that news taken back leads to: an earlier plan of just this state. @returns whether there is one */
export async function offerEarlier(parts: Parts, state: State): Promise<boolean> {
  const earlier = await earlierOfThisState(parts.store, state);
  if (earlier === null) return false;
  const today = parts.today(state.stored.house.timeZone);
  const result = await putBackEarlier(parts.store, state, earlier, today);
  return result !== null && 'draft' in result;
}
