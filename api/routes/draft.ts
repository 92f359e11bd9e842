// The draft that may take the place of the plan in force: what differs, adopt it, dismiss it.
import { Hono } from 'hono';
import { syncCalendar } from '../runs/planning.ts';
import { behind, readState } from '../runs/state.ts';
import type { Db } from '../store/index.ts';
import { adopt, readPlan, retire } from '../store/plans.ts';
import { refuse } from './errors.ts';
import type { Parts } from './parts.ts';
import { planAnswer } from './plan.ts';
import { type DraftAnswer, DraftChoice } from './shapes.ts';
import { body } from './valid.ts';

/** The draft as it is answered everywhere. */
export async function draftAnswer(db: Db): Promise<DraftAnswer> {
  const [state, draft] = [await readState(db), await readPlan(db, 'draft')];
  if (state === null || draft === null || draft.changes === null) return { draft: null };
  const { says } = behind(state, draft);
  return {
    draft: {
      id: draft.id,
      madeAt: draft.madeAt,
      plan: draft.plan,
      changes: draft.changes,
      stale: says !== null,
      says,
    },
  };
}

async function insistOnDraft(tx: Db, wanted: string): Promise<void> {
  const { draft } = await draftAnswer(tx);
  if (draft === null) {
    return refuse(404, 'no-draft', 'There is no draft: it was adopted, dismissed or never made.');
  }
  if (draft.id !== wanted) {
    return refuse(
      409,
      'another-draft',
      'Another draft has been made since. Look at that one first.',
    );
  }
}

export const draftRoutes = (parts: Parts) =>
  new Hono()
    .get('/', async (c) => c.json(await draftAnswer(parts.store.db), 200))
    .post('/adopt', body(DraftChoice), async (c) => {
      const { draft } = c.req.valid('json');
      await parts.store.write(async (tx) => {
        await insistOnDraft(tx, draft);
        const answer = await draftAnswer(tx);
        if (answer.draft?.stale) {
          return refuse(409, 'stale-draft', `Nothing was changed. ${answer.draft.says}`);
        }
        await adopt(tx, draft, parts.store.now());
        await syncCalendar(tx, parts.store.now());
      });
      return c.json(await planAnswer(parts), 200);
    })
    .post('/dismiss', body(DraftChoice), async (c) => {
      const { draft } = c.req.valid('json');
      await parts.store.write(async (tx) => {
        await insistOnDraft(tx, draft);
        await retire(tx, 'draft', 'dismissed');
      });
      return c.json(await draftAnswer(parts.store.db), 200);
    });
