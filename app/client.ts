// The typed client of the API, and the one way in which its refusals reach a page.
import { hc } from 'hono/client';
import type { AppType } from '../api/app.ts';
import type { ErrorBody, Problem } from '../planner/index.ts';
import { tellReach } from './reach.ts';

/** Calls the server that the page came from. */
export const client = hc<AppType>(window.location.origin);

/** What the server said when it would not do a thing, or that it could not be reached. */
export class Refused extends Error {
  readonly problems: readonly Problem[];
  readonly status: number;
  /** Permanent id of the kind of refusal; '' where the server gave none. */
  readonly code: string;

  constructor(status: number, message: string, problems: readonly Problem[], code = '') {
    super(message);
    this.code = code;
    this.name = 'Refused';
    this.status = status;
    this.problems = problems;
  }
}

/** The answer's body, or `Refused` with the server's own words. */
export async function answerOf<T>(
  asked: Promise<{ ok: boolean; status: number; json(): Promise<T> }>,
): Promise<Exclude<T, ErrorBody>> {
  const answer = await asked.catch(() => {
    tellReach(false);
    throw new Refused(0, 'The server does not answer. Is Barmline still running?', []);
  });
  tellReach(true);
  const body = await answer.json().catch(() => null);
  if (answer.ok && body !== null && !isErrorBody(body)) return body as Exclude<T, ErrorBody>;
  if (isErrorBody(body)) {
    const { message, problems, code } = body.error;
    throw new Refused(answer.status, message, problems, code);
  }
  throw new Refused(answer.status, `The server answered with ${answer.status} and no reason.`, []);
}

function isErrorBody(body: unknown): body is ErrorBody {
  return typeof body === 'object' && body !== null && 'error' in body;
}
