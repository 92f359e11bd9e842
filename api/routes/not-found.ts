// Nothing answers at this place, or not to this method: said in the one error shape.
import type { Context } from 'hono';
import { errorBody } from './errors.ts';
import { operationsAt } from './places.ts';

/** 405 with Allow where another method would do, else 404. */
export function answerNotFound(c: Context): Response {
  const methods = operationsAt(c.req.path).map(({ method }) => method.toUpperCase());
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
