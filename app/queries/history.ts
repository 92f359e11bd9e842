// Plans that are or were in force this season, and putting an earlier one back as the draft.
import { mutationOptions, type QueryClient, queryOptions } from '@tanstack/react-query';
import type { HistoryAnswer } from '../../api/routes/history-shapes.ts';
import { answerOf, client } from '../client.ts';
import { draftQuery, refreshSeason } from './draft.ts';

export type EarlierPlan = HistoryAnswer['plans'][number];

export const historyQuery = queryOptions({
  queryKey: ['history'],
  queryFn: (): Promise<HistoryAnswer> => answerOf(client.api.history.$get()),
  // every adoption adds to it, and it is looked at rarely
  staleTime: 0,
});

/** The earlier plan becomes the draft; the plan in force stays until that is adopted. */
export const putBack = (cache: QueryClient) =>
  mutationOptions({
    mutationFn: (id: string) =>
      answerOf(client.api.history[':id']['put-back'].$post({ param: { id } })),
    onSuccess: async (draft) => {
      cache.setQueryData(draftQuery.queryKey, draft);
      await refreshSeason(cache);
    },
  });
