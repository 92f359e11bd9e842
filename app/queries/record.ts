// What happened and was decided, in order.
import { queryOptions } from '@tanstack/react-query';
import type { News } from '../../planner/index.ts';
import { answerOf, client } from '../client.ts';

/** One entry of the record, as much of it as the page needs. */
export type Told = { no: number; at: string; news: News; says: string };

export const recordQuery = queryOptions({
  queryKey: ['record'],
  queryFn: async () => {
    const { entries } = await answerOf(client.api.record.$get());
    return {
      entries: entries.map(
        ({ at, entry, says }): Told => ({ at, no: entry.no, news: entry.news, says }),
      ),
    };
  },
});
