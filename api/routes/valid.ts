// Parses what a request brings, once, at the edge: body, query and path by zod schemas.
import { validator } from 'hono/validator';
import type { z } from 'zod';
import { refuse } from './errors.ts';
import { problemsOf } from './problems.ts';

/** What a schema makes of a value, or a refusal with every problem. */
export function parsed<S extends z.ZodType>(schema: S, value: unknown, whole: string): z.output<S> {
  const result = schema.safeParse(value);
  if (result.success) return result.data;
  const problems = problemsOf(result.error, value, whole);
  const first = problems[0]?.message ?? 'it cannot be used.';
  return refuse(
    400,
    'bad-request',
    `The request is not as it has to be: ${first}${problems.length > 1 ? ` (and ${problems.length - 1} more)` : ''}`,
    problems,
  );
}

/** The JSON body, by this schema. A request without a body counts as `{}`. */
export const body = <S extends z.ZodType>(schema: S) =>
  validator('json', (value: z.input<S>): z.output<S> => parsed(schema, value, '(body)'));

/** The query, by this schema; every value comes as text. */
export const query = <S extends z.ZodType>(schema: S) =>
  validator('query', (value: unknown): z.output<S> => parsed(schema, value, '(query)'));

/** The path's own parts, by this schema. */
export const param = <S extends z.ZodType>(schema: S) =>
  validator('param', (value: unknown): z.output<S> => parsed(schema, value, '(path)'));
