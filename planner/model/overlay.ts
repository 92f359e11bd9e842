// What news changed about the house since it was entered: laid over the house, never written into it.
import { z } from 'zod';
import { between, IsoDay, Name, SpecificGravity, whole } from './common.ts';
import { CultureState } from './facts.ts';
import { Brew, Jar, YeastCount } from './house.ts';

export const BrewOverlay = z.strictObject({
  brew: Name,
  volumeL: between(0.5, 100_000).nullable(),
  og: SpecificGravity.nullable(),
  fg: SpecificGravity.nullable(),
  tankDaysAtLeast: whole(0, 730).nullable().describe('Days after the pitch'),
  dryHopDay: whole(0, 730).nullable().describe('Days after the pitch'),
});
export type BrewOverlay = z.infer<typeof BrewOverlay>;

export const Overlay = z
  .strictObject({
    brewsAdded: z.array(Brew),
    brewsDropped: z.array(Name),
    brews: z.array(BrewOverlay),
    tanksOut: z.array(z.strictObject({ tank: Name, from: IsoDay, to: IsoDay })),
    closed: z.array(IsoDay),
    jarsFound: z.array(Jar),
    jarStates: z
      .array(
        z.strictObject({
          jar: Name,
          state: CultureState,
          mates: z.boolean().describe('Jars of the same harvest go on watch with it'),
        }),
      )
      .describe('In the order in which they were told: the last word holds'),
    jarsCounted: z.array(z.strictObject({ jar: Name, day: IsoDay, viability: between(0, 1) })),
    counts: z.array(YeastCount),
  })
  .meta({ id: 'Overlay', description: 'What news changed about the house.' });
export type Overlay = z.infer<typeof Overlay>;

export const NO_OVERLAY: Overlay = {
  brewsAdded: [],
  brewsDropped: [],
  brews: [],
  tanksOut: [],
  closed: [],
  jarsFound: [],
  jarStates: [],
  jarsCounted: [],
  counts: [],
};
