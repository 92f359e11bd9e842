// One entry of the record: the news as it was told, and what it came to with the plan of that day at hand.
import { z } from 'zod';
import { BegunFact, BrewedFact, HarvestedFact, IsoDay, Name, News, Pin } from '../model/index.ts';

const ml = z.number().nonnegative();

/** What a piece of news came to. It says all that is needed later: the plan of that day is not asked again. */
export const RecordFact = z
  .discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('brewed'), brewed: BrewedFact }),
    z.strictObject({ kind: z.literal('harvested'), harvested: HarvestedFact }),
    z.strictObject({
      kind: z.literal('read').describe('The settled volume, read after the harvest was recorded'),
      brew: Name,
      day: IsoDay,
      settledMl: ml,
    }),
    z.strictObject({ kind: z.literal('emptied'), brew: Name, day: IsoDay }),
    z.strictObject({
      kind: z.literal('discarded').describe('A jar of a harvest was thrown away'),
      brew: Name,
      ml,
    }),
    z.strictObject({ kind: z.literal('begun'), begun: BegunFact }),
    z.strictObject({
      kind: z.literal('bought').describe('Packs were ordered; they are in the house from a day on'),
      lines: z
        .array(
          z.strictObject({ yeast: Name, packs: z.number().int().positive(), arrivesOn: IsoDay }),
        )
        .min(1),
    }),
    z.strictObject({ kind: z.literal('not-before'), brew: Name, day: IsoDay }),
    z.strictObject({ kind: z.literal('jar-gone'), jar: Name, day: IsoDay }),
    z.strictObject({
      kind: z.literal('ticked').describe('A task was done, and no more is known'),
      needs: z
        .strictObject({ brew: Name, been: z.enum(['brewed', 'harvested']) })
        .nullable()
        .describe('What must have happened before it can be done'),
    }),
    z.strictObject({ kind: z.literal('pinned'), pin: Pin }),
    z.strictObject({ kind: z.literal('unpinned'), brew: Name }),
    z.strictObject({ kind: z.literal('undone'), entry: z.number().int().positive() }),
  ])
  .meta({ id: 'RecordFact' });
export type RecordFact = z.infer<typeof RecordFact>;

export const RecordEntry = z
  .strictObject({
    no: z.number().int().positive().describe('Its number in the record: entries are never changed'),
    news: News,
    fact: RecordFact,
  })
  .meta({ id: 'RecordEntry' });
export type RecordEntry = z.infer<typeof RecordEntry>;
