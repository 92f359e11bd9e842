// What moving one brew would break or cost if nothing else moved: the answer to a brew that is being dragged.
import { z } from 'zod';
import { IsoDay, Name } from './common.ts';
import { CostPart, Finding } from './plan.ts';

const difference = z
  .number()
  .int()
  .describe("Whole minor units of the house's currency; positive: dearer than now");

export const TrialLine = z
  .strictObject({
    rule: z.string().describe('Permanent id of the rule'),
    part: CostPart,
    title: z.string().describe("The rule's name"),
    subject: z.string().describe('The brew, jar or tank that it is about'),
    differenceMinor: difference,
    says: z.string(),
  })
  .meta({ id: 'TrialLine' });
export type TrialLine = z.infer<typeof TrialLine>;

export const Trial = z
  .strictObject({
    brew: Name,
    day: IsoDay,
    tank: Name,
    emptiedOn: IsoDay,
    readyOn: IsoDay,
    daysLate: z.number().int().nonnegative(),
    breaks: z.array(Finding).describe('Hard rules broken that are kept now, or broken worse'),
    mends: z.array(Finding).describe('Hard rules broken now that would be kept'),
    costMinor: difference.describe('cash + work + risk, against the plan in force as it stands'),
    cashMinor: difference,
    workMinor: difference,
    riskMinor: difference,
    lines: z.array(TrialLine).describe('Where the difference comes from, the largest first'),
  })
  .meta({ id: 'Trial', description: 'One brew moved and everything else left where it is.' });
export type Trial = z.infer<typeof Trial>;
