// What the plan expected of figures that came in since, and what they were.
import { queryOptions } from '@tanstack/react-query';
import { answerOf, client } from '../client.ts';

export const hindsightQuery = queryOptions({
  queryKey: ['hindsight'],
  queryFn: () => answerOf(client.api.hindsight.$get()),
  // it changes with every piece of news and is looked at rarely
  staleTime: 0,
});
