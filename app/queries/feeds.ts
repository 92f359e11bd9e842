// The addresses that calendars subscribe to.
import { mutationOptions, type QueryClient, queryOptions } from '@tanstack/react-query';
import type { Alarm, Feed, FeedLook } from '../../api/routes/feed-shapes.ts';
import type { TaskKind } from '../../planner/index.ts';
import { answerOf, client } from '../client.ts';

export type { Feed };

/** What a further address is to show, and how. */
export type FeedWish = { kinds: TaskKind[] | null; alarm: Alarm | null; look: FeedLook };

export const feedsQuery = queryOptions({
  queryKey: ['feeds'],
  queryFn: () => answerOf(client.api.feeds.$get()),
});

/** Makes a further address; `kinds` null: for all tasks. */
export const makeFeed = (cache: QueryClient) =>
  mutationOptions({
    mutationFn: (wanted: FeedWish) => answerOf(client.api.feeds.$post({ json: wanted })),
    onSuccess: ({ feeds, advice }) => cache.setQueryData(feedsQuery.queryKey, { feeds, advice }),
  });

/** Revokes an address: calendars that use it see nothing any more. */
export const revokeFeed = (cache: QueryClient) =>
  mutationOptions({
    mutationFn: (id: string) => answerOf(client.api.feeds[':id'].$delete({ param: { id } })),
    onSuccess: (answer) => cache.setQueryData(feedsQuery.queryKey, answer),
  });
