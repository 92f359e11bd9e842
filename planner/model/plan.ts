// What comes out: the plan, complete enough that an outsider can check every rule and recompute the cost.
import { z } from 'zod';
import { IsoDay, Name, Range } from './common.ts';
import { Pin } from './facts.ts';

const count = z.number().int().nonnegative();
const minor = z.number().int().describe("Whole minor units of the house's currency");

export const CostPart = z.enum(['cash', 'work', 'risk']).meta({ id: 'CostPart' });
export type CostPart = z.infer<typeof CostPart>;

export const Totals = z
  .strictObject({
    hard: count.describe('Hard-rule amounts added up; 0: nothing is broken'),
    leftOutPriority: count,
    leftOut: count,
    costMinor: minor.describe('cash + work + risk'),
    cashMinor: minor,
    workMinor: minor,
    riskMinor: minor,
    packs: count,
    deliveries: count,
    lateDays: count,
  })
  .meta({ id: 'Totals' });
export type Totals = z.infer<typeof Totals>;

export const Finding = z
  .strictObject({
    rule: z.string().describe('Permanent id of the rule'),
    subject: z.string().describe('The brew, jar or tank that it is about'),
    amount: count,
    unit: z.string(),
    says: z.string(),
    remedy: z.string(),
  })
  .meta({ id: 'Finding' });
export type Finding = z.infer<typeof Finding>;

export const CostLine = z
  .strictObject({
    rule: z.string(),
    part: CostPart,
    amountMinor: minor,
    subject: z.string(),
    says: z.string(),
  })
  .meta({ id: 'CostLine' });
export type CostLine = z.infer<typeof CostLine>;

export const Hazard = z
  .strictObject({
    rule: z.string(),
    hazard: z.number().describe('Share of a chance that it goes wrong, before they are joined'),
    costMinor: minor.describe('Its share of the risk cost of this pitch'),
    says: z.string(),
  })
  .meta({ id: 'Hazard' });
export type Hazard = z.infer<typeof Hazard>;

export const PlannedStarter = z
  .strictObject({
    litres: z.number(),
    extractG: z.number(),
    startOn: IsoDay,
    growDays: count,
    chillOn: IsoDay.nullable().describe(
      'Chilled on this day and decanted on brew day; null: pitched whole',
    ),
    initialB: z.number().describe('Viable cells it is begun with, billion'),
    finalB: z.number().describe('Viable cells it gives, billion, likely'),
  })
  .meta({ id: 'PlannedStarter' });

export const PlannedSource = z
  .discriminatedUnion('kind', [
    z.strictObject({
      kind: z.literal('fresh'),
      packs: count,
      packsFromHand: count,
      packsMadeOn: IsoDay.describe('Assumed day of making of the oldest pack used'),
      packAgeDays: count,
      orderOn: IsoDay.nullable().describe('null: all packs are on hand'),
      arrivesOn: IsoDay.nullable(),
    }),
    z.strictObject({
      kind: z.literal('jar'),
      jar: Name,
      harvestedOn: IsoDay,
      drawMl: z.number(),
      ageDays: count,
    }),
    z.strictObject({
      kind: z.literal('harvest'),
      brew: Name,
      harvestedOn: IsoDay,
      drawMl: z.number(),
      ageDays: count,
      jars: count,
      ofStarter: z
        .literal(true)
        .optional()
        .describe('Kept from the starter of that brew on its brew day, and not out of its beer'),
    }),
  ])
  .meta({ id: 'PlannedSource' });
export type PlannedSource = z.infer<typeof PlannedSource>;

export const Alternative = z
  .strictObject({
    says: z.string(),
    source: z.string(),
    day: IsoDay,
    tank: Name,
    brokenBy: z.string().nullable().describe('Hard rule that forbids it, or null'),
    extraMinor: minor.nullable().describe('Dearer by; null where a hard rule decides'),
  })
  .meta({ id: 'Alternative' });

export const PlannedBrew = z
  .strictObject({
    brew: Name,
    style: z.string(),
    day: IsoDay,
    tank: Name,
    yeast: Name,
    done: z.boolean().describe('Already brewed: a fact'),
    kettle: z.array(z.strictObject({ day: IsoDay, turns: count })),
    dryHopOn: IsoDay.nullable(),
    crashOn: IsoDay.nullable(),
    emptiedOn: IsoDay,
    tankFreeOn: IsoDay,
    readyOn: IsoDay,
    daysLate: count,
    needB: z.number().describe('Viable cells needed, billion'),
    pitchedB: z.number().describe('Viable cells pitched, billion, likely'),
    source: PlannedSource,
    starter: PlannedStarter.nullable(),
    generation: count.describe('Of the slurry that is pitched; a fresh pack is 0'),
    viability: Range.describe('Share alive of what is drawn, on the day it is drawn'),
    pitchedViability: Range.nullable()
      .default(null)
      .describe(
        'Share alive of what goes into the wort where a starter was made of it; null: no starter',
      ),
    counts: count
      .default(0)
      .describe(
        "Stained counts of this strain that its viability rests on; 0: the house's settings alone",
      ),
    beforeCounts: Range.nullable()
      .default(null)
      .describe(
        'The same share as the settings alone would say; null where no count stands behind',
      ),
    densityBPerMl: Range.nullable().describe('Billion cells per mL of the slurry; null for packs'),
    checkOn: IsoDay.nullable().describe('The jar is checked; null for fresh packs'),
    fallback: z.strictObject({
      kind: z.enum(['jar', 'harvest', 'pack', 'order', 'none']),
      decideBy: IsoDay.nullable(),
      says: z.string(),
    }),
    carried: z
      .strictObject({ volumeL: z.number(), ebc: z.number(), ibu: z.number() })
      .nullable()
      .describe('Beer that comes along with the slurry, and what it adds to colour and bitterness'),
    hazards: z.array(Hazard),
    riskMinor: minor,
    why: z.array(z.string()),
    alternative: Alternative.nullable(),
    pins: Pin.nullable(),
  })
  .meta({ id: 'PlannedBrew' });
