// One thing to do on one day, as the task list and the calendar show it.
import { z } from 'zod';
import { IsoDay, Name } from './common.ts';

export const TASK_KINDS = [
  'order',
  'check-jar',
  'starter',
  'chill-decant',
  'take-out',
  'brew-pitch',
  'dry-hop',
  'crash',
  'harvest',
  'read-volume',
  'package',
  'clean',
  'discard-by',
] as const;
export const TaskKind = z.enum(TASK_KINDS).meta({ id: 'TaskKind' });
export type TaskKind = z.infer<typeof TaskKind>;

export const Task = z
  .strictObject({
    key: z
      .string()
      .describe(
        'Stable over re-plans: kind, what it is about and, where a step repeats, which one',
      ),
    kind: TaskKind,
    day: IsoDay,
    minutes: z.number().int().nonnegative().describe('How long it takes'),
    /** The clock time at which it starts where that matters, e.g. take-out before the pitch. */
    time: z
      .string()
      .regex(/^\d{2}:\d{2}$/)
      .nullable()
      .describe('House time HH:MM at which it starts; null: any time that day'),
    brew: Name.nullable().describe('The brew that it serves'),
    title: z.string().describe('One line: what, how much, for whom'),
    steps: z.array(z.string()).describe('Plain sentences, in order'),
    amounts: z.array(z.strictObject({ what: z.string(), value: z.number(), unit: z.string() })),
    haveReady: z.array(z.string()),
    goodLooksLike: z.string(),
    why: z.string(),
    caution: z.string().nullable().describe('How it can hurt someone, and who to ask'),
    done: z.boolean(),
  })
  .meta({ id: 'Task' });
export type Task = z.infer<typeof Task>;
