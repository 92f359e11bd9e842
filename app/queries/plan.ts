// The plan that people follow now.
import { queryOptions } from '@tanstack/react-query';
import type { PlanAnswer } from '../../api/routes/shapes.ts';
import { asTold } from '../../planner/tasks/steady.ts';
import { answerOf, client } from '../client.ts';

export type PlanInForce = PlanAnswer;

export const planQuery = queryOptions({
  queryKey: ['plan'],
  queryFn: (): Promise<PlanInForce> => answerOf(client.api.plan.$get()),
  // the page says the amounts that tasks and calendar say
  select: asItIsTold,
});

function asItIsTold(answer: PlanInForce): PlanInForce {
  return answer.plan === null ? answer : { ...answer, plan: asTold(answer.plan) };
}