export type PlannedBrew = z.infer<typeof PlannedBrew>;

export const PlannedHarvest = z
  .strictObject({
    brew: Name,
    yeast: Name,
    day: IsoDay,
    done: z.boolean(),
    generation: count.describe('Of this slurry when it is pitched'),
    cropViability: Range,
    viabilityToday: Range.nullable()
      .default(null)
      .describe('Of what has been taken; null: still to come'),
    cellsB: z.number().describe('Cells expected in the jars, dead ones included, billion'),
    settledMl: Range.describe("mL expected, as read after the house's settle days"),
    crashed: z.boolean(),
    ofStarter: z
      .literal(true)
      .optional()
      .describe('Kept from the starter of this brew on its brew day, and not out of its beer'),
    usableFrom: IsoDay,
    discardBy: IsoDay,
    jars: z.array(
      z.strictObject({
        ml: z.number(),
        for: Name.nullable().describe(
          'The brew it is kept for; null: kept for the end of the season, or in reserve',
        ),
        leavesOn: IsoDay.describe('Drawn, or kept until'),
        untilPassed: Name.optional().describe(
          'The reserve: kept until this beer, the first of its yeast to be ready, is tasted and passed',
        ),
      }),
    ),
  })
  .meta({ id: 'PlannedHarvest' });
export type PlannedHarvest = z.infer<typeof PlannedHarvest>;

export const PlannedOrder = z
  .strictObject({
    orderOn: IsoDay,
    arrivesOn: IsoDay,
    deliveryMinor: minor,
    lines: z.array(
      z.strictObject({ yeast: Name, packs: count, costMinor: minor, for: z.array(Name) }),
    ),
  })
  .meta({ id: 'PlannedOrder' });
export type PlannedOrder = z.infer<typeof PlannedOrder>;

export const ShelfJar = z
  .strictObject({
    jar: Name,
    yeast: Name,
    state: z.enum(['sound', 'watch', 'suspect']),
    discardBy: IsoDay,
    usedFor: Name.nullable(),
    kept: z.boolean().describe('Kept for the end of the season'),
    leavesOn: IsoDay.describe('Drawn, kept until, or discarded'),
    viabilityToday: Range,
    cellsB: z
      .number()
      .nullable()
      .default(null)
      .describe('Cells in it, dead ones included, billion; null: not reckoned'),
  })
  .meta({ id: 'ShelfJar' });
export type ShelfJar = z.infer<typeof ShelfJar>;

export const LeftOut = z
  .strictObject({
    brew: Name,
    priority: count,
    blockedBy: z.array(z.strictObject({ rule: z.string(), says: z.string() })),
    nearestDay: IsoDay.nullable(),
    wayOut: z.string(),
  })
  .meta({ id: 'LeftOut' });

export const Told = z
  .strictObject({
    brews: z.array(
      z.strictObject({
        brew: Name,
        drawMl: z.number().nullable(),
        viability: Range,
        pitchedB: z.number(),
        initialB: z.number().nullable(),
        finalB: z.number().nullable(),
      }),
    ),
    harvests: z.array(
      z.strictObject({
        brew: Name,
        settledMl: Range,
        spareMl: z.array(z.number()).describe('Of its jars for no brew, in their order'),
      }),
    ),
  })
  .meta({ id: 'Told' });
export type Told = z.infer<typeof Told>;

export const Plan = z
  .strictObject({
    format: z.literal('barmline-plan-1'),
    house: Name,
    currency: z.string(),
    minorPerMajor: count,
    today: IsoDay,
    seed: count,
    steps: count,
    stepsDone: count,
    status: z.enum(['whole', 'some-left-out', 'broken']),
    totals: Totals,
    brews: z.array(PlannedBrew).describe('In order of their days'),
    leftOut: z.array(LeftOut),
    harvests: z.array(PlannedHarvest),
    orders: z.array(PlannedOrder),
    shelf: z.array(ShelfJar).describe('The jars of the shelf and what becomes of them'),
    chains: z
      .array(
        z.strictObject({
          yeast: Name,
          root: z.string(),
          brews: z.array(Name),
          endsBecause: z.string(),
        }),
      )
      .describe('Every root-to-leaf path of the yeast'),
    broken: z.array(Finding).describe('Hard rules broken; empty in a sound plan'),
    costs: z.array(CostLine).describe('The whole sum, line by line'),
    baselines: z.strictObject({
      freshOnly: Totals.describe('Fresh packs for everything'),
      dateOrder: Totals.describe('Re-pitching in date order without looking ahead'),
    }),
    bound: z
      .strictObject({ costMinor: minor, gapPercent: z.number().nullable(), says: z.string() })
      .nullable()
      .describe('A proven lower bound on the cost'),
    noBound: z.string().optional().describe('Why no bound is stated, where none is'),
    notes: z.array(z.string()).describe('What the brewer should know about the input'),
    told: Told.optional().describe(
      'Amounts as tasks and calendar say them: those of the plan before, where the new ones differ by less than a jug shows',
    ),
  })
  .meta({ id: 'Plan', description: 'A season, laid out.' });
export type Plan = z.infer<typeof Plan>;
