// What it would save to have one more of something: each limit of the house, widened, and the season planned again.
import { z } from 'zod';
import { Totals } from './plan.ts';

const minor = z.number().int().describe("Whole minor units of the house's currency");

export const WidenedLimit = z
  .strictObject({
    id: z.string().describe('Which limit was widened, and where'),
    says: z.string().describe('What the house would have, in words'),
    leftOutFewer: z.number().int().describe('Brews that find a place beside those placed now'),
    savesMinor: minor.describe('Cost of the plan as it is, less the cost with the limit widened'),
    savesCashMinor: minor,
    savesWorkMinor: minor,
    savesRiskMinor: minor,
    lateDaysFewer: z.number().int(),
    verdict: z.string().describe('What it comes to, in a sentence'),
  })
  .meta({ id: 'WidenedLimit' });
export type WidenedLimit = z.infer<typeof WidenedLimit>;

export const SeasonLimits = z
  .strictObject({
    today: Totals.describe('The plan as it is, searched on for as long as each of the others'),
    steps: z.number().int().nonnegative().describe('Plans judged for each question'),
    limits: z.array(WidenedLimit).describe('The one that saves most first'),
    stopped: z.boolean().describe('Some questions were not asked: the run was stopped'),
  })
  .meta({ id: 'SeasonLimits' });
export type SeasonLimits = z.infer<typeof SeasonLimits>;
