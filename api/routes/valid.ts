// Parses what a request brings, once, at the edge: body, query and path by zod schemas.
import type { Context, Env, MiddlewareHandler } from 'hono';
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

/** A handler that hands on what one part of a request holds; `In` is what the page's client has to send. */
type Valid<Target extends string, In, Out> = MiddlewareHandler<
  Env,
  string,
  { in: { [K in Target]: In }; out: { [K in Target]: Out } }
>;

/** The JSON body, read by a function of its own. A request without a body counts as `{}`. */
export const bodyBy = <In, Out>(
  read: (value: unknown, c: Context) => Out | Promise<Out>,
): Valid<'json', In, Out> =>
  validator('json', (value: unknown, c) => read(value, c)) as Valid<'json', In, Out>;

/** The JSON body, by this schema. A request without a body counts as `{}`. */
export const body = <S extends z.ZodType>(schema: S) =>
  bodyBy<z.input<S>, z.output<S>>((value) => parsed(schema, value, '(body)'));

/** The query, by this schema; every value comes as text. */
export const query = <S extends z.ZodType>(schema: S) =>
  validator('query', (value: unknown): z.output<S> => parsed(schema, value, '(query)')) as Valid<
    'query',
    z.input<S>,
    z.output<S>
  >;

/** The path's own parts, by this schema. */
export const param = <S extends z.ZodType>(schema: S) =>
  validator('param', (value: unknown): z.output<S> => parsed(schema, value, '(path)'));
