// What a brewer asks about a brew that is being moved, and what is answered.
import { z } from 'zod';
import { IsoDay, Name, Trial } from '../../planner/index.ts';

export const TrialRequest = z
  .strictObject({ brew: Name, day: IsoDay, tank: Name })
  .meta({ id: 'TrialRequest' });

export const TrialAnswer = z
  .strictObject({ trial: Trial, plan: z.uuid().describe('The plan in force that it was tried on') })
  .meta({ id: 'TrialAnswer' });
export type TrialAnswer = z.infer<typeof TrialAnswer>;
