// A survey under way: its button, how far it is, and a stop that keeps what is answered.
import { useMutation, useQueryClient } from '@tanstack/react-query';
import type { ReactNode } from 'react';
import { Button, ProgressBar } from 'react-aria-components';
import { ErrorNotice } from '../../parts/failed.tsx';
import { type Survey, type SurveyKind, startSurvey, stopSurvey } from '../../queries/surveys.ts';

export function Asking(props: {
  kind: SurveyKind;
  survey: Survey | null;
  /** On the button, before and after the first time. */
  ask: string;
  again: string;
  children: ReactNode;
}) {
  const cache = useQueryClient();
  const start = useMutation(startSurvey(cache, props.kind));
  const stop = useMutation(stopSurvey());
  const { survey } = props;
  const running = survey?.run.state === 'running';
  const progress = survey?.run.progress ?? null;
  const share = progress && progress.steps > 0 ? progress.stepsDone / progress.steps : 0;
  return (
    <>
      {!running && (
        <Button
          className="button no-print"
          isDisabled={start.isPending}
          onPress={() => start.mutate()}
        >
          {survey === null ? props.ask : props.again}
        </Button>
      )}
      {start.isError && <ErrorNotice error={start.error} />}
      {running && (
        <div className="planning">
          <ProgressBar value={share * 100} aria-label={props.ask} className="planning-bar">
            {({ percentage }) => (
              <svg width="100%" height="6" aria-hidden="true">
                <line className="whole" x1="0" x2="100%" y1="3" y2="3" />
                <line className="done" x1="0" x2={`${percentage ?? 0}%`} y1="3" y2="3" />
              </svg>
            )}
          </ProgressBar>
          <p className="figures">{Math.round(share * 100)} of 100 done.</p>
          <Button
            className="button small"
            isDisabled={stop.isPending}
            onPress={() => stop.mutate(survey.run.id)}
          >
            Stop with what there is
          </Button>
        </div>
      )}
      {survey?.run.state === 'failed' && (
        <p className="notice">It did not end well: {survey.run.error?.message}</p>
      )}
      <div role="status">{!running && props.children}</div>
    </>
  );
}
