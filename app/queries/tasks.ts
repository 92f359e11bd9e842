// The tasks of the plan in force.
import { queryOptions } from '@tanstack/react-query';
import type { TaskRow } from '../../api/routes/shapes.ts';
import { answerOf, client } from '../client.ts';

export type { TaskRow };

export const tasksQuery = queryOptions({
  queryKey: ['tasks'],
  queryFn: () => answerOf(client.api.tasks.$get({ query: {} })),
});
