// What goes in: a house with its tanks, yeasts, jars and the beers it wants to brew.
import { IANAZone } from 'luxon';
import { z } from 'zod';
import { between, IsoDay, Name, ONE_LINE, SpecificGravity, Weekday, whole } from './common.ts';
import { SettingOverrides } from './settings.ts';

export const Tank = z
  .strictObject({
    tank: Name,
    minFillL: between(0, 100_000).describe('Smallest fill, litres of wort'),
    maxFillL: between(0.5, 100_000).describe('Largest fill, litres of wort, headspace taken off'),
    minC: between(-5, 60).describe('Coldest the tank can hold, °C'),
    maxC: between(-5, 60).describe('Warmest the tank can hold, °C'),
    turnaroundDays: whole(0, 60).describe('Days between emptying and the next fill'),
    bottomOutlet: z.boolean().describe('Yeast can be taken while the beer stays in the tank'),
    outOfUse: z
      .array(z.strictObject({ from: IsoDay, to: IsoDay }))
      .max(100)
      .default([])
      .describe('Stretches, both days included, in which the tank cannot hold a beer'),
  })
  .meta({ id: 'Tank' });
export type Tank = z.infer<typeof Tank>;

export const Yeast = z
  .strictObject({
    yeast: Name,
    kind: z.enum(['ale', 'lager', 'hybrid', 'wheat', 'saison', 'belgian', 'kveik', 'other']),
    form: z.enum(['liquid', 'dry']).describe('Dry yeast is dosed by weight and gets no starter'),
    nature: z.enum(['clean', 'diastatic', 'wild']),
    packCellsB: between(0.1, 1_000_000).describe('Billion cells in a pack when it was made'),
    packPrice: between(0, 1_000_000).describe("Price of one pack in the house's currency"),
    packsOnHand: whole(0, 10_000),
    packsMadeOn: IsoDay.nullable().default(null).describe('When the packs on hand were made'),
    minC: between(-5, 60),
    maxC: between(-5, 60),
    flocculation: z.enum(['low', 'medium', 'high']),
    maxGeneration: whole(0, 100).nullable().default(null).describe('A limit of its own, or none'),
  })
  .meta({ id: 'Yeast' });
export type Yeast = z.infer<typeof Yeast>;

export const Souring = z.enum(['kettle', 'mixed']).meta({ id: 'Souring' });
export type Souring = z.infer<typeof Souring>;

export const Jar = z
  .strictObject({
    jar: Name.describe('The code written on the lid'),
    yeast: Name,
    generation: whole(0, 100).describe('A fresh pack is 0; slurry out of its first beer is 1'),
    settledMl: between(0.1, 10_000_000).describe('Settled slurry, mL'),
    harvestedOn: IsoDay,
    sourceOg: SpecificGravity.nullable().default(null),
    sourceEbc: between(0, 1000).nullable().default(null),
    sourceIbu: between(0, 500).nullable().default(null),
    sourceSouring: Souring.nullable().default(null),
    sourceAdditions: z.array(Name).max(20).default([]),
    sourceDryHopped: z.boolean().default(false),
    measuredViability: between(0, 1).nullable().default(null).describe('Share alive, 0 to 1'),
    measuredOn: IsoDay.nullable().default(null),
    state: z.enum(['sound', 'watch', 'suspect']).default('sound'),
  })
  .meta({ id: 'Jar' });
export type Jar = z.infer<typeof Jar>;

/** The most counts that one house keeps: years of them. */
const MOST_COUNTS = 2000;

export const YeastCount = z
  .strictObject({
    yeast: Name,
    countedOn: IsoDay,
    harvestedOn: IsoDay.describe(
      'When the slurry that was counted was harvested: it ages from here',
    ),
    stained: whole(0, 1_000_000)
      .nullable()
      .default(null)
      .describe('Stained (dead) cells among those looked at; null: no stain'),
    total: whole(1, 1_000_000)
      .nullable()
      .default(null)
      .describe('Cells looked at, living and dead'),
    millionPerMl: between(1, 6000)
      .nullable()
      .default(null)
      .describe('Million cells per mL of the settled slurry, dead ones included'),
    sourceAbv: between(0, 25)
      .nullable()
      .default(null)
      .describe('Alcohol of the beer it came from, % by volume; null: ordinary strength'),
    generation: whole(0, 100).default(1).describe('A fresh pack is 0'),
  })
  .meta({ id: 'YeastCount', description: 'Slurry of a strain looked at under the microscope.' });
export type YeastCount = z.infer<typeof YeastCount>;

