// News: one thing that happened or was decided, as it is told from a task or a brew.
import { z } from 'zod';
import { between, IsoDay, Name } from './common.ts';

export const News = z
  .discriminatedUnion('kind', [
    z.strictObject({
      kind: z.literal('brewed'),
      brew: Name,
      day: IsoDay,
      tank: Name.nullable().default(null).describe('null: the planned tank'),
      drawnMl: between(0, 10_000_000).nullable().default(null).describe('null: as planned'),
    }),
    z.strictObject({
      kind: z.literal('slipped'),
      brew: Name,
      to: IsoDay.describe('The earliest day on which it can be brewed now'),
    }),
    z.strictObject({
      kind: z.literal('harvested'),
      brew: Name,
      day: IsoDay,
      settledMl: between(0, 10_000_000),
    }),
    z.strictObject({ kind: z.literal('jar-gone'), jar: Name, day: IsoDay }),
    z.strictObject({
      kind: z.literal('task-done'),
      task: z.string().min(1).max(500).describe('Key of the task'),
      day: IsoDay,
    }),
    z.strictObject({
      kind: z.literal('pinned'),
      brew: Name,
      day: IsoDay.nullable().default(null),
      tank: Name.nullable().default(null),
    }),
    z.strictObject({ kind: z.literal('unpinned'), brew: Name }),
    z.strictObject({
      kind: z.literal('undone'),
      entry: z
        .number()
        .int()
        .positive()
        .describe('Number of the entry of the record that is taken back'),
    }),
  ])
  .meta({ id: 'News' });
export type News = z.infer<typeof News>;
