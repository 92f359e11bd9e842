// Surveys of the plan in force: what one more of something would save, and how it stands up to bad luck. Nothing is stored.
import type { Run } from '../routes/shapes.ts';
import { createRuns, type Runs, type RunsOptions } from './index.ts';
import type { SurveyJob, SurveyResult } from './messages.ts';

const KEPT_RESULTS = 8;

export type Surveys = Pick<
  Runs<SurveyJob>,
  'stop' | 'get' | 'subscribe' | 'ended' | 'discard' | 'close'
> & {
  /** Asks one question. @returns the run, or null while another one is under way */
  start: (job: SurveyJob, options?: { replace?: boolean }) => Run | null;
  /** What came out of a run; null until it has ended, and where it is no longer remembered. */
  result: (id: string) => SurveyResult | null;
};

/** A desk for surveys: at most one at a time, beside the runs that count. */
export function createSurveys(options: RunsOptions): Surveys {
  const { start: startRun, current: _current, ...runs } = createRuns<SurveyJob>(options);
  const results = new Map<string, SurveyResult>();
  return {
    ...runs,
    start: (job, ask) => {
      let id = '';
      const run = startRun(
        job,
        async (result) => {
          results.set(id, result);
          for (const old of [...results.keys()].slice(0, -KEPT_RESULTS)) results.delete(old);
          return { plan: null, became: 'nothing' };
        },
        ask,
      );
      id = run?.id ?? '';
      return run;
    },
    result: (id) => results.get(id) ?? null,
  };
}