export const Brew = z
  .strictObject({
    brew: Name,
    style: z.string().trim().max(200).regex(ONE_LINE, 'must be one line').default(''),
    yeasts: z.array(Name).min(1, 'names no yeast').max(10).describe('Best liked first'),
    volumeL: between(0.5, 100_000).describe('Litres of wort into the tank'),
    og: SpecificGravity,
    fg: SpecificGravity,
    ebc: between(0, 500).describe('Colour, EBC'),
    ibu: between(0, 300).describe('Bitterness, IBU'),
    fermentC: between(-5, 50).describe('Fermentation temperature, °C'),
    tankDays: whole(1, 730).describe('Days in the tank, fermentation and crash included'),
    harvestDay: whole(0, 730)
      .nullable()
      .default(null)
      .describe('Earliest crop, days after the pitch; null: by kind of yeast'),
    conditionDays: whole(0, 1500).describe('Days from emptying the tank to the glass'),
    dryHopDay: whole(0, 730).nullable().default(null).describe('Days after the pitch'),
    souring: Souring.nullable().default(null),
    additions: z.array(Name).max(20).default([]),
    notBefore: IsoDay.nullable().default(null).describe('First possible brew day'),
    readyBy: IsoDay.nullable().default(null).describe('Wanted in the glass'),
    brewOn: IsoDay.nullable().default(null).describe('Fixed brew day'),
    priority: whole(1, 1000).default(1).describe('Larger is more important'),
    value: between(0, 10_000_000).describe("What the batch is worth, in the house's currency"),
    fades: z
      .boolean()
      .nullable()
      .default(null)
      .describe('The style loses by standing; null: judged by the style'),
    needMPerMlP: between(0.05, 10)
      .nullable()
      .default(null)
      .describe("Million living cells per mL per °P, as it stands; null: by the house's settings"),
  })
  .meta({ id: 'Brew' });
export type Brew = z.infer<typeof Brew>;

export const House = z
  .strictObject({
    name: Name,
    kind: z.enum(['home', 'nano']).describe('Which defaults the house starts from'),
    timeZone: z
      .string()
      .refine((zone) => IANAZone.isValidZone(zone), 'is not a time zone such as Europe/Dublin'),
    currency: z
      .string()
      .regex(/^[A-Z]{3}$/, 'must be a currency code of three letters such as EUR'),
    from: IsoDay.describe('First day that may be a brew day'),
    to: IsoDay.describe('Last day that may be a brew day'),
    brewDays: z.array(Weekday).min(1, 'names no brew day').max(7),
    workDays: z
      .array(Weekday)
      .max(7)
      .nullable()
      .default(null)
      .describe('Harvest, packaging, cleaning; null: the brew days'),
    starterDays: z
      .array(Weekday)
      .max(7)
      .nullable()
      .default(null)
      .describe('Days and evenings on which a starter may be started or decanted; null: by kind'),
    closed: z.array(IsoDay).max(4000).default([]).describe('No handwork at all'),
    brewsPerDay: whole(1, 100).describe('Turns of the kettle in a day'),
    brewLengthL: between(0.5, 100_000).nullable().default(null).describe('Litres of one turn'),
    orderLeadDays: whole(0, 365),
    packAgeOnArrivalDays: whole(0, 2000),
    deliveryCost: between(0, 1_000_000),
    conditioningRoomL: between(0, 10_000_000)
      .nullable()
      .default(null)
      .describe('Litres that can condition at once after the tank; null: any'),
    store: z.strictObject({
      tempC: between(-2, 25).describe('Cold store, °C'),
      maxJars: whole(0, 10_000),
      jarMl: between(1, 10_000_000).describe('Slurry that one jar holds, mL'),
      settleDays: whole(0, 14),
    }),
    starterGear: z.strictObject({
      vessels: whole(0, 100),
      maxLitres: between(0, 100_000),
      stirred: z.boolean(),
    }),
    rules: SettingOverrides.default({}).describe(
      "What the house sets differently from its kind's defaults",
    ),
    weights: z
      .record(z.string(), between(0, 1_000_000))
      .default({})
      .describe("Weights of cost rules and hazards that differ from the rules' own defaults"),
    relaxed: z
      .array(z.string())
      .max(50)
      .default([])
      .describe('Rules that cost instead of forbidding in this house'),
    tanks: z.array(Tank).max(500),
    yeasts: z.array(Yeast).max(200),
    jars: z.array(Jar).max(5000).default([]),
    counts: z
      .array(YeastCount)
      .max(MOST_COUNTS, 'more than 2,000 counts: leave out the oldest')
      .default([])
      .describe("The house's own counts: what is learnt about its strains"),
    brews: z.array(Brew).max(2000, 'more than 2,000 brews in one season: split the season'),
  })
  .meta({
    id: 'House',
    description: 'A house and its season: everything the planner needs to know.',
  });
export type House = z.infer<typeof House>;
