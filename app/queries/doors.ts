// Whether the server is kept shut by a password, and who is signed in.
import { mutationOptions, type QueryClient, queryOptions } from '@tanstack/react-query';
import type { DoorsAnswer } from '../../api/routes/door-shapes.ts';
import { answerOf, client, Refused } from '../client.ts';

export type { DoorsAnswer };

export const doorsQuery = queryOptions({
  queryKey: ['doors'],
  queryFn: () => answerOf(client.api.doors.$get()),
  staleTime: Number.POSITIVE_INFINITY,
});

/** Opens a session; whatever the page had asked for in vain it asks for again. */
export const signIn = (cache: QueryClient) =>
  mutationOptions({
    mutationFn: (password: string) =>
      answerOf(client.api.doors['sign-in'].$post({ json: { password } })),
    onSuccess: async (answer) => {
      await cache.resetQueries({ predicate: ({ queryKey }) => queryKey[0] !== 'doors' });
      cache.setQueryData(doorsQuery.queryKey, answer);
    },
  });

/** Ends the session here; what the page has read is forgotten with it. */
export const signOut = (cache: QueryClient) =>
  mutationOptions({
    mutationFn: () => answerOf(client.api.doors['sign-out'].$post()),
    onSuccess: (answer) => {
      cache.setQueryData(doorsQuery.queryKey, answer);
      cache.removeQueries({ predicate: ({ queryKey }) => queryKey[0] !== 'doors' });
    },
  });

/** Ends a session of whichever browser. */
export const endSession = (cache: QueryClient) =>
  mutationOptions({
    mutationFn: (id: string) =>
      answerOf(client.api.doors.sessions[':id'].$delete({ param: { id } })),
    onSuccess: (answer) => cache.setQueryData(doorsQuery.queryKey, answer),
  });

/** A session can end while the page is open: the first answer that says so brings the sign-in page. */
export function watchDoors(cache: QueryClient): void {
  const look = (error: unknown) => {
    if (error instanceof Refused && error.status === 401 && error.code === 'signed-out')
      void cache.invalidateQueries({ queryKey: doorsQuery.queryKey });
  };
  cache.getQueryCache().subscribe((event) => {
    if (event.type === 'updated' && event.action.type === 'error') look(event.action.error);
  });
  cache.getMutationCache().subscribe((event) => {
    if (event.type === 'updated' && event.action.type === 'error') look(event.action.error);
  });
}
