// What is told of plans that were in force, and of families of yeast.
import { z } from 'zod';
import { Family, Hindsight, IsoDay, Shelf, Totals } from '../../planner/index.ts';

const at = z.string().describe('A moment, ISO 8601 in UTC');
const id = z.uuid();

export const HistoryAnswer = z
  .strictObject({
    plans: z
      .array(
        z.strictObject({
          id,
          madeAt: at,
          inForceAt: at,
          inForce: z.boolean().describe('It is the one that people follow now'),
          today: IsoDay.describe('The day on which it was made'),
          recordNo: z
            .number()
            .int()
            .nonnegative()
            .describe('The record as it stood, by its last entry'),
          houseRevision: z.number().int().nonnegative(),
          totals: Totals,
          sameState: z.boolean().describe('House and record say today what they said then'),
        }),
      )
      .describe('Plans that are or were in force this season, the newest first'),
  })
  .meta({ id: 'HistoryAnswer' });
export type HistoryAnswer = z.infer<typeof HistoryAnswer>;

export const FamilyParam = z.strictObject({
  kind: z.enum(['jar', 'harvest', 'beer']),
  name: z.string().min(1).max(200).describe('The jar, or the brew that was harvested or brewed'),
});
export const HindsightAnswer = z
  .strictObject({ hindsight: Hindsight })
  .meta({ id: 'HindsightAnswer' });
export type HindsightAnswer = z.infer<typeof HindsightAnswer>;

export const FamilyAnswer = z.strictObject({ family: Family }).meta({ id: 'FamilyAnswer' });

export const ShelfAnswer = z
  .strictObject({ shelf: Shelf.nullable().describe('null: there is no plan yet') })
  .meta({ id: 'ShelfAnswer' });
