// The one shape in which anything wrong with what was given is said.
import { z } from 'zod';

export const Problem = z
  .strictObject({
    code: z.string().describe('Permanent id of the kind of problem'),
    path: z.string().describe('Where: a path into the document, or file:line:column'),
    value: z.string().nullable().describe('What stands there'),
    bound: z.string().nullable().describe('What it may be'),
    message: z.string().describe('A sentence that names field, value and bound'),
    remedy: z.string().describe('What to do about it'),
    level: z.enum(['error', 'warning']).default('error'),
  })
  .meta({ id: 'Problem' });
export type Problem = z.infer<typeof Problem>;

export const ErrorBody = z
  .strictObject({
    error: z.strictObject({ code: z.string(), message: z.string(), problems: z.array(Problem) }),
  })
  .meta({ id: 'ErrorBody' });
export type ErrorBody = z.infer<typeof ErrorBody>;
