// The shelf: every jar and pack that stands in the cold or is to come, and the whole family of the season's yeast.
import { z } from 'zod';
import { IsoDay, Name, Range } from './common.ts';
import { CultureState, SlurryRef } from './facts.ts';
import { FamilyMember } from './family.ts';

const generation = z
  .number()
  .int()
  .describe('A fresh pack is 0; slurry out of its first beer is 1');

export const StandingJar = z
  .strictObject({
    code: z.string().describe('What is written on its lid; no other jar of the house has it'),
    of: SlurryRef,
    yeast: Name,
    generation,
    from: Name.nullable().describe('The beer of this season that it came out of'),
    ofStarter: z
      .literal(true)
      .optional()
      .describe('Kept from the starter of that beer, and not out of the beer itself'),
    filledOn: IsoDay.describe('Harvested, or to be harvested'),
    ml: z.number().describe('Settled slurry, mL'),
    cellsB: z.number().nullable().describe('Cells in it, dead ones included, billion, likely'),
    alive: z
      .strictObject({ on: IsoDay, share: Range })
      .nullable()
      .describe('Share alive today, or on the last day for which the plan says it'),
    for: Name.nullable().describe('The brew that it is planned for'),
    kept: z.boolean().describe('Kept in reserve, or for the next season'),
    untilPassed: Name.optional().describe(
      'The brew that has to be tasted and passed before this jar of reserve may go',
    ),
    leavesOn: IsoDay.nullable().describe('Drawn, or discarded at the latest'),
    aliveThen: Range.nullable().describe('Share alive on the day it is drawn for its brew'),
    useBy: IsoDay,
    state: CultureState,
    inPlan: z.boolean().describe('The plan in force counts on it'),
  })
  .meta({ id: 'StandingJar' });
export type StandingJar = z.infer<typeof StandingJar>;

export const StandingPacks = z
  .strictObject({
    yeast: Name,
    packs: z.number().int(),
    madeOn: IsoDay.describe('As told, else assumed from their usual age'),
    hereFrom: IsoDay.nullable().describe('On their way until this day; null: in the house'),
    alive: Range.describe('Share alive today, or on the day they come'),
    cellsB: z.number().describe('Living cells of one pack then, billion, likely'),
    useBy: IsoDay,
    for: z.array(Name).describe('Brews that are to get packs that are paid for'),
  })
  .meta({ id: 'StandingPacks' });
export type StandingPacks = z.infer<typeof StandingPacks>;

export const Culture = FamilyMember.omit({ kin: true })
  .extend({ yeast: Name, generation, day: IsoDay.describe('Brewed, harvested, or planned for') })
  .meta({ id: 'Culture' });
export type Culture = z.infer<typeof Culture>;

export const Shelf = z
  .strictObject({
    today: IsoDay,
    jars: z.array(StandingJar).describe('Standing in the cold, what is used first first'),
    toCome: z.array(StandingJar).describe('Jars of harvests that are planned, in order of day'),
    packs: z.array(StandingPacks),
    cultures: z.array(Culture).describe('Every jar, beer and harvest of the season'),
    taste: z.array(Name).describe('Beers to taste: brewed, and suspect or on watch'),
    says: z.string().describe('Which batches to taste, in a sentence'),
  })
  .meta({
    id: 'Shelf',
    description: 'What stands in the cold, what is to come, and what it descends from.',
  });
export type Shelf = z.infer<typeof Shelf>;
