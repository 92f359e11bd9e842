// The OpenAPI 3.1 document, generated from the schemas that the routes themselves parse and answer with.
import { z } from 'zod';
import { ErrorBody } from '../../planner/index.ts';
import { OPERATIONS, type Operation, PUBLISHED } from './contract.ts';

type Json = Record<string, unknown>;

/** Collects named schemas; what goes in and what comes out differ where a field has a default. */
function collector() {
  const components: Json = {};
  const add = (schema: z.ZodType, io: 'input' | 'output'): Json => {
    const {
      $schema: _,
      $defs = {},
      ...whole
    } = z.toJSONSchema(schema, { io, unrepresentable: 'any' });
    const suffix = io === 'input' ? 'Input' : '';
    const rename = (value: unknown): unknown => {
      if (Array.isArray(value)) return value.map(rename);
      if (typeof value !== 'object' || value === null) return value;
      return Object.fromEntries(
        Object.entries(value).map(([key, inner]) =>
          key === '$ref' && typeof inner === 'string'
            ? [key, inner.replace(/^#\/\$defs\/(.+)$/, `#/components/schemas/$1${suffix}`)]
            : [key, rename(inner)],
        ),
      );
    };
    for (const [name, inner] of Object.entries($defs))
      components[`${name}${suffix}`] = rename(inner);
    const { id } = schema.meta() ?? {};
    const renamed = rename(whole) as Json;
    if (id === undefined) return renamed;
    components[`${id}${suffix}`] = renamed;
    return { $ref: `#/components/schemas/${id}${suffix}` };
  };
  return { components, add };
}

type Add = (schema: z.ZodType, io: 'input' | 'output') => Json;

function parameters(operation: Operation, add: Add): Json[] {
  const of = (place: 'query' | 'path', schema: z.ZodObject | undefined) =>
    Object.entries(schema?.shape ?? {}).map(([name, inner]) => ({
      name,
      in: place,
      required: place === 'path' || !z.safeParse(inner, undefined).success,
      schema: add(inner as z.ZodType, 'input'),
    }));
  return [
    ...of('path', operation.params),
    ...of('query', operation.query),
    ...(operation.headers ?? []).map(({ name, says }) => ({
      name,
      in: 'header',
      required: operation.method === 'put',
      description: says,
      schema: { type: 'string' },
    })),
  ];
}

/** The whole document. */
export function openApi(version: string): Json {
  const { components, add } = collector();
  const error = { 'application/json': { schema: add(ErrorBody, 'output') } };
  for (const schema of Object.values(PUBLISHED)) add(schema, 'output');
  const paths: Record<string, Json> = {};
  for (const operation of OPERATIONS) {
    const answers = Object.entries(operation.answers).map(([status, answer]) => [
      status,
      answer instanceof z.ZodType
        ? {
            description: operation.says,
            content: { 'application/json': { schema: add(answer, 'output') } },
          }
        : { description: answer.says, content: { [answer.type]: { schema: { type: 'string' } } } },
    ]);
    const path = operation.path.replace(/:([a-z]+)/g, '{$1}');
    paths[path] = {
      ...paths[path],
      [operation.method]: {
        summary: operation.says,
        parameters: parameters(operation, add),
        ...(operation.body === undefined
          ? {}
          : {
              requestBody: {
                required: true,
                content: { 'application/json': { schema: add(operation.body, 'input') } },
              },
            }),
        responses: {
          ...Object.fromEntries(answers),
          '4XX': { description: 'Why it was refused, and what to do', content: error },
        },
      },
    };
  }
  return {
    openapi: '3.1.0',
    info: { title: 'Barmline', version },
    paths,
    components: { schemas: components },
  };
}
