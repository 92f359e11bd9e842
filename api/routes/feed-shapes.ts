// What the API takes and gives about calendar addresses.
import { z } from 'zod';
import { TaskKind } from '../../planner/index.ts';

export const Alarm = z
  .strictObject({
    minutesBefore: z.number().int().min(0).max(20_160).describe('For tasks with a clock time'),
    daysBefore: z.number().int().min(0).max(14).describe('For tasks of a whole day'),
    atTime: z
      .string()
      .regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'must be a clock time written HH:MM')
      .describe('For tasks of a whole day: when the alarm goes off'),
  })
  .meta({ id: 'Alarm' });
export type Alarm = z.infer<typeof Alarm>;

export const FeedLook = z
  .strictObject({
    allDay: z
      .boolean()
      .default(false)
      .describe('Every task as one of the whole day; false: clock times where a task has one'),
    volume: z
      .enum(['metric', 'us'])
      .default('metric')
      .describe('mL, L, g and °C; or fl oz, gal, oz and °F'),
    gravity: z.enum(['sg', 'plato']).default('sg').describe('Specific gravity, or °P'),
  })
  .meta({ id: 'FeedLook' });
export type FeedLook = z.infer<typeof FeedLook>;

export const PLAIN_LOOK: FeedLook = FeedLook.parse({});

export const FeedRequest = z
  .strictObject({
    kinds: z
      .array(TaskKind)
      .min(1, 'names no kind of task')
      .max(TaskKind.options.length)
      .nullable()
      .default(null)
      .describe('Kinds of task; null: all'),
    alarm: Alarm.nullable().default(null).describe('null: no alarms'),
    look: FeedLook.default(PLAIN_LOOK).describe('How its tasks are shown'),
  })
  .meta({ id: 'FeedRequest' });

export const Feed = z
  .strictObject({
    id: z.uuid(),
    kinds: z.array(TaskKind).nullable(),
    alarm: Alarm.nullable(),
    look: FeedLook,
    createdAt: z.string().describe('A moment, ISO 8601 in UTC'),
    address: z
      .string()
      .nullable()
      .describe('null: its key is lost, so that it cannot be shown; make a new one'),
    webcal: z.string().nullable().describe('The same address as calendar programs open it'),
  })
  .meta({ id: 'Feed' });
export type Feed = z.infer<typeof Feed>;

export const FeedsAnswer = z
  .strictObject({
    feeds: z.array(Feed),
    advice: z.array(z.string()).describe('How slow each kind of calendar may be'),
  })
  .meta({ id: 'FeedsAnswer' });
export const FeedMadeAnswer = FeedsAnswer.extend({ made: Feed }).meta({ id: 'FeedMadeAnswer' });
