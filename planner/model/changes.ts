// What differs between two plans: only that, each with its reason.
import { z } from 'zod';
import { IsoDay, Name } from './common.ts';
import { Totals } from './plan.ts';

export const Change = z
  .strictObject({
    kind: z.enum(['moved', 'tank', 'source', 'yeast', 'starter', 'amount', 'added', 'dropped']),
    brew: Name,
    before: z.string().nullable(),
    after: z.string().nullable(),
    day: IsoDay.describe('The day that it concerns now'),
    says: z.string().describe('A sentence for the brewer'),
    reason: z.string(),
    rule: z
      .string()
      .nullable()
      .default(null)
      .describe('Id of the hard rule that putting it back would break; null: none forces it'),
  })
  .meta({ id: 'Change' });
export type Change = z.infer<typeof Change>;

export const Changes = z
  .strictObject({
    changes: z.array(Change),
    smaller: z
      .array(z.strictObject({ brew: Name, before: z.string(), after: z.string() }))
      .default([])
      .describe('Amounts that differ by 5 % or less: too little to ask about, not nothing'),
    tasksAdded: z.array(z.string()).describe('Keys'),
    tasksGone: z.array(z.string()).describe('Keys'),
    tasksMoved: z.array(z.strictObject({ key: z.string(), before: IsoDay, after: IsoDay })),
    before: Totals.describe('The plan in force with the news applied and nothing else moved'),
    after: Totals,
  })
  .meta({ id: 'Changes' });
export type Changes = z.infer<typeof Changes>;
