// A brew that is being moved: what that would break or cost, at once and without a search. Nothing is stored.
import { Hono } from 'hono';
import { resolveNews, type Trial, trials } from '../../planner/index.ts';
import { houseOf, readState, requestOf, type State } from '../runs/state.ts';
import { refuse, refuseProblems } from './errors.ts';
import type { Parts } from './parts.ts';
import { type TrialAnswer, TrialRequest } from './trial-shapes.ts';
import { body } from './valid.ts';

type Asked = { brew: string; day: string; tank: string };
type Unfolded = { of: string; tryOut: (move: Asked) => Trial };

export function trialRoutes(parts: Parts) {
  // A drag asks again and again of the same plan: it is unfolded once for all of them.
  let last: Unfolded | null = null;
  const unfolded = (state: State, plan: string, today: string) => {
    const of = [plan, state.stored.revision, state.recordNo, today].join(' ');
    if (last?.of !== of) {
      const request = requestOf(state, { today, seed: 1, steps: null, anew: false });
      last = { of, tryOut: trials(request) };
    }
    return last.tryOut;
  };
  return new Hono().post('/', body(TrialRequest), async (c) => {
    const move = c.req.valid('json');
    const state = await readState(parts.store.db);
    if (state === null || state.inForce === null) {
      return refuse(409, 'no-plan', 'There is no plan yet on which a move could be tried.');
    }
    const house = houseOf(state);
    const today = parts.today(house.timeZone);
    // What could not be pinned is not tried either, and is refused in the same words.
    const news = { kind: 'pinned' as const, source: null, ...move };
    const resolved = resolveNews(news, state.record, house, state.inForce.plan, today);
    if ('problems' in resolved) return refuseProblems(resolved.problems, 422, 'not-tried');
    const trial = unfolded(state, state.inForce.id, today)(move);
    return c.json({ trial, plan: state.inForce.id } satisfies TrialAnswer, 200);
  });
}
