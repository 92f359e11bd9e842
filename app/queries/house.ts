// The house that is planned for.
import { queryOptions } from '@tanstack/react-query';
import { answerOf, client } from '../client.ts';

export const houseQuery = queryOptions({
  queryKey: ['house'],
  queryFn: () => answerOf(client.api.house.$get()),
});
