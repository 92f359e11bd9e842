// What the API takes and gives about backups.
import { z } from 'zod';
import { Problem } from '../../planner/index.ts';

export const CopyName = z
  .string()
  .regex(/^barmline-[0-9]{4}-[0-9]{2}-[0-9]{2}(-[0-9]{6}(-before-restore)?)?\.(db|json)$/);

export const BackupsAnswer = z
  .strictObject({
    folder: z.string().describe('Where the copies lie'),
    daily: z.number().int().describe('How many days are kept'),
    weekly: z.number().int().describe('How many weeks are kept beyond them'),
    failure: z.string().nullable().describe('Why the copy of today could not be made'),
    copies: z
      .array(
        z.strictObject({
          name: z.string(),
          day: z.string(),
          kind: z.enum(['daily', 'by-hand', 'before-restore']),
          bytes: z.number().int().nonnegative(),
          madeAt: z.string(),
        }),
      )
      .describe('Newest first'),
  })
  .meta({ id: 'BackupsAnswer' });
export type BackupsAnswer = z.infer<typeof BackupsAnswer>;

export const BackupMadeAnswer = BackupsAnswer.extend({ made: z.string() }).meta({
  id: 'BackupMadeAnswer',
});

export const HouseSummary = z
  .strictObject({
    name: z.string(),
    savedAt: z.string(),
    brews: z.number().int(),
    tanks: z.number().int(),
    yeasts: z.number().int(),
    jars: z.number().int(),
    seasons: z.number().int(),
    news: z.number().int().describe('Entries of the record, all seasons'),
    lastNewsAt: z.string().nullable(),
    planMadeAt: z.string().nullable(),
    tasks: z.number().int().describe('Entries of the calendar'),
    addresses: z.number().int().describe('Calendar addresses'),
  })
  .meta({ id: 'HouseSummary' });
export type HouseSummary = z.infer<typeof HouseSummary>;

export const RestoreRequest = z
  .strictObject({
    copy: CopyName.nullable().default(null).describe('One of the copies; null: the document'),
    document: z
      .unknown()
      .optional()
      .describe('A whole house, as GET /api/backups/house.json gives it'),
    apply: z.boolean().default(false).describe('false: only show what would come of it'),
    addresses: z
      .boolean()
      .default(false)
      .describe('Take its calendar addresses over: whoever has one can then read this calendar'),
  })
  .meta({ id: 'RestoreRequest' });

export const RestoreAnswer = z
  .strictObject({
    holds: HouseSummary.nullable().describe('What the copy holds; null: it cannot be used'),
    now: HouseSummary.nullable().describe('What it would take the place of'),
    problems: z.array(Problem),
    applied: z.boolean(),
    revision: z.number().int().nonnegative(),
    kept: z.string().nullable().describe('The copy that was made of what was there before'),
  })
  .meta({ id: 'RestoreAnswer' });
export type RestoreAnswer = z.infer<typeof RestoreAnswer>;
