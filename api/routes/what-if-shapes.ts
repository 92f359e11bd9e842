// What the API takes and gives about a house that is not saved.
import { z } from 'zod';
import { Changes, Plan } from '../../planner/index.ts';
import { Run } from './shapes.ts';

export const WhatIfRequest = z
  .strictObject({
    house: z
      .unknown()
      .optional()
      .describe('The house as it would be, whole; null or left out: as it stands'),
    seed: z.number().int().min(0).max(4_294_967_295).default(1),
    steps: z.number().int().min(0).max(1_000_000_000).nullable().default(null),
    anew: z
      .boolean()
      .default(false)
      .describe('Plan from what has happened alone, as if no plan were in force'),
    replace: z.boolean().default(false).describe('Stop and discard one that is under way'),
  })
  .meta({ id: 'WhatIfRequest' });

export const WhatIfAnswer = z
  .strictObject({
    run: Run,
    result: z
      .strictObject({
        plan: Plan,
        changes: Changes.nullable().describe('What differs from the plan in force; null: none is'),
      })
      .nullable()
      .describe('null: not there yet, or no longer remembered'),
  })
  .meta({ id: 'WhatIfAnswer' });
export type WhatIfAnswer = z.infer<typeof WhatIfAnswer>;
