// What the API takes and gives about surveys of the plan in force.
import { z } from 'zod';
import { Luck, SeasonLimits, Steadiness } from '../../planner/index.ts';
import { Run } from './shapes.ts';

const seed = z.number().int().min(0).max(4_294_967_295).default(1);
const replace = z.boolean().default(false).describe('Stop and discard one that is under way');

export const SurveyRequest = z
  .discriminatedUnion('kind', [
    z.strictObject({
      kind: z.literal('limits').describe('What one more tank, brew day or jar would save'),
      seed,
      replace,
      steps: z
        .number()
        .int()
        .min(0)
        .max(100_000_000)
        .nullable()
        .default(null)
        .describe('Plans judged for each question; null: by the size of the season'),
    }),
    z.strictObject({
      kind: z.literal('steadiness').describe('How often each brew keeps its day and its yeast'),
      seed,
      replace,
      seasons: z.number().int().min(1).max(100_000).default(1000).describe('Seasons drawn'),
      luck: Luck.prefault({}).describe('How often things go wrong; left out: guesses'),
    }),
  ])
  .meta({ id: 'SurveyRequest' });

export const SurveyAnswer = z
  .strictObject({
    run: Run,
    result: z
      .discriminatedUnion('kind', [
        z.strictObject({ kind: z.literal('limits'), limits: SeasonLimits }),
        z.strictObject({ kind: z.literal('steadiness'), steadiness: Steadiness }),
      ])
      .nullable()
      .describe('null: not there yet, or no longer remembered'),
  })
  .meta({ id: 'SurveyAnswer' });
export type SurveyAnswer = z.infer<typeof SurveyAnswer>;
