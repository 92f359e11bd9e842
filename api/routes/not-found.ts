// Nothing answers at this place, or not to this method: said in the one error shape.
import type { Context } from 'hono';
import { OPERATIONS } from './contract.ts';
import { errorBody } from './errors.ts';

function matchesPath(pattern: string, path: string): boolean {
  const source = pattern
    .split('/')
    .map((part) => part.replace(/[.]/g, '\\.').replace(/:[a-z]+/g, '[^/]+'))
    .join('/');
  return new RegExp(`^${source}$`).test(path);
}

/** 405 with Allow where another method would do, else 404. */
export function answerNotFound(c: Context): Response {
  const methods = OPERATIONS.filter((operation) => matchesPath(operation.path, c.req.path)).map(
    (operation) => operation.method.toUpperCase(),
  );
  const allowed = methods.includes('GET') ? [...methods, 'HEAD'] : methods;
  if (allowed.length > 0 && !allowed.includes(c.req.method)) {
    c.header('Allow', allowed.join(', '));
    return c.json(
      errorBody(
        'wrong-method',
        `This place does not answer to ${c.req.method}, only to ${allowed.join(', ')}.`,
      ),
      405,
    );
  }
  return c.json(
    errorBody(
      'not-found',
      'There is nothing at this address. GET /api/openapi.json lists what there is.',
    ),
    404,
  );
}
