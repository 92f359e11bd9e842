// The planner at work: the run under way or the last one, its progress, and a stop that keeps the best.
import {
  mutationOptions,
  type QueryClient,
  queryOptions,
  useQuery,
  useQueryClient,
} from '@tanstack/react-query';
import { useEffect } from 'react';
import type { Run } from '../../api/routes/shapes.ts';
import { answerOf, client } from '../client.ts';
import { refreshSeason } from './draft.ts';

export type { Run };

export const runQuery = queryOptions({
  queryKey: ['run'],
  queryFn: (): Promise<{ run: Run | null }> => answerOf(client.api.runs.current.$get()),
});

/** Ends the search; what has been found so far is kept. */
export const stopRun = (cache: QueryClient) =>
  mutationOptions({
    mutationFn: (id: string) => answerOf(client.api.runs[':id'].stop.$post({ param: { id } })),
    onSuccess: ({ run }) => cache.setQueryData(runQuery.queryKey, { run }),
  });

/** Plans again from what is known now. */
export const startRun = (cache: QueryClient) =>
  mutationOptions({
    mutationFn: () => answerOf(client.api.runs.$post({ json: {} })),
    onSuccess: ({ run }) => cache.setQueryData(runQuery.queryKey, { run }),
  });

/**
 * The current run, kept fresh by the server's own stream while it goes on. When it ends, everything
 * that a plan changes is read anew. A broken connection is taken up again by the browser.
 */
export function useCurrentRun(): Run | null {
  const cache = useQueryClient();
  const run = useQuery(runQuery).data?.run ?? null;
  const watched = run?.state === 'running' ? run.id : null;
  useEffect(() => {
    if (watched === null) return;
    const stream = new EventSource(client.api.runs[':id'].events.$url({ param: { id: watched } }));
    const take = (event: MessageEvent<string>) => {
      const told = JSON.parse(event.data) as { run: Run };
      cache.setQueryData(runQuery.queryKey, told);
      if (told.run.state !== 'running') {
        stream.close();
        void refreshSeason(cache);
      }
    };
    for (const name of ['progress', 'done', 'stopped', 'failed']) {
      stream.addEventListener(name, take);
    }
    // A server that was started anew knows nothing of the run: ask what is current instead.
    stream.onerror = () => {
      if (stream.readyState === EventSource.CLOSED) {
        void cache.invalidateQueries({ queryKey: runQuery.queryKey });
      }
    };
    return () => stream.close();
  }, [cache, watched]);
  return run;
}
