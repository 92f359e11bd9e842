// News: one thing that happened or was decided, as it is told from a task, a brew, a tank or a jar.
import { z } from 'zod';
import { between, IsoDay, Name, SpecificGravity, whole } from './common.ts';
import { CultureRef, SlurryRef, SourceRef } from './facts.ts';
import { Brew, Jar } from './house.ts';

const mL = between(0, 10_000_000);
const litres = between(0.5, 100_000);
const happened = IsoDay.describe('When it happened: today or before');

export const News = z
  .discriminatedUnion('kind', [
    // brews
    z.strictObject({
      kind: z.literal('brewed'),
      brew: Name,
      day: happened,
      tank: Name.nullable().default(null).describe('null: the planned tank'),
      drawnMl: mL.nullable().default(null).describe('null: as planned'),
    }),
    z.strictObject({
      kind: z.literal('slipped'),
      brew: Name,
      to: IsoDay.describe('The earliest day on which it can be brewed now'),
    }),
    z.strictObject({ kind: z.literal('not-yet'), brew: Name }),
    z.strictObject({ kind: z.literal('brew-added'), row: Brew }),
    z.strictObject({ kind: z.literal('brew-dropped'), brew: Name }),
    z.strictObject({
      kind: z.literal('resized'),
      brew: Name,
      volumeL: litres.describe('Litres of wort into the tank, from now on'),
    }),
    // beers in the tank
    z.strictObject({
      kind: z.literal('slow'),
      brew: Name,
      until: IsoDay.describe('Neither harvested nor emptied before this day'),
    }),
    z.strictObject({
      kind: z.literal('gravity'),
      brew: Name,
      og: SpecificGravity.describe('The gravity that the wort really had'),
      fg: SpecificGravity.nullable().default(null).describe('null: as it was planned'),
    }),
    z.strictObject({
      kind: z.literal('lag'),
      brew: Name,
      hours: between(0.5, 336).describe('Hours from the pitch to the first foam'),
    }),
    z.strictObject({ kind: z.literal('hopped'), brew: Name, day: happened }),
    z.strictObject({ kind: z.literal('passed'), brew: Name, day: happened }),
    // slurry
    z.strictObject({ kind: z.literal('harvested'), brew: Name, day: happened, settledMl: mL }),
    z.strictObject({ kind: z.literal('harvest-lost'), brew: Name, day: happened }),
    z.strictObject({ kind: z.literal('jar-found'), row: Jar }),
    z.strictObject({ kind: z.literal('jar-gone'), jar: Name, day: happened }),
    z.strictObject({ kind: z.literal('frozen'), of: SlurryRef, day: happened }),
    z.strictObject({
      kind: z.literal('measured'),
      of: SlurryRef,
      day: happened,
      stained: whole(0, 1_000_000).nullable().default(null).describe('Stained (dead) cells'),
      total: whole(1, 1_000_000).nullable().default(null).describe('Cells looked at'),
      viability: between(0, 1)
        .nullable()
        .default(null)
        .describe('Share alive where the two counts are not at hand'),
      millionPerMl: between(1, 6000)
        .nullable()
        .default(null)
        .describe('Million cells per mL of the settled slurry, dead ones included'),
    }),
    z.strictObject({ kind: z.literal('suspect'), of: CultureRef, day: happened }),
    z.strictObject({ kind: z.literal('sound'), of: CultureRef, day: happened }),
    // packs and starters
    z.strictObject({
      kind: z.literal('packs-bought'),
      yeast: Name,
      packs: whole(1, 10_000),
      arrivesOn: IsoDay.describe('In the house from this day on; it may be past'),
    }),
    z.strictObject({
      kind: z.literal('packs-late'),
      yeast: Name,
      arrivesOn: IsoDay.describe('The day on which they come now'),
      expectedOn: IsoDay.nullable()
        .default(null)
        .describe('Which delivery: the day on which it was to come; null: the only one under way'),
    }),
    z.strictObject({ kind: z.literal('starter-failed'), brew: Name, day: happened }),
    // tanks and days
    z.strictObject({ kind: z.literal('tank-out'), tank: Name, from: IsoDay, to: IsoDay }),
    z.strictObject({ kind: z.literal('day-closed'), day: IsoDay }),
    // wishes
    z.strictObject({
      kind: z.literal('pinned'),
      brew: Name,
      day: IsoDay.nullable().default(null),
      tank: Name.nullable().default(null),
      source: SourceRef.nullable().default(null),
    }),
    z.strictObject({
      kind: z.literal('unpinned'),
      brew: Name,
      what: z
        .enum(['day', 'tank', 'source'])
        .nullable()
        .default(null)
        .describe('Which of the three; null: all of them'),
    }),
    z.strictObject({ kind: z.literal('source-forbidden'), brew: Name, source: SourceRef }),
    z.strictObject({ kind: z.literal('source-allowed'), brew: Name, source: SourceRef }),
    // the list of tasks, and the record itself
    z.strictObject({
      kind: z.literal('task-done'),
      task: z.string().min(1).max(500).describe('Key of the task'),
      day: happened,
    }),
    z.strictObject({
      kind: z.literal('undone'),
      entry: z
        .number()
        .int()
        .positive()
        .describe('Number of the entry of the record that is taken back'),
    }),
  ])
  .meta({ id: 'News' });
export type News = z.infer<typeof News>;
export type NewsKind = News['kind'];
