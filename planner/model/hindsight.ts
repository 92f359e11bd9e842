// What the plan expected of a figure when it came in, and what it was: told side by side over the season.
import { z } from 'zod';
import { IsoDay, Name } from './common.ts';
import { CultureRef } from './facts.ts';

/** What is compared. mL of settled slurry; share alive, 0 to 1; million cells per mL; specific gravity. */
export const Figure = z
  .enum(['settledMl', 'viability', 'millionPerMl', 'og', 'fg'])
  .meta({ id: 'HindsightFigure' });
export type Figure = z.infer<typeof Figure>;

export const Expected = z
  .strictObject({
    figure: Figure,
    yeast: Name,
    likely: z.number(),
    low: z.number().nullable().describe('null: one figure was planned, and no interval'),
    high: z.number().nullable(),
  })
  .meta({
    id: 'Expected',
    description: 'What the plan in force said of a figure when it was told.',
  });
export type Expected = z.infer<typeof Expected>;

export const Outcome = Expected.extend({
  entry: z.number().int().positive().describe('Number of the entry of the record'),
  of: CultureRef,
  day: IsoDay.nullable().describe('null: it was told without one'),
  happened: z.number(),
  within: z.boolean().nullable().describe('In the interval; null: there was none'),
}).meta({ id: 'Outcome' });
export type Outcome = z.infer<typeof Outcome>;

export const Lag = z
  .strictObject({
    entry: z.number().int().positive().describe('Number of the entry of the record'),
    brew: Name,
    yeast: Name,
    generation: z.number().int().nonnegative(),
    viability: z
      .number()
      .nullable()
      .describe('Share alive of what was pitched, as the plan had it'),
    hours: z.number().describe('From the pitch to the first foam'),
  })
  .meta({ id: 'Lag' });
export type Lag = z.infer<typeof Lag>;

export const Hindsight = z
  .strictObject({
    outcomes: z.array(Outcome).describe('Oldest first'),
    strains: z
      .array(
        z.strictObject({
          yeast: Name,
          figure: Figure,
          told: z.number().int().nonnegative().describe('Figures with an interval'),
          within: z.number().int().nonnegative().describe('Of these, in it'),
        }),
      )
      .describe('An interval is one of 80 %: about four in five should be in it'),
    lags: z
      .array(Lag)
      .describe('How long beers took to foam, oldest first. Nothing was foretold of it'),
  })
  .meta({ id: 'Hindsight' });
export type Hindsight = z.infer<typeof Hindsight>;
