// The planner at work: how far it is, the best it has found, and a stop that keeps it.
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useEffect, useRef } from 'react';
import { Button, ProgressBar } from 'react-aria-components';
import { houseQuery } from '../queries/house.ts';
import { planQuery } from '../queries/plan.ts';
import { stopRun, useCurrentRun } from '../queries/runs.ts';
import { bestWords } from './best-words.ts';
import { ErrorNotice } from './failed.tsx';

export function PlanningStrip() {
  const cache = useQueryClient();
  const run = useCurrentRun();
  const stop = useMutation(stopRun(cache));
  const plan = useQuery(planQuery).data?.plan ?? null;
  const house = useQuery(houseQuery).data?.house ?? null;
  const place = useRef<HTMLElement>(null);
  const running = run?.state === 'running' ? run.id : null;
  useEffect(() => {
    // News is told from far down a list; what comes of it is shown at the top.
    if (running !== null) place.current?.scrollIntoView({ block: 'nearest' });
  }, [running]);
  if (run === null) return null;
  if (run.state === 'failed' && run.error) {
    return <p className="notice">Planning did not end well: {run.error.message}</p>;
  }
  if (run.state !== 'running') return null;
  const coin = plan ?? (house ? coinOf(house.currency) : null);
  const { progress } = run;
  const share = progress && progress.steps > 0 ? progress.stepsDone / progress.steps : 0;
  return (
    <section className="planning" aria-label="Planning" ref={place}>
      <ProgressBar value={share * 100} aria-label="Planning" className="planning-bar">
        {({ percentage }) => (
          <svg width="100%" height="6" aria-hidden="true">
            <line className="whole" x1="0" x2="100%" y1="3" y2="3" />
            <line className="done" x1="0" x2={`${percentage ?? 0}%`} y1="3" y2="3" />
          </svg>
        )}
      </ProgressBar>
      <p className="figures">
        {run.kind === 'replan' ? 'Planning anew around what happened' : 'Planning the season'}:{' '}
        {bestWords(run, coin)}
      </p>
      <Button
        className="button small"
        isDisabled={stop.isPending}
        onPress={() => stop.mutate(run.id)}
      >
        Stop and keep the best
      </Button>
      {stop.isError && <ErrorNotice error={stop.error} />}
    </section>
  );
}

function coinOf(currency: string) {
  const digits = new Intl.NumberFormat('en-GB', { style: 'currency', currency }).resolvedOptions()
    .maximumFractionDigits;
  return { currency, minorPerMajor: 10 ** (digits ?? 2) };
}
