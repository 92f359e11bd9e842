// A decision of the brewer that goes into the record: told, said back, and taken back with one press while it is fresh.
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { Button } from 'react-aria-components';
import { newsWords } from '../pages/tasks/told.ts';
import { type NewsGiven, tellNews } from '../queries/news.ts';
import { recordQuery } from '../queries/record.ts';
import { ErrorNotice } from './failed.tsx';

export type Decision = ReturnType<typeof useDecision>;

/** Tells a decision and lets the last one be taken back. */
export function useDecision() {
  const cache = useQueryClient();
  const tell = useMutation(tellNews(cache));
  const undo = useMutation(tellNews(cache));
  const entries = useQuery(recordQuery).data?.entries ?? [];
  const told = entries.find((entry) => entry.no === tell.data?.entry);
  return {
    decide: (news: NewsGiven) => {
      undo.reset();
      tell.mutate(news);
    },
    takeBack: () => {
      if (tell.data) undo.mutate({ kind: 'undone', entry: tell.data.entry });
    },
    says: told ? newsWords(told, () => null) : null,
    isUndone: undo.isSuccess,
    isPending: tell.isPending || undo.isPending,
    error: tell.error ?? undo.error,
  };
}

/** What has just been decided, and the way back. */
export function DecisionNotice(props: { decision: Decision }) {
  const { decision } = props;
  const { says, isUndone } = decision;
  return (
    <div className="decided">
      <p role="status">
        {says !== null &&
          (isUndone
            ? `Taken back: ${says}.`
            : `${says}. The rest is planned around it; nothing is in force until you adopt it.`)}
      </p>
      {says !== null && !isUndone && (
        <Button
          className="button small"
          isDisabled={decision.isPending}
          onPress={decision.takeBack}
        >
          Take it back
        </Button>
      )}
      {decision.error !== null && <ErrorNotice error={decision.error} />}
    </div>
  );
}
