// Telling what happened: it goes into the record, and the planner may answer with a draft.
import { mutationOptions, type QueryClient } from '@tanstack/react-query';
import type { z } from 'zod';
import type { News } from '../../planner/index.ts';
import { answerOf, client } from '../client.ts';
import { draftQuery } from './draft.ts';
import { houseQuery } from './house.ts';
import { planQuery } from './plan.ts';
import { recordQuery } from './record.ts';
import { runQuery } from './runs.ts';
import { familiesKey, shelfQuery } from './shelf.ts';
import { tasksQuery } from './tasks.ts';

export type NewsGiven = z.input<typeof News>;

/** Sends one piece of news. A task that is done is struck off at once, and put back if the server refuses. */
export const tellNews = (cache: QueryClient) =>
  mutationOptions({
    mutationFn: (news: NewsGiven) => answerOf(client.api.news.$post({ json: news })),
    onMutate: async (news) => {
      if (news.kind !== 'task-done') return { before: undefined };
      await cache.cancelQueries({ queryKey: tasksQuery.queryKey });
      const before = cache.getQueryData(tasksQuery.queryKey);
      cache.setQueryData(tasksQuery.queryKey, (known) =>
        known === undefined
          ? known
          : {
              ...known,
              tasks: known.tasks.map((task) =>
                task.key === news.task ? { ...task, done: true } : task,
              ),
            },
      );
      return { before };
    },
    onError: (_error, _news, context) => {
      if (context?.before) cache.setQueryData(tasksQuery.queryKey, context.before);
    },
    onSuccess: ({ run }) => {
      if (run !== null) cache.setQueryData(runQuery.queryKey, { run });
    },
    onSettled: () =>
      Promise.all(
        [
          ...[tasksQuery, planQuery, recordQuery, draftQuery, houseQuery, shelfQuery].map(
            ({ queryKey }) => queryKey,
          ),
          familiesKey,
        ].map((queryKey) => cache.invalidateQueries({ queryKey })),
      ),
  });
