// The one shape in which every refusal leaves the house, and the error that carries it through the code.
import type { Context } from 'hono';
import { HTTPException } from 'hono/http-exception';
import type { ContentfulStatusCode } from 'hono/utils/http-status';
import type { ErrorBody, Problem } from '../../planner/index.ts';
import { troubleOf } from '../store/troubles.ts';

/** A request that is answered with an `ErrorBody` instead of what was asked for. */
export class Refusal extends Error {
  readonly status: ContentfulStatusCode;
  readonly code: string;
  readonly problems: Problem[];

  constructor(status: ContentfulStatusCode, code: string, message: string, problems: Problem[]) {
    super(message);
    this.name = 'Refusal';
    this.status = status;
    this.code = code;
    this.problems = problems;
  }
}

/** Ends a request with one error body. @throws always */
export function refuse(
  status: ContentfulStatusCode,
  code: string,
  message: string,
  problems: Problem[] = [],
): never {
  throw new Refusal(status, code, message, problems);
}

/** Ends a request because of what was given: 422 where the shape is right and the meaning is not. @throws always */
export function refuseProblems(
  problems: Problem[],
  status: ContentfulStatusCode = 422,
  code = 'not-accepted',
): never {
  const errors = problems.filter((problem) => problem.level === 'error');
  const shown = errors.length > 0 ? errors : problems;
  const first = shown[0]?.message ?? 'what was sent cannot be used';
  const more = shown.length > 1 ? ` (and ${shown.length - 1} more)` : '';
  return refuse(status, code, `Nothing was changed: ${first}${more}`, problems);
}

const MAX_PROBLEMS = 200;

/** A list that is longer than anybody works through is cut, the errors before the warnings, and says so. */
export function listed(problems: Problem[]): Problem[] {
  if (problems.length <= MAX_PROBLEMS) return problems;
  const isError = ({ level }: Problem) => level === 'error';
  const ordered = [...problems.filter(isError), ...problems.filter((one) => !isError(one))];
  const rest = ordered.slice(MAX_PROBLEMS);
  return [
    ...ordered.slice(0, MAX_PROBLEMS),
    {
      code: 'more-problems',
      path: '(body)',
      value: null,
      bound: null,
      message:
        rest.length === 1
          ? '1 more problem of the same request is not listed.'
          : `${rest.length} more problems of the same request are not listed.`,
      remedy: 'Correct these first.',
      level: rest.some(isError) ? 'error' : 'warning',
    },
  ];
}

/** The body of a refusal. */
export function errorBody(code: string, message: string, problems: Problem[] = []): ErrorBody {
  return { error: { code, message, problems: listed(problems) } };
}

/** Turns whatever was thrown into the one error shape; an unforeseen error shows no detail of the inside. */
export function answerError(error: unknown, c: Context, report: (line: string) => void): Response {
  if (error instanceof Refusal) {
    return c.json(errorBody(error.code, error.message, error.problems), error.status);
  }
  if (error instanceof HTTPException && error.status < 500) {
    const badJson = error.status === 400;
    return c.json(
      badJson
        ? errorBody('bad-body', 'The body of the request cannot be read: it is not valid JSON.')
        : errorBody('refused', 'The request was refused.'),
      error.status,
    );
  }
  const trouble = troubleOf(error);
  if (trouble !== null) {
    report(`${trouble.says}\n${describeError(error)}`);
    return c.json(errorBody(trouble.code, trouble.says), trouble.code === 'disk-full' ? 507 : 503);
  }
  report(describeError(error));
  return c.json(
    errorBody(
      'internal',
      'Something went wrong inside the server and nothing was changed. The terminal in which it runs says more.',
    ),
    500,
  );
}

/** One line for the terminal; never the request, which may hold the secret address of a feed. */
export function describeError(error: unknown): string {
  if (error instanceof Error) return error.stack ?? `${error.name}: ${error.message}`;
  return String(error);
}
