// What would come of a house that is not saved: a run of its own, watched, stopped, and its result.
import {
  mutationOptions,
  type QueryClient,
  queryOptions,
  useQuery,
  useQueryClient,
} from '@tanstack/react-query';
import { useEffect } from 'react';
import type { Run } from '../../api/routes/shapes.ts';
import type { WhatIfAnswer } from '../../api/routes/what-if-shapes.ts';
import type { House } from '../../planner/index.ts';
import { answerOf, client } from '../client.ts';

export type WhatIfResult = NonNullable<WhatIfAnswer['result']>;
export type WhatIf = { run: Run; result: WhatIfAnswer['result']; house: House };

/** The last what-if of this tab; null: none was asked. */
export const whatIfQuery = queryOptions({
  queryKey: ['what-if'],
  queryFn: (): Promise<WhatIf | null> => Promise.resolve(null),
  staleTime: Number.POSITIVE_INFINITY,
  gcTime: Number.POSITIVE_INFINITY,
});

/** Plans a house without saving it; one that is still under way gives way. */
export const startWhatIf = (cache: QueryClient) =>
  mutationOptions({
    mutationFn: async (house: House): Promise<WhatIf> => {
      const { run } = await answerOf(
        client.api['what-if'].$post({ json: { house, replace: true } }),
      );
      return { run, result: null, house };
    },
    onSuccess: (started) => cache.setQueryData(whatIfQuery.queryKey, started),
  });

/** Ends it with the best plan so far. */
export const stopWhatIf = (cache: QueryClient) =>
  mutationOptions({
    mutationFn: (id: string) =>
      answerOf(client.api['what-if'][':id'].stop.$post({ param: { id } })),
    onSuccess: ({ run }) =>
      cache.setQueryData(whatIfQuery.queryKey, (old) => old && { ...old, run }),
  });

export const forgetWhatIf = (cache: QueryClient) => cache.setQueryData(whatIfQuery.queryKey, null);

/** The what-if, kept fresh while it goes on; its result is fetched when it ends. */
export function useWhatIf(): WhatIf | null {
  const cache = useQueryClient();
  const whatIf = useQuery(whatIfQuery).data ?? null;
  const watched = whatIf?.run.state === 'running' ? whatIf.run.id : null;
  useEffect(() => {
    if (watched === null) return;
    const param = { id: watched };
    const put = (part: Partial<WhatIf>) =>
      cache.setQueryData(whatIfQuery.queryKey, (old) =>
        old?.run.id === watched ? { ...old, ...part } : old,
      );
    const stream = new EventSource(client.api['what-if'][':id'].events.$url({ param }));
    const take = async (event: MessageEvent<string>) => {
      const { run } = JSON.parse(event.data) as { run: Run };
      if (run.state === 'running') return put({ run });
      stream.close();
      const ended = await answerOf(client.api['what-if'][':id'].$get({ param })).catch(() => null);
      return put({ run, result: ended?.result ?? null });
    };
    for (const name of ['progress', 'done', 'stopped', 'failed']) {
      stream.addEventListener(name, take);
    }
    // A server that was started anew knows nothing of it.
    stream.onerror = () => {
      if (stream.readyState !== EventSource.CLOSED) return;
      cache.setQueryData(whatIfQuery.queryKey, (old) => (old?.run.id === watched ? null : old));
    };
    return () => stream.close();
  }, [cache, watched]);
  return whatIf;
}
