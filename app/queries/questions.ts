// The single questions: what can be asked, and an answer.
import { queryOptions } from '@tanstack/react-query';
import type { QuestionAnswer, QuestionsAnswer } from '../../api/routes/shapes.ts';
import { answerOf, client } from '../client.ts';

export type { AskedField } from '../../api/routes/shapes.ts';
export type AskedQuestion = QuestionsAnswer['questions'][number];
export type Answered = QuestionAnswer['answer'];
export type AnsweredFigure = Answered['figures'][number];

/** What a form sends: a number where one was written, else the text as it stands, for the server to judge. */
export type Given = Record<string, number | string | boolean | (number | string)[] | null>;

export const questionsQuery = queryOptions({
  queryKey: ['questions'],
  queryFn: (): Promise<QuestionsAnswer> => answerOf(client.api.questions.$get()),
  staleTime: Number.POSITIVE_INFINITY,
});

/** Asks one question. @throws Refused with a problem for each field that cannot be meant */
export const askQuestion = (id: string) => ({
  mutationFn: async (given: Given): Promise<Answered> =>
    (await answerOf(client.api.questions[':id'].$post({ param: { id }, json: given }))).answer,
});
