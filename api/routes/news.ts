// News comes in: it is written into the record, and the planner answers with a draft.
import { Hono } from 'hono';
import { News, resolveNews } from '../../planner/index.ts';
import { startPlanning, syncCalendar } from '../runs/planning.ts';
import { behind, readState, type State, samePlanning } from '../runs/state.ts';
import { retire } from '../store/plans.ts';
import { addEntry } from '../store/record.ts';
import { refuse, refuseProblems } from './errors.ts';
import { offerEarlier } from './history.ts';
import type { Parts } from './parts.ts';
import { body } from './valid.ts';

type InForce = State & { inForce: NonNullable<State['inForce']> };

function insistOnPlan(state: State | null): InForce {
  if (state === null || state.inForce === null) {
    return refuse(409, 'no-plan', 'There is no plan yet that news could be about: plan first.');
  }
  return { ...state, inForce: state.inForce };
}

export const newsRoutes = (parts: Parts) =>
  new Hono().post('/', body(News), async (c) => {
    const news = c.req.valid('json');
    const { entry, after, moves, back } = await parts.store.write(async (tx) => {
      const before = insistOnPlan(await readState(tx));
      const { house } = before.stored;
      const resolved = resolveNews(
        news,
        before.record,
        house,
        before.inForce.plan,
        parts.today(house.timeZone),
      );
      if ('problems' in resolved) return refuseProblems(resolved.problems, 409, 'news-refused');
      const { season } = before.stored;
      await addEntry(tx, season, parts.store.now(), resolved.entry);
      await syncCalendar(tx, parts.store.now());
      const after = insistOnPlan(await readState(tx));
      const moves = !samePlanning(before.record, after.record);
      // Taken back to where the plan in force was made: that plan is the answer, and no draft is wanted.
      const back = moves && behind(after, after.inForce).says === null;
      if (back) await retire(tx, 'draft', 'superseded');
      return { entry: resolved.entry.no, after, moves, back };
    });
    if (back) parts.runs.discard();
    // news taken back may lead to an earlier plan: that is the draft, and nothing is searched for
    const undone = news.kind === 'undone' && moves && !back && (await offerEarlier(parts, after));
    if (undone) parts.runs.discard();
    if (undone || back || !moves) return c.json({ entry, run: null }, 201);
    const run = startPlanning(parts, after, {
      today: parts.today(after.stored.house.timeZone),
      seed: after.inForce.plan.seed,
      steps: parts.steps,
      anew: false,
      replace: true,
    });
    return c.json({ entry, run }, 201);
  });
