// The plan that people follow now.
import { queryOptions } from '@tanstack/react-query';
import type { PlanAnswer } from '../../api/routes/shapes.ts';
import { answerOf, client } from '../client.ts';

export type PlanInForce = PlanAnswer;

export const planQuery = queryOptions({
  queryKey: ['plan'],
  queryFn: (): Promise<PlanInForce> => answerOf(client.api.plan.$get()),
});
