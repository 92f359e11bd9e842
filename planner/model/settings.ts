// Every number a house can set: what it means, its bounds, its default by kind of house, its source.
import { z } from 'zod';

export type SettingSpec = {
  /** One sentence for a brewer. */
  says: string;
  unit: string;
  min: number;
  max: number;
  whole?: boolean;
  home: number;
  nano: number;
  /** A publication with author and year, 'common practice, no source' or 'from memory'. */
  source: string;
};

const CP = 'common practice, no source';
const MEMORY = 'from memory';

/** The one list of settings; the house schema, docs and pages are made from it. */
export const SETTINGS = {
  // limits of the hard rules
  gravityCeiling: {
    says: 'Yeast out of beer of this original gravity or more is not pitched again.',
    unit: 'SG',
    min: 1,
    max: 1.2,
    home: 1.07,
    nano: 1.07,
    source:
      'White Labs guidelines and supplier advice to harvest at most at 18 °P; 1.065–1.070 ' + CP,
  },
  maxGeneration: {
    says: 'Slurry of a later generation than this is not pitched (a fresh pack is generation 0).',
    unit: 'generations',
    min: 0,
    max: 100,
    whole: true,
    home: 5,
    nano: 10,
    source: 'Quain, "Yeast supply and propagation": policy of at most 10; 5 at home ' + CP,
  },
  maxGenerationAfterStrong: {
    says: 'The generation limit for slurry out of beer above the strong-beer gravity.',
    unit: 'generations',
    min: 0,
    max: 100,
    whole: true,
    home: 5,
    nano: 5,
    source:
      'Eastern-European Journal of Enterprise Technologies 2021, doi 10.15587/1729-4061.2021.248126: at most 5 at 15 °P',
  },
  strongBeerP: {
    says: 'Beer above this many °P counts as strong for the generation limit and ferments longer.',
    unit: '°P',
    min: 5,
    max: 40,
    home: 15,
    nano: 15,
    source: 'same study as the strong-beer generation limit',
  },
  maxStorageDays: {
    says: 'Slurry stored longer than this is not pitched.',
    unit: 'days',
    min: 0,
    max: 365,
    whole: true,
    home: 35,
    nano: 14,
    source: 'suppliers between 14 days and 6 weeks (docs/science.md); home value ' + CP,
  },
  viabilityFloor: {
    says: 'Slurry with a smaller likely share of living cells is not pitched without a starter.',
    unit: 'share',
    min: 0,
    max: 1,
    home: 0.7,
    nano: 0.85,
    source: 'discard below 85 %: ' + CP + '; lower at home ' + CP,
  },
  maxLateDays: {
    says: 'A beer that cannot be ready this many days after it is wanted is left out.',
    unit: 'days',
    min: 0,
    max: 1000,
    whole: true,
    home: 28,
    nano: 14,
    source: CP,
  },
  // days
  freshDays: {
    says: 'A fading style may stand ready this many days before it is wanted at no cost.',
    unit: 'days',
    min: 0,
    max: 1000,
    whole: true,
    home: 21,
    nano: 21,
    source: CP,
  },
  crashDays: {
    says: 'Days of cold crash before a harvest, inside the tank days.',
    unit: 'days',
    min: 0,
    max: 30,
    whole: true,
    home: 2,
    nano: 2,
    source: 'Balter Beerworks in BYO: harvest 24 h after about 1 °C; 2 days ' + CP,
  },
  crashC: {
    says: 'Temperature of the cold crash; a tank that cannot hold it is not crashed.',
    unit: '°C',
    min: -2,
    max: 15,
    home: 2,
    nano: 2,
    source: CP,
  },
  cropDayAle: {
    says: 'Earliest crop of an ale, days after the pitch.',
    unit: 'days',
    min: 0,
    max: 100,
    whole: true,
    home: 5,
    nano: 5,
    source: 'Berkeley Yeast: ale fermentation subsided after 3–5 days',
  },
  cropDayLager: {
    says: 'Earliest crop of a lager, days after the pitch.',
    unit: 'days',
    min: 0,
    max: 100,
    whole: true,
    home: 10,
    nano: 10,
    source: 'Verbelen et al. 2009 and trade: lager primary 7–14 days',
  },
  cropDaysExtra: {
    says: 'Days later for strong beer or a low flocculator.',
    unit: 'days',
    min: 0,
    max: 30,
    whole: true,
    home: 2,
    nano: 2,
    source: CP,
  },
  // need
  rateLager: {
    says: 'Million living cells per mL per °P at lager temperatures (to 14 °C).',
    unit: 'M/mL/°P',
    min: 0.05,
    max: 10,
    home: 1.5,
    nano: 1.5,
    source: 'G. Fix, quoted by Terrill, "Aeration and Yeast Starters", 2010',
  },
  rateHybrid: {
    says: 'Million living cells per mL per °P at 15–16 °C.',
    unit: 'M/mL/°P',
    min: 0.05,
    max: 10,
    home: 1.25,
    nano: 1.25,
    source: 'Madison Beer Review 2012',
  },
  rateAle: {
    says: 'Million living cells per mL per °P, harvested yeast at ale temperatures.',
    unit: 'M/mL/°P',
    min: 0.05,
    max: 10,
    home: 1,
    nano: 1,
    source: 'Crooks (Firestone Walker) via Fahrendorf; Colorado Brewers Guild',
  },
  freshShare: {
    says: 'Fresh packs are pitched at this share of the harvested rate in ales and hybrids.',
    unit: 'share',
    min: 0.2,
    max: 2,
    home: 0.75,
    nano: 0.75,
    source:
      'harvested 1.0 against supplier-grown 0.75, trade article (yeast-facts §2); lager gets no discount',
  },
  strongFromP: {
    says: 'Above this many °P more yeast is pitched.',
    unit: '°P',
    min: 5,
    max: 40,
    home: 18,
    nano: 18,
    source: 'Casey & Ingledew, J. ASBC 41:0148, 1983 (higher pitching helps from 19.8 °P)',
  },
  strongIncrease: {
    says: 'How much more yeast strong wort gets.',
    unit: 'share',
    min: 0,
    max: 3,
    home: 0.25,
    nano: 0.25,
    source: CP + ' (25–50 %)',
  },
  sourIncrease: {
    says: 'How much more yeast a kettle-soured wort gets.',
    unit: 'share',
    min: 0,
    max: 3,
    home: 0.25,
    nano: 0.25,
    source: CP,
  },
  pitchMargin: {
    says: 'Draws are this many times the need.',
    unit: 'times',
    min: 0.5,
    max: 3,
    home: 1,
    nano: 1,
    source: CP,
  },
  // packs
  liquidLossPerDay: {
    says: 'Share of living cells that a cold liquid pack loses in a day (first order).',
    unit: '1/day',
    min: 0,
    max: 0.1,
    home: 0.0018,
    nano: 0.0018,
    source: 'manufacturer figures quoted second-hand: 71.6 % after 6 months, mean 0.0018 a day',
  },
  dryLossPerDay: {
    says: 'Share of living cells that a cold dry pack loses in a day (first order).',
    unit: '1/day',
    min: 0,
    max: 0.1,
    home: 0.00011,
    nano: 0.00011,
    source: 'about 4 % a year at 4 °C, ' + MEMORY,
  },
  liquidExpiryDays: {
    says: 'A liquid pack expires this many days after it was made.',
    unit: 'days',
    min: 1,
    max: 2000,
    whole: true,
    home: 120,
    nano: 120,
    source: 'White Labs FAQ: shelf life 4 months',
  },
  dryExpiryDays: {
    says: 'A dry pack expires this many days after it was made.',
    unit: 'days',
    min: 1,
    max: 4000,
    whole: true,
    home: 730,
    nano: 730,
    source: 'Lallemand: 2–3 years below 4 °C',
  },
  orderWindowDays: {
    says: 'Packs wanted within this many days of each other come in one delivery.',
    unit: 'days',
    min: 0,
    max: 120,
    whole: true,
    home: 14,
    nano: 7,
    source: CP,
  },
  // slurry
  densityHigh: {
    says: 'Billion cells per mL of slurry settled for 48 h, high flocculator.',
    unit: 'B/mL',
    min: 0.05,
    max: 5,
    home: 2.1,
    nano: 1.4,
    source:
      'home: settled slurry about 2 billion per mL, ' +
      CP +
      ' and 2.0 from 10 % dry matter (Murphy & Son; Troester); nano: 1.2 at 40–60 % solids',
  },
  densityMedium: {
    says: 'Billion cells per mL of slurry settled for 48 h, medium flocculator.',
    unit: 'B/mL',
    min: 0.05,
    max: 5,
    home: 2,
    nano: 1.2,
    source: 'as for the high flocculator',
  },
  densityLow: {
    says: 'Billion cells per mL of slurry settled for 48 h, low flocculator.',
    unit: 'B/mL',
    min: 0.05,
    max: 5,
    home: 1.7,
    nano: 1,
    source: 'trade convention 1 trillion per litre (Escarpment Labs KB 90); home value ' + CP,
  },
  density24hShare: {
    says: 'Share of that density when the jar is read after one day of settling.',
    unit: 'share',
    min: 0.1,
    max: 1,
    home: 0.8,
    nano: 0.8,
    source: CP,
  },
  cropViability: {
    says: 'Share of cells alive at the end of fermentation.',
    unit: 'share',
    min: 0.3,
    max: 1,
    home: 0.97,
    nano: 0.97,
    source: 'Murphy & Son: above 95 % is the target at pitching',
  },
  storageLossAt1C: {
    says: 'Share of living cells lost in a day at 1 °C (first order).',
    unit: '1/day',
    min: 0,
    max: 0.5,
    home: 0.0121,
    nano: 0.0121,
    source: 'McCaig & Bendiak, MBAA Technical Quarterly 1985: 7 % in 6 days at 1 °C',
  },
  storageLossAt5C: {
    says: 'Share of living cells lost in a day at 5 °C (first order).',
    unit: '1/day',
    min: 0,
    max: 0.5,
    home: 0.0175,
    nano: 0.0251,
    source:
      'nano: McCaig & Bendiak, MBAA Technical Quarterly 1985, 14 % in 6 days at 5 °C; home: 200 to about 180 billion in a week in the refrigerator, ' +
      CP +
      ', with the published value inside the interval',
  },
  storageLossAt25C: {
    says: 'Share of living cells lost in a day at 25 °C (first order).',
    unit: '1/day',
    min: 0,
    max: 2,
    home: 0.19,
    nano: 0.19,
    source: 'McCaig & Bendiak 1985: up to 68 % in 6 days, warmest case taken as 25 °C',
  },
  storageSpread: {
    says: 'How many times faster or slower the loss may be (80 % interval).',
    unit: 'times',
    min: 1,
    max: 10,
    home: 2,
    nano: 2,
    source: 'sources differ by about 2 each way (docs/science.md)',
  },
  strongAfterAbv: {
    says: 'Slurry from beer above this alcohol ages faster.',
    unit: '% ABV',
    min: 0,
    max: 20,
    home: 5,
    nano: 5,
    source: 'Quain: dilute to below 5 % before storage',
  },
  strongAgeingPerAbv: {
    says: 'How much faster it ages for each further % of alcohol.',
    unit: 'share',
    min: 0,
    max: 2,
    home: 0.1,
    nano: 0.1,
    source: 'direction from Loveridge et al. 1999 in Boulton & Quain 2001; size ' + CP,
  },
  beerLossShare: {
    says: 'Yeast lying under its own beer loses this share of what it would lose in storage at that temperature.',
    unit: 'share',
    min: 0,
    max: 2,
    home: 0.15,
    nano: 0.15,
    source: CP + ': some food and alcohol remain; crops after two weeks on the beer are usable',
  },
  // harvest
  growthFactor: {
    says: 'A fermentation grows this many times the living cells pitched.',
    unit: 'times',
    min: 1,
    max: 20,
    home: 4,
    nano: 4,
    source: 'Briggs et al. 2004; Boulton & Quain 2001: 3–5 times (' + MEMORY + ')',
  },
  cellCeilingBPerL: {
    says: 'A fermentation grows to at most this many billion cells per litre.',
    unit: 'B/L',
    min: 5,
    max: 1000,
    home: 80,
    nano: 80,
    source: '40–80 million per mL typical final density, ' + MEMORY,
  },
  recoverHigh: {
    says: 'Share of the crop that reaches the jar, high flocculator.',
    unit: 'share',
    min: 0,
    max: 1,
    home: 0.65,
    nano: 0.65,
    source: CP + ': 50–70 % flocculent',
  },
  recoverMedium: {
    says: 'Share of the crop that reaches the jar, medium flocculator.',
    unit: 'share',
    min: 0,
    max: 1,
    home: 0.55,
    nano: 0.55,
    source: CP,
  },
  recoverLow: {
    says: 'Share of the crop that reaches the jar, low flocculator.',
    unit: 'share',
    min: 0,
    max: 1,
    home: 0.45,
    nano: 0.45,
    source: CP + ': less for powdery yeast',
  },
  uncrashedLowShare: {
    says: 'A low flocculator that was not crashed gives up this share of that.',
    unit: 'share',
    min: 0,
    max: 1,
    home: 0.5,
    nano: 0.5,
    source: CP,
  },
  // starters
  starterGramsPerL: {
    says: 'Extract in a starter, grams per litre.',
    unit: 'g/L',
    min: 20,
    max: 200,
    home: 100,
    nano: 100,
    source: 'starter wort of 8.8–10.6 °P (Troester)',
  },
  starterMinSeedShare: {
    says: 'A starter is begun with at least this share of the cells it is to give.',
    unit: 'share',
    min: 0.01,
    max: 1,
    home: 0.125,
    nano: 0.125,
    source: 'step-up ratio 5–10, ' + CP,
  },
  decantFromShare: {
    says: 'A starter larger than this share of the batch is chilled and decanted.',
    unit: 'share',
    min: 0,
    max: 1,
    home: 0.05,
    nano: 0.05,
    source: CP,
  },
  // money and minutes
  pricePerMinute: {
    says: 'What a minute of work is worth.',
    unit: 'currency',
    min: 0,
    max: 1000,
    home: 0.08,
    nano: 0.35,
    source: 'a house choice',
  },
  harvestMinutes: {
    says: 'Minutes to harvest, whatever the number of jars.',
    unit: 'min',
    min: 0,
    max: 1000,
    whole: true,
    home: 20,
    nano: 30,
    source: CP,
  },
  jarMinutes: {
    says: 'Minutes to fill, label and later clean one jar.',
    unit: 'min',
    min: 0,
    max: 1000,
    whole: true,
    home: 5,
    nano: 8,
    source: CP,
  },
  checkMinutes: {
    says: 'Minutes to check a jar before it is pitched.',
    unit: 'min',
    min: 0,
    max: 1000,
    whole: true,
    home: 10,
    nano: 20,
    source: CP,
  },
  starterMinutes: {
    says: 'Minutes to make a starter, decanting included.',
    unit: 'min',
    min: 0,
    max: 1000,
    whole: true,
    home: 45,
    nano: 60,
    source: CP,
  },
  starterWortPerL: {
    says: 'Price of a litre of starter wort.',
    unit: 'currency',
    min: 0,
    max: 1000,
    home: 0.9,
    nano: 0.6,
    source: CP + ': 100 g of dry extract',
  },
  endJarValue: {
    says: 'What one sound jar of each strain is worth at the end of the season.',
    unit: 'currency',
    min: 0,
    max: 100000,
    home: 4,
    nano: 60,
    source: 'about a third of a fresh pitch; a house choice',
  },
  freezeDays: {
    says: 'Inside this many days from today a plan moves only what a hard rule forces.',
    unit: 'days',
    min: 0,
    max: 365,
    whole: true,
    home: 7,
    nano: 7,
    source: CP,
  },
  // science: how sure the predictions are, and what the draws carry
  lagerToC: {
    says: 'Up to this temperature a fermentation is pitched at the lager rate.',
    unit: '°C',
    min: -5,
    max: 50,
    home: 14,
    nano: 14,
    source: CP,
  },
  hybridToC: {
    says: 'Above the lager temperature and up to this one it is pitched at the hybrid rate.',
    unit: '°C',
    min: -5,
    max: 50,
    home: 16,
    nano: 16,
    source: CP,
  },
  packSpread: {
    says: 'How many times faster or slower packs may lose living cells (80 % interval).',
    unit: 'times',
    min: 1,
    max: 10,
    home: 3,
    nano: 3,
    source: 'White Labs FAQ: 75–85 % after 30 days in older vials, 3–5 times the default loss',
  },
  cropDeadSpread: {
    says: 'How many times more or fewer cells may be dead at the end of fermentation (80 % interval).',
    unit: 'times',
    min: 1,
    max: 10,
    home: 3,
    nano: 3,
    source: 'Murphy & Son, Berkeley Yeast, Escarpment KB 274: between 90 and 99 % at pitching',
  },
  densitySpread: {
    says: 'How many times denser or thinner slurry settled for 48 h may be (80 % interval).',
    unit: 'times',
    min: 1,
    max: 10,
    home: 1.8,
    nano: 1.8,
    source: 'sources between 1.0–1.2 and 2.0 billion per mL (docs/science.md)',
  },
  densitySpreadPerDay: {
    says: 'How many times wider that is for each day of settling short of two.',
    unit: 'times',
    min: 1,
    max: 5,
    home: 1.25,
    nano: 1.25,
    source: CP,
  },
  density0hShare: {
    says: 'Share of the 48 h density in slurry that has not settled at all (its volume is a guess).',
    unit: 'share',
    min: 0.05,
    max: 1,
    home: 0.5,
    nano: 0.5,
    source: CP,
  },
  starterStirredBPerG: {
    says: 'Billion new cells for each gram of extract in a stirred starter that is not begun too thick.',
    unit: 'B/g',
    min: 0.1,
    max: 2,
    home: 1.4,
    nano: 1.4,
    source: 'Troester, braukaiser.com (' + MEMORY + ')',
  },
  slurryBeerShare: {
    says: 'Share of settled slurry that is beer.',
    unit: 'share',
    min: 0,
    max: 1,
    home: 0.6,
    nano: 0.6,
    source: 'Quain; Boulton & Quain 2001, Fig. 7.9: stored slurry is 40 % wet solids',
  },
} as const satisfies Record<string, SettingSpec>;

