// Single questions: what each asks for, and its answer with formula in words, range and sources.
import { Hono } from 'hono';
import {
  type AnyQuestion,
  QUESTIONS,
  type QuestionField,
  questionBound,
  resolveSettings,
  type Settings,
} from '../../planner/index.ts';
import { readHouse } from '../store/house.ts';
import { refuse } from './errors.ts';
import type { Parts } from './parts.ts';
import type { AskedField, QuestionAnswer, QuestionsAnswer } from './shapes.ts';
import { bodyBy } from './valid.ts';

/** A field as the list shows it: with its bound in words, and whether it may be left out. */
function askedField(name: string, field: QuestionField): AskedField {
  return {
    name,
    kind: field.kind,
    label: field.label,
    says: field.says,
    unit: field.kind === 'number' ? field.unit : null,
    min: field.kind === 'number' ? field.min : null,
    max: field.kind === 'number' ? field.max : null,
    whole: field.kind === 'number' && field.whole === true,
    most: field.kind === 'counts' ? field.most : null,
    options: field.kind === 'choice' ? [...field.options] : [],
    bound: questionBound(field),
    required: field.fallback === undefined,
    fallback: field.fallback ?? null,
  };
}

const listed = ({ id, title, fields, formula, range, sources }: AnyQuestion) => ({
  id,
  title,
  fields: Object.entries(fields).map(([name, field]) => askedField(name, field)),
  formula,
  range,
  sources: [...sources],
});

/** The settings by which an answer is worked out: the house's, or a home's where there is none yet. */
async function settingsIn(parts: Parts): Promise<Settings> {
  const house = (await readHouse(parts.store.db))?.house;
  return resolveSettings(house?.kind ?? 'home', house?.rules ?? {});
}

/** What is asked is looked at by the question itself, which knows what its fields may hold. */
const anyBody = bodyBy<Record<string, unknown>, unknown>((value) => value);

export const questionRoutes = (parts: Parts) =>
  new Hono()
    .get('/', (c) => c.json({ questions: QUESTIONS.map(listed) } satisfies QuestionsAnswer, 200))
    .post('/:id', anyBody, async (c) => {
      const id = c.req.param('id');
      const question = QUESTIONS.find((one) => one.id === id);
      if (question === undefined) {
        return refuse(
          404,
          'no-question',
          'There is no question of this name. GET /api/questions lists them.',
        );
      }
      const { answer, problems } = question.ask(c.req.valid('json'), await settingsIn(parts));
      if (answer === null) {
        const more = problems.length > 1 ? ` (and ${problems.length - 1} more)` : '';
        return refuse(
          422,
          'not-answered',
          `${problems[0]?.message ?? 'It cannot be answered.'}${more}`,
          problems,
        );
      }
      return c.json(
        { answer: { ...answer, sources: [...answer.sources] } } satisfies QuestionAnswer,
        200,
      );
    });
