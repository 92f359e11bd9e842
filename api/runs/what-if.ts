// Plans of a house that is not saved: what would come of it. The same runs, on a desk of their own; nothing is stored.
import { randomUUID } from 'node:crypto';
import type { House } from '../../planner/index.ts';
import type { Run } from '../routes/shapes.ts';
import { createRuns, type Runs, type RunsOptions } from './index.ts';
import type { PlanResult } from './messages.ts';
import { requestOf, type State } from './state.ts';

/** A plan is large: only the last few results are remembered. */
const KEPT_RESULTS = 4;

export type WhatIf = {
  /** The house as it would be; null: as it stands. */
  house: House | null;
  today: string;
  seed: number;
  steps: number | null;
  /** Plan from what has happened alone, as if no plan were in force. */
  anew: boolean;
  /** Stop and discard a what-if that is under way. */
  replace: boolean;
};

export type WhatIfs = Pick<Runs, 'stop' | 'get' | 'subscribe' | 'ended' | 'discard' | 'close'> & {
  /** Plans the house as it would be. @returns the run, or null while another one is under way */
  start: (state: State, ask: WhatIf) => Run | null;
  /** What came out of a run; null until it has ended, and where it is no longer remembered. */
  result: (id: string) => PlanResult | null;
};

/** A desk for what-ifs: at most one at a time, beside the runs that count. */
export function createWhatIfs(options: RunsOptions): WhatIfs {
  const { start: startRun, current: _current, ...runs } = createRuns(options);
  const results = new Map<string, PlanResult>();
  return {
    ...runs,
    start: (state, ask) => {
      const { stored } = state;
      const asked = { ...state, stored: { ...stored, house: ask.house ?? stored.house } };
      const request = requestOf(asked, ask);
      const kind = request.inForce === null ? 'plan' : 'replan';
      const against = kind === 'plan' ? (state.inForce?.plan ?? null) : null;
      let id = '';
      const run = startRun(
        { kind, request, against },
        async (result) => {
          results.set(id, result);
          for (const old of [...results.keys()].slice(0, -KEPT_RESULTS)) results.delete(old);
          return { plan: randomUUID(), became: 'nothing' };
        },
        { replace: ask.replace },
      );
      id = run?.id ?? '';
      return run;
    },
    result: (id) => results.get(id) ?? null,
  };
}
