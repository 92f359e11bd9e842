// Surveys of the plan in force: each asked by a button, watched, stopped, and its answer kept for this visit.
import {
  mutationOptions,
  type QueryClient,
  queryOptions,
  useQuery,
  useQueryClient,
} from '@tanstack/react-query';
import { useEffect } from 'react';
import type { Run } from '../../api/routes/shapes.ts';
import type { SurveyAnswer } from '../../api/routes/survey-shapes.ts';
import { answerOf, client } from '../client.ts';

export type SurveyKind = 'limits' | 'steadiness';
export type Survey = { run: Run; result: SurveyAnswer['result'] };

/** The last survey of a kind; null: none was asked. */
export const surveyQuery = (kind: SurveyKind) =>
  queryOptions({
    queryKey: ['survey', kind],
    queryFn: (): Promise<Survey | null> => Promise.resolve(null),
    staleTime: Number.POSITIVE_INFINITY,
    gcTime: Number.POSITIVE_INFINITY,
  });

/** Asks; one that is still under way gives way. */
export const startSurvey = (cache: QueryClient, kind: SurveyKind) =>
  mutationOptions({
    mutationFn: async (): Promise<Survey> => {
      const { run } = await answerOf(client.api.surveys.$post({ json: { kind, replace: true } }));
      return { run, result: null };
    },
    onSuccess: (started) => cache.setQueryData(surveyQuery(kind).queryKey, started),
  });

/** Ends it with what has been answered so far. */
export const stopSurvey = () =>
  mutationOptions({
    mutationFn: (id: string) => answerOf(client.api.surveys[':id'].stop.$post({ param: { id } })),
  });

/** A survey of one kind, kept fresh while it goes on; its answer is fetched when it ends. */
export function useSurvey(kind: SurveyKind): Survey | null {
  const cache = useQueryClient();
  const { queryKey } = surveyQuery(kind);
  const survey = useQuery(surveyQuery(kind)).data ?? null;
  const watched = survey?.run.state === 'running' ? survey.run.id : null;
  useEffect(() => {
    if (watched === null) return;
    const param = { id: watched };
    const put = (part: Partial<Survey>) =>
      cache.setQueryData(queryKey, (old) => (old?.run.id === watched ? { ...old, ...part } : old));
    const stream = new EventSource(client.api.surveys[':id'].events.$url({ param }));
    const take = async (event: MessageEvent<string>) => {
      const { run } = JSON.parse(event.data) as { run: Run };
      if (run.state === 'running') return put({ run });
      stream.close();
      const ended = await answerOf(client.api.surveys[':id'].$get({ param })).catch(() => null);
      return put({ run, result: ended?.result ?? null });
    };
    for (const name of ['progress', 'done', 'stopped', 'failed']) {
      stream.addEventListener(name, take);
    }
    // A server that was started anew knows nothing of it.
    stream.onerror = () => {
      if (stream.readyState !== EventSource.CLOSED) return;
      cache.setQueryData(queryKey, (old) => (old?.run.id === watched ? null : old));
    };
    return () => stream.close();
  }, [cache, queryKey, watched]);
  return survey;
}
