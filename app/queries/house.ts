// The house that is planned for: read, saved against the revision that was edited, replaced by the demo house.
import { mutationOptions, type QueryClient, queryOptions } from '@tanstack/react-query';
import type { HouseAnswer } from '../../api/routes/shapes.ts';
import type { House } from '../../planner/index.ts';
import { answerOf, client, Refused } from '../client.ts';

export type { HouseAnswer };

export const houseQuery = queryOptions({
  queryKey: ['house'],
  queryFn: (): Promise<HouseAnswer> => answerOf(client.api.house.$get()),
});

export type Saving = { house: House; revision: number; startOver: boolean };

const ifMatch = (revision: number) => ({ headers: { 'If-Match': `"${revision}"` } });

/** Whether the server was out of reach, so that asking again may help. */
export const outOfReach = (error: unknown): boolean =>
  error instanceof Refused && error.status === 0;

/** Somebody else saved since. */
export const isStale = (error: unknown): boolean =>
  error instanceof Refused && error.status === 409 && error.code === 'stale-revision';

async function put({ house, revision, startOver }: Saving): Promise<HouseAnswer> {
  const query = startOver ? { startOver: 'true' as const } : {};
  return answerOf(client.api.house.$put({ query, json: house }, ifMatch(revision)));
}

/** A house, and with it everything that is planned from it. */
function take(cache: QueryClient, answer: HouseAnswer): Promise<void> {
  cache.setQueryData(houseQuery.queryKey, answer);
  return cache.invalidateQueries({ predicate: ({ queryKey }) => queryKey[0] !== 'house' });
}

/** Saves the house; while the server is out of reach it is tried again. */
export const saveHouse = (cache: QueryClient) =>
  mutationOptions({
    mutationFn: async (saving: Saving): Promise<HouseAnswer> => {
      try {
        return await put(saving);
      } catch (error) {
        if (!isStale(error)) throw error;
        // The first try may have arrived and only its answer have been lost.
        const now = await answerOf(client.api.house.$get());
        if (JSON.stringify(now.house) === JSON.stringify(saving.house)) return now;
        throw error;
      }
    },
    retry: (_count, error) => outOfReach(error),
    retryDelay: 2000,
    onSuccess: (answer) => take(cache, answer),
  });

/** Opens the demo house as a new season. */
export const openDemo = (cache: QueryClient) =>
  mutationOptions({
    mutationFn: (revision: number): Promise<HouseAnswer> =>
      answerOf(client.api.house.demo.$post({}, ifMatch(revision))),
    onSuccess: (answer) => take(cache, answer),
  });

/** The house as the files of a season folder. */
export const exportQuery = queryOptions({
  queryKey: ['export'],
  queryFn: () => answerOf(client.api.house.export.$get()),
  staleTime: 0,
});
