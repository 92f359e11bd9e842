// One entry of the record: the news as it was told, and what it came to with the plan of that day at hand.
import { z } from 'zod';
import {
  BegunFact,
  Brew,
  BrewedFact,
  CultureRef,
  Expected,
  HarvestedFact,
  IsoDay,
  Jar,
  Name,
  News,
  Pin,
  SlurryRef,
  SourceRef,
  YeastCount,
} from '../model/index.ts';

const ml = z.number().nonnegative();

/** What a piece of news came to. It says all that is needed later: the plan of that day is not asked again. */
export const RecordFact = z
  .discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('brewed'), brewed: BrewedFact }),
    z.strictObject({ kind: z.literal('harvested'), harvested: HarvestedFact }),
    z.strictObject({
      kind: z.literal('read').describe('The settled volume, read after the harvest was recorded'),
      brew: Name,
      day: IsoDay,
      settledMl: ml,
    }),
    z.strictObject({ kind: z.literal('emptied'), brew: Name, day: IsoDay }),
    z.strictObject({
      kind: z.literal('discarded').describe('A jar of a harvest was thrown away'),
      brew: Name,
      ml,
    }),
    z.strictObject({ kind: z.literal('slow'), brew: Name, until: IsoDay }),
    z.strictObject({
      kind: z.literal('gravity'),
      brew: Name,
      og: z.number(),
      fg: z.number().nullable(),
    }),
    z.strictObject({
      kind: z
        .literal('lag')
        .describe('How long a beer took to foam, with what is known of its pitch'),
      brew: Name,
      hours: z.number().positive(),
      yeast: Name,
      generation: z.number().int().nonnegative(),
      viability: z.number().min(0).max(1).nullable().describe('As the plan had it; null: unknown'),
    }),
    z.strictObject({ kind: z.literal('hopped'), brew: Name, day: IsoDay }),
    z.strictObject({ kind: z.literal('passed'), brew: Name, day: IsoDay }),
    z.strictObject({ kind: z.literal('begun'), begun: BegunFact }),
    z.strictObject({ kind: z.literal('starter-failed'), brew: Name, day: IsoDay }),
    z.strictObject({
      kind: z.literal('bought').describe('Packs were ordered; they are in the house from a day on'),
      lines: z
        .array(
          z.strictObject({ yeast: Name, packs: z.number().int().positive(), arrivesOn: IsoDay }),
        )
        .min(1),
    }),
    z.strictObject({
      kind: z.literal('packs-late'),
      yeast: Name,
      was: IsoDay.describe('The delivery that was to come on this day'),
      arrivesOn: IsoDay,
    }),
    z.strictObject({ kind: z.literal('not-before'), brew: Name, day: IsoDay }),
    z.strictObject({ kind: z.literal('brew-added'), row: Brew }),
    z.strictObject({ kind: z.literal('brew-dropped'), brew: Name }),
    z.strictObject({ kind: z.literal('resized'), brew: Name, volumeL: z.number().positive() }),
    z.strictObject({ kind: z.literal('jar-found'), row: Jar }),
    z.strictObject({ kind: z.literal('jar-gone'), jar: Name, day: IsoDay }),
    z.strictObject({
      kind: z.literal('measured'),
      of: SlurryRef,
      day: IsoDay,
      viability: z.number().min(0).max(1).nullable(),
      densityBPerMl: z.number().positive().nullable(),
      count: YeastCount.nullable().describe('The count for what is learnt about the strain'),
    }),
    z.strictObject({
      kind: z.literal('marked'),
      of: CultureRef,
      day: IsoDay,
      as: z.enum(['suspect', 'frozen', 'sound']),
    }),
    z.strictObject({ kind: z.literal('tank-out'), tank: Name, from: IsoDay, to: IsoDay }),
    z.strictObject({ kind: z.literal('day-closed'), day: IsoDay }),
    z.strictObject({
      kind: z.literal('ticked').describe('A task was done, and no more is known'),
      needs: z
        .strictObject({ brew: Name, been: z.enum(['brewed', 'harvested']) })
        .nullable()
        .describe('What must have happened before it can be done'),
    }),
    z.strictObject({ kind: z.literal('pinned'), pin: Pin }),
    z.strictObject({
      kind: z.literal('unpinned'),
      brew: Name,
      what: z.enum(['day', 'tank', 'source']).nullable().default(null),
    }),
    z.strictObject({ kind: z.literal('source-forbidden'), brew: Name, source: SourceRef }),
    z.strictObject({ kind: z.literal('source-allowed'), brew: Name, source: SourceRef }),
    z.strictObject({ kind: z.literal('undone'), entry: z.number().int().positive() }),
  ])
  .meta({ id: 'RecordFact' });
export type RecordFact = z.infer<typeof RecordFact>;

export const RecordEntry = z
  .strictObject({
    no: z.number().int().positive().describe('Its number in the record: entries are never changed'),
    news: News,
    fact: RecordFact,
    expected: z
      .array(Expected)
      .optional()
      .describe('What the plan in force said of its figures, for hindsight'),
  })
  .meta({ id: 'RecordEntry' });
export type RecordEntry = z.infer<typeof RecordEntry>;

/** The brews that an entry speaks of, for as long as it is to hold. */
export function brewsOf(fact: RecordFact): string[] {
  const names: string[] = [];
  if ('brew' in fact) names.push(fact.brew);
  if (fact.kind === 'brewed') names.push(fact.brewed.brew, ...sourceBrews(fact.brewed.source));
  if (fact.kind === 'begun') names.push(fact.begun.brew, ...sourceBrews(fact.begun.source));
  if (fact.kind === 'harvested') names.push(fact.harvested.brew);
  if (fact.kind === 'pinned') {
    names.push(fact.pin.brew, ...(fact.pin.source ? sourceBrews(fact.pin.source) : []));
  }
  if (fact.kind === 'measured' || fact.kind === 'marked') names.push(...sourceBrews(fact.of));
  return names;
}

/** The jars of the shelf that an entry speaks of. */
export function jarsOf(fact: RecordFact): string[] {
  if (fact.kind === 'jar-gone') return [fact.jar];
  if (fact.kind === 'brewed') return sourceJars(fact.brewed.source);
  if (fact.kind === 'begun') return sourceJars(fact.begun.source);
  if (fact.kind === 'pinned') return fact.pin.source ? sourceJars(fact.pin.source) : [];
  if (fact.kind === 'measured' || fact.kind === 'marked') return sourceJars(fact.of);
  return fact.kind === 'source-forbidden' ? sourceJars(fact.source) : [];
}

const sourceBrews = (of: { kind: string; brew?: string }): string[] =>
  of.brew === undefined ? [] : [of.brew];
const sourceJars = (of: { kind: string; jar?: string }): string[] =>
  of.jar === undefined ? [] : [of.jar];