export type SettingKey = keyof typeof SETTINGS;
export const SETTING_KEYS = Object.keys(SETTINGS) as SettingKey[];

/** All settings of one house, resolved: the kind's defaults with the house's own on top. */
export type Settings = Readonly<Record<SettingKey, number>>;

function override(spec: SettingSpec) {
  const low = `must be at least ${spec.min} ${spec.unit}`;
  const high = `must be at most ${spec.max} ${spec.unit}`;
  const base = z.number().min(spec.min, low).max(spec.max, high);
  return (spec.whole ? base.int('must be a whole number') : base).describe(spec.says).optional();
}

type Overrides = { [K in SettingKey]: ReturnType<typeof override> };

/** The `rules` of a house: any setting it wants other than its kind's default. */
export const SettingOverrides = z
  .strictObject(
    Object.fromEntries(SETTING_KEYS.map((key) => [key, override(SETTINGS[key])])) as Overrides,
  )
  .meta({ id: 'SettingOverrides' });
export type SettingOverrides = z.infer<typeof SettingOverrides>;

/** The settings that hold in a house of this kind with these of its own. */
export function resolveSettings(kind: 'home' | 'nano', own: SettingOverrides): Settings {
  return Object.fromEntries(
    SETTING_KEYS.map((key) => [key, own[key] ?? SETTINGS[key][kind]]),
  ) as Record<SettingKey, number>;
}
