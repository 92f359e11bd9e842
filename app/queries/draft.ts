// The draft that may take the place of the plan in force.
import { mutationOptions, type QueryClient, queryOptions } from '@tanstack/react-query';
import type { DraftAnswer } from '../../api/routes/shapes.ts';
import { answerOf, client } from '../client.ts';
import { planQuery } from './plan.ts';
import { recordQuery } from './record.ts';
import { tasksQuery } from './tasks.ts';

export type Draft = NonNullable<DraftAnswer['draft']>;

export const draftQuery = queryOptions({
  queryKey: ['draft'],
  queryFn: (): Promise<DraftAnswer> => answerOf(client.api.draft.$get()),
});

/** Everything that a new plan in force changes is asked for anew. */
export async function refreshSeason(cache: QueryClient): Promise<void> {
  await Promise.all(
    [planQuery, tasksQuery, draftQuery, recordQuery].map(({ queryKey }) =>
      cache.invalidateQueries({ queryKey }),
    ),
  );
}

/** The draft becomes the plan in force. */
export const adoptDraft = (cache: QueryClient) =>
  mutationOptions({
    mutationFn: (draft: string) => answerOf(client.api.draft.adopt.$post({ json: { draft } })),
    onSuccess: async (plan) => {
      cache.setQueryData(planQuery.queryKey, plan);
      cache.setQueryData(draftQuery.queryKey, { draft: null });
      await refreshSeason(cache);
    },
    onError: () => refreshSeason(cache),
  });

/** The plan in force stays as it is. */
export const dismissDraft = (cache: QueryClient) =>
  mutationOptions({
    mutationFn: (draft: string) => answerOf(client.api.draft.dismiss.$post({ json: { draft } })),
    onSuccess: async (answer) => {
      cache.setQueryData(draftQuery.queryKey, answer);
      await refreshSeason(cache);
    },
    onError: () => refreshSeason(cache),
  });
