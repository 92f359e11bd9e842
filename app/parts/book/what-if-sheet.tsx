// What the plan would make of the house as it is written, before it is saved: progress, a stop, and what differs.
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useEffect, useRef } from 'react';
import { Button, ProgressBar } from 'react-aria-components';
import {
  ChangeList,
  CostTable,
  SmallerChanges,
  summaryWords,
} from '../../pages/tasks/draft-notice.tsx';
import { planQuery } from '../../queries/plan.ts';
import { forgetWhatIf, stopWhatIf, type WhatIf, type WhatIfResult } from '../../queries/what-if.ts';
import { bestWords } from '../best-words.ts';
import { ErrorNotice } from '../failed.tsx';
import { money } from '../money.ts';
import { count } from '../words.ts';

export function WhatIfSheet(props: { whatIf: WhatIf; outdated: boolean }) {
  const cache = useQueryClient();
  const stop = useMutation(stopWhatIf(cache));
  const plan = useQuery(planQuery).data?.plan ?? null;
  const { run, result } = props.whatIf;
  const { progress } = run;
  const place = useRef<HTMLElement>(null);
  const state = `${run.id} ${run.state}`;
  useEffect(() => {
    // It was asked for from wherever one stood on the page.
    if (state !== '') place.current?.scrollIntoView({ block: 'nearest' });
  }, [state]);
  const share = progress && progress.steps > 0 ? progress.stepsDone / progress.steps : 0;
  return (
    <section className="what-if" aria-labelledby="what-if" ref={place}>
      <h2 id="what-if">What the plan would make of it</h2>
      {run.state === 'running' && (
        <div className="planning">
          <ProgressBar value={share * 100} aria-label="Trying it" className="planning-bar">
            {({ percentage }) => (
              <svg width="100%" height="6" aria-hidden="true">
                <line className="whole" x1="0" x2="100%" y1="3" y2="3" />
                <line className="done" x1="0" x2={`${percentage ?? 0}%`} y1="3" y2="3" />
              </svg>
            )}
          </ProgressBar>
          <p className="figures">Trying it, nothing is saved: {bestWords(run, plan)}</p>
          <Button
            className="button small"
            isDisabled={stop.isPending}
            onPress={() => stop.mutate(run.id)}
          >
            Stop and look at the best
          </Button>
          {stop.isError && <ErrorNotice error={stop.error} />}
        </div>
      )}
      {run.state === 'failed' && (
        <p className="notice">It did not end well: {run.error?.message}</p>
      )}
      <div role="status">
        {run.state !== 'running' && result && <Result result={result} outdated={props.outdated} />}
        {run.state === 'stopped' && !result && <p>It was stopped before it found a plan.</p>}
      </div>
      {run.state !== 'running' && (
        <Button className="button small" onPress={() => forgetWhatIf(cache)}>
          Put this away
        </Button>
      )}
    </section>
  );
}

function Result(props: { result: WhatIfResult; outdated: boolean }) {
  const { plan, changes } = props.result;
  return (
    <>
      {props.outdated && (
        <p className="red">More was written since: this is of what stood here before.</p>
      )}
      {changes === null ? (
        <p>
          {count(plan.brews.length, 'brew')} of {plan.brews.length + plan.leftOut.length} would find
          their days; cash for yeast {money(plan.totals.cashMinor, plan)}.
        </p>
      ) : (
        <>
          <p className="quiet">{summaryWords({ plan, changes })}</p>
          <div className="what-if-columns">
            <ChangeList draft={{ changes }} />
            <SmallerChanges draft={{ changes }} />
            <CostTable plan={plan} draft={{ changes }} />
          </div>
        </>
      )}
      {plan.leftOut.length > 0 && (
        <p>Left out: {plan.leftOut.map(({ brew }) => brew).join(', ')}.</p>
      )}
    </>
  );
}
