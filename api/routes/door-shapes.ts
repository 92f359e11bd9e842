// What the API takes and gives about who is signed in.
import { z } from 'zod';

const at = z.string().describe('A moment, ISO 8601 in UTC');

export const SignIn = z.strictObject({ password: z.string() }).meta({ id: 'SignIn' });
export type SignIn = z.infer<typeof SignIn>;

export const DoorsAnswer = z
  .strictObject({
    shut: z.boolean().describe('Nothing is told without a session'),
    signedIn: z.boolean(),
    sessions: z
      .array(
        z.strictObject({
          id: z.uuid(),
          startedAt: at,
          seenAt: at.describe('Last used, to the hour'),
          browser: z.string().describe('What the browser calls itself'),
          here: z.boolean().describe('It is the session of this request'),
        }),
      )
      .describe('Those who are signed in; empty for whoever is not'),
  })
  .meta({ id: 'DoorsAnswer' });
export type DoorsAnswer = z.infer<typeof DoorsAnswer>;
