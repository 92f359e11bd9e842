// What has happened, and what the brewer has decided: inputs that a plan may not contradict.
import { z } from 'zod';
import { between, IsoDay, Name, whole } from './common.ts';

/** Where yeast comes from or may not come from, without an amount. */
export const SourceRef = z
  .discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('fresh') }),
    z.strictObject({ kind: z.literal('jar'), jar: Name }),
    z.strictObject({ kind: z.literal('harvest'), brew: Name }),
  ])
  .meta({ id: 'SourceRef', description: 'Fresh packs, a jar of the shelf, or a harvest.' });
export type SourceRef = z.infer<typeof SourceRef>;

/** Slurry in the cold: a jar of the shelf, or what was harvested from a beer of the season. */
export const SlurryRef = z
  .discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('jar'), jar: Name }),
    z.strictObject({ kind: z.literal('harvest'), brew: Name }),
  ])
  .meta({ id: 'SlurryRef', description: 'A jar of the shelf, or the harvest of a brew.' });
export type SlurryRef = z.infer<typeof SlurryRef>;

/** A member of a family of yeast: slurry, or the beer that was pitched. */
export const CultureRef = z
  .discriminatedUnion('kind', [
    ...SlurryRef.options,
    z.strictObject({ kind: z.literal('beer'), brew: Name }),
  ])
  .meta({ id: 'CultureRef', description: 'A jar, a harvest, or a beer.' });
export type CultureRef = z.infer<typeof CultureRef>;

export const CultureState = z.enum(['sound', 'watch', 'suspect']).meta({ id: 'CultureState' });
export type CultureState = z.infer<typeof CultureState>;

/** Where the yeast of a pitch came from. Amounts are as planned or as poured. */
export const PitchSource = z
  .discriminatedUnion('kind', [
    z.strictObject({
      kind: z.literal('fresh'),
      packs: whole(0, 100_000),
      packsFromHand: whole(0, 100_000)
        .default(0)
        .describe('How many of them were taken from the cupboard'),
    }),
    z.strictObject({ kind: z.literal('jar'), jar: Name, drawMl: between(0, 10_000_000) }),
    z.strictObject({ kind: z.literal('harvest'), brew: Name, drawMl: between(0, 10_000_000) }),
  ])
  .meta({ id: 'PitchSource' });
export type PitchSource = z.infer<typeof PitchSource>;

/** A brew that has been brewed and pitched. */
export const BrewedFact = z
  .strictObject({
    brew: Name,
    day: IsoDay,
    tank: Name,
    yeast: Name,
    source: PitchSource,
    starterLitres: between(0, 100_000).default(0),
    generation: whole(0, 100),
    pitchedB: between(0, 100_000_000).describe(
      'Viable cells pitched, billion, as predicted or counted',
    ),
    emptiedOn: IsoDay.nullable().default(null).describe('When the tank was emptied, once it was'),
    state: CultureState.default('sound').describe(
      'Of the beer: nothing that comes out of a suspect one is pitched',
    ),
  })
  .meta({ id: 'BrewedFact' });
export type BrewedFact = z.infer<typeof BrewedFact>;

/** Slurry that has been taken from a beer; 0 mL: nothing usable came. */
export const HarvestedFact = z
  .strictObject({
    brew: Name,
    day: IsoDay,
    settledMl: between(0, 10_000_000).describe('Settled slurry in the jars, mL'),
    state: CultureState.default('sound'),
  })
  .meta({ id: 'HarvestedFact' });
export type HarvestedFact = z.infer<typeof HarvestedFact>;

/** A starter that has been begun: its yeast has left the jar or the pack. */
export const BegunFact = z
  .strictObject({
    brew: Name,
    day: IsoDay,
    yeast: Name,
    litres: between(0, 100_000),
    source: PitchSource,
  })
  .meta({ id: 'BegunFact' });
export type BegunFact = z.infer<typeof BegunFact>;

export const Facts = z
  .strictObject({
    brewed: z.array(BrewedFact).default([]),
    harvested: z.array(HarvestedFact).default([]),
    notBefore: z
      .array(z.strictObject({ brew: Name, day: IsoDay }))
      .default([])
      .describe('Brews that slipped: not brewed before this day'),
    begun: z.array(BegunFact).default([]).describe('Starters begun for brews not brewed yet'),
    bought: z
      .array(
        z.strictObject({
          yeast: Name,
          packs: whole(1, 100_000),
          arrivesOn: IsoDay.describe('In the house from this day on'),
        }),
      )
      .default([])
      .describe('Packs ordered since: they are paid for, and wait in the cold once they have come'),
    goneJars: z.array(Name).default([]).describe('Jars of the shelf that were lost or thrown away'),
    measured: z
      .array(
        z.strictObject({
          of: SlurryRef,
          day: IsoDay,
          viability: between(0, 1).nullable().describe('Share alive; null: not counted'),
          densityBPerMl: between(0.001, 10)
            .nullable()
            .describe('Billion cells per mL of the settled slurry; null: not counted'),
        }),
      )
      .default([])
      .describe('Slurry looked at under the microscope: the last count of each holds'),
    passed: z
      .array(z.strictObject({ brew: Name, day: IsoDay }))
      .default([])
      .describe('Beers tasted and passed'),
    lostPacks: z
      .array(
        z.strictObject({
          yeast: Name,
          packs: whole(1, 100_000),
          packsFromHand: whole(0, 100_000),
        }),
      )
      .default([])
      .describe('Packs that went into a starter which failed'),
  })
  .meta({ id: 'Facts', description: 'What has happened: no plan may contradict it.' });
export type Facts = z.infer<typeof Facts>;

export const NO_FACTS: Facts = {
  brewed: [],
  harvested: [],
  notBefore: [],
  begun: [],
  bought: [],
  goneJars: [],
  measured: [],
  passed: [],
  lostPacks: [],
};

/** What the brewer holds fast, each of the three alone or together, and what is ruled out. */
export const Pin = z
  .strictObject({
    brew: Name,
    day: IsoDay.nullable().default(null),
    tank: Name.nullable().default(null),
    source: SourceRef.nullable().default(null),
    forbidden: z
      .array(SourceRef)
      .max(1000)
      .default([])
      .describe('Sources that this brew is not to be pitched from'),
  })
  .meta({ id: 'Pin' });
export type Pin = z.infer<typeof Pin>;
