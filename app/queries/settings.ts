// Where the server can be reached.
import { queryOptions } from '@tanstack/react-query';
import { answerOf, client } from '../client.ts';

export const settingsQuery = queryOptions({
  queryKey: ['settings'],
  queryFn: () => answerOf(client.api.settings.$get()),
  staleTime: Number.POSITIVE_INFINITY,
});
