// The small shapes that every part of the model is made of: days, shares, intervals.
import { DateTime } from 'luxon';
import { z } from 'zod';

/** A calendar day, `YYYY-MM-DD`, in the house's time zone. */
export const IsoDay = z
  .string()
  .regex(/^\d{4}-\d{2}-\d{2}$/, 'must be a day written YYYY-MM-DD')
  .refine((day) => DateTime.fromISO(day, { zone: 'utc' }).isValid, 'is not a day of the calendar')
  .meta({ id: 'IsoDay', description: 'A calendar day in the house time zone, YYYY-MM-DD.' });
export type IsoDay = z.infer<typeof IsoDay>;

export const WEEKDAYS = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'] as const;
export const Weekday = z.enum(WEEKDAYS).meta({ id: 'Weekday' });
export type Weekday = z.infer<typeof Weekday>;

/** A prediction: the likely value plans, the low value warns. `low` to `high` is the 80 % interval. */
export const Range = z
  .strictObject({ low: z.number(), likely: z.number(), high: z.number() })
  .meta({ id: 'Range', description: 'A prediction: an 80 % interval around the likely value.' });
export type Range = z.infer<typeof Range>;

/** Text of one line: no line breaks, tabs or other control characters, and no halves of characters. */
export const ONE_LINE = /^[^\p{Cc}\p{Cs}]*$/u;

/** What a person calls a thing; unique within its list. Text is data: any characters but control characters. */
export const Name = z
  .string()
  .trim()
  .min(1, 'needs a name')
  .max(200, 'is longer than 200 characters')
  .regex(ONE_LINE, 'must be one line');
export type Name = z.infer<typeof Name>;

/** An amount between two bounds, both included. */
export const between = (low: number, high: number) =>
  z.number().min(low, `must be at least ${low}`).max(high, `must be at most ${high}`);

/** A whole number between two bounds, both included. */
export const whole = (low: number, high: number) =>
  z
    .number()
    .int('must be a whole number')
    .min(low, `must be at least ${low}`)
    .max(high, `must be at most ${high}`);

/** Specific gravity as it is written on a recipe: 1.048, never 1048 and never °P. */
export const SpecificGravity = z
  .number()
  .min(0.98, 'is below 0.980: a specific gravity is written like 1.048')
  .max(
    1.2,
    'is above 1.200: a specific gravity is written like 1.048; 12 would be °P, 1048 wants a point',
  );
