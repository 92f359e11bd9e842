// How well a plan stands up to a season's luck: what is drawn, and how often each brew keeps its day and its yeast.
import { z } from 'zod';
import { between, Name, whole } from './common.ts';

const GUESS = 'A guess; no source';
const share = (says: string, usual: number) =>
  between(0, 1).default(usual).describe(`${says} ${GUESS}`);

/** What can go wrong in a season, and how often. Every figure is a guess that a brewer may replace. */
export const Luck = z
  .strictObject({
    slipShare: share('Brew days that slip to the next brew day.', 0.08),
    slipsAgainShare: share('Of those, how many slip once more.', 0.3),
    slowShare: share('Beers that need longer in the tank.', 0.1),
    slowDaysMost: whole(1, 60)
      .default(4)
      .describe(
        `The most days that they need longer; every number of days up to it is as likely. ${GUESS}`,
      ),
    lostJarShare: share('Draws whose jars are broken, lost or smell wrong.', 0.02),
    lateOrderShare: share('Orders of packs that come late.', 0.03),
    lateOrderDays: whole(1, 60).default(3).describe(`How many days late they come. ${GUESS}`),
  })
  .meta({ id: 'Luck' });
export type Luck = z.infer<typeof Luck>;

const part = z.number().min(0).max(1);

export const BrewSteadiness = z
  .strictObject({
    brew: Name,
    keepsDay: part.describe('Share of the seasons in which it is brewed on its day'),
    keepsSource: part
      .nullable()
      .describe('Share in which it is pitched with the yeast that was planned; null: fresh packs'),
    meanDaysMoved: z.number().nonnegative().describe('Days later than planned, over all seasons'),
    weakestPoint: z
      .enum(['late', 'short', 'weak', 'lost', 'old'])
      .nullable()
      .describe('What most often took its yeast away'),
  })
  .meta({ id: 'BrewSteadiness' });
export type BrewSteadiness = z.infer<typeof BrewSteadiness>;

export const Steadiness = z
  .strictObject({
    seasons: z.number().int().nonnegative().describe('Seasons that were drawn'),
    seed: z.number().int().nonnegative(),
    luck: Luck,
    brews: z.array(BrewSteadiness).describe('Those still to come, in order of their days'),
    keepsDay: part.nullable().describe('Over all brews and seasons; null: no brew is to come'),
    keepsSource: part.nullable().describe('Over all re-pitches; null: there is none'),
    allHold: part.nullable().describe('Seasons in which nothing had to change at all'),
    says: z.string(),
  })
  .meta({ id: 'Steadiness' });
export type Steadiness = z.infer<typeof Steadiness>;
