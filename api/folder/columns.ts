// Which columns the CSV files of a season folder have, and which part of the house each one holds.
import type { z } from 'zod';
import { Brew, Jar, Tank, Yeast, YeastCount } from '../../planner/index.ts';

/**
 * How a cell is read and written. `list`: split by `|`. `stretches`: days `from/to`, split by `|`.
 * `gravity`: a number written with three places. `yesno`: yes or no. `flag`: yes, or blank for no.
 */
export type CellKind = 'text' | 'number' | 'gravity' | 'yesno' | 'flag' | 'list' | 'stretches';

export type Column = {
  column: string;
  kind: CellKind;
  /** Written only where some row says something there. */
  extra?: true;
};

/** One column for each field of the model; the compiler insists on all of them. In order of the file. */
export const TANK_COLUMNS: Readonly<Record<keyof Tank, Column>> = {
  tank: { column: 'tank', kind: 'text' },
  minFillL: { column: 'min_fill_l', kind: 'number' },
  maxFillL: { column: 'max_fill_l', kind: 'number' },
  minC: { column: 'min_c', kind: 'number' },
  maxC: { column: 'max_c', kind: 'number' },
  turnaroundDays: { column: 'turnaround_days', kind: 'number' },
  bottomOutlet: { column: 'bottom_outlet', kind: 'yesno' },
  outOfUse: { column: 'out_of_use', kind: 'stretches', extra: true },
};

export const YEAST_COLUMNS: Readonly<Record<keyof Yeast, Column>> = {
  yeast: { column: 'yeast', kind: 'text' },
  kind: { column: 'kind', kind: 'text' },
  form: { column: 'form', kind: 'text' },
  nature: { column: 'nature', kind: 'text' },
  packCellsB: { column: 'pack_cells_b', kind: 'number' },
  packPrice: { column: 'pack_price', kind: 'number' },
  packsOnHand: { column: 'packs_on_hand', kind: 'number' },
  packsMadeOn: { column: 'packs_made_on', kind: 'text' },
  minC: { column: 'min_c', kind: 'number' },
  maxC: { column: 'max_c', kind: 'number' },
  flocculation: { column: 'flocculation', kind: 'text' },
  maxGeneration: { column: 'max_generation', kind: 'number' },
};

export const JAR_COLUMNS: Readonly<Record<keyof Jar, Column>> = {
  jar: { column: 'jar', kind: 'text' },
  yeast: { column: 'yeast', kind: 'text' },
  generation: { column: 'generation', kind: 'number' },
  settledMl: { column: 'settled_ml', kind: 'number' },
  harvestedOn: { column: 'harvested_on', kind: 'text' },
  sourceOg: { column: 'source_og', kind: 'number' },
  sourceEbc: { column: 'source_ebc', kind: 'number' },
  sourceIbu: { column: 'source_ibu', kind: 'number' },
  sourceSouring: { column: 'source_souring', kind: 'text' },
  sourceAdditions: { column: 'source_additions', kind: 'list' },
  sourceDryHopped: { column: 'source_dry_hopped', kind: 'flag' },
  measuredViability: { column: 'measured_viability', kind: 'number' },
  measuredOn: { column: 'measured_on', kind: 'text' },
  state: { column: 'state', kind: 'text' },
};

export const BREW_COLUMNS: Readonly<Record<keyof Brew, Column>> = {
  brew: { column: 'brew', kind: 'text' },
  style: { column: 'style', kind: 'text' },
  yeasts: { column: 'yeast', kind: 'list' },
  volumeL: { column: 'volume_l', kind: 'number' },
  og: { column: 'og', kind: 'gravity' },
  fg: { column: 'fg', kind: 'gravity' },
  ebc: { column: 'ebc', kind: 'number' },
  ibu: { column: 'ibu', kind: 'number' },
  fermentC: { column: 'ferment_c', kind: 'number' },
  tankDays: { column: 'tank_days', kind: 'number' },
  harvestDay: { column: 'harvest_day', kind: 'number' },
  conditionDays: { column: 'condition_days', kind: 'number' },
  dryHopDay: { column: 'dry_hop_day', kind: 'number' },
  souring: { column: 'souring', kind: 'text' },
  additions: { column: 'additions', kind: 'list' },
  notBefore: { column: 'not_before', kind: 'text' },
  readyBy: { column: 'ready_by', kind: 'text' },
  brewOn: { column: 'brew_on', kind: 'text' },
  priority: { column: 'priority', kind: 'number' },
  value: { column: 'value', kind: 'number' },
  fades: { column: 'fades', kind: 'yesno', extra: true },
  needMPerMlP: { column: 'pitch_rate', kind: 'number', extra: true },
};

export const COUNT_COLUMNS: Readonly<Record<keyof YeastCount, Column>> = {
  yeast: { column: 'yeast', kind: 'text' },
  countedOn: { column: 'counted_on', kind: 'text' },
  harvestedOn: { column: 'harvested_on', kind: 'text' },
  stained: { column: 'stained', kind: 'number' },
  total: { column: 'total', kind: 'number' },
  millionPerMl: { column: 'million_per_ml', kind: 'number' },
  sourceAbv: { column: 'source_abv', kind: 'number' },
  generation: { column: 'generation', kind: 'number' },
};

export const HOUSE_FILE = 'house.json';

type CsvFile = {
  file: string;
  columns: Readonly<Record<string, Column>>;
  schema: z.ZodObject;
  /** Read if it is there; written only where there are rows. */
  optional?: true;
};

/** The list of the house that each CSV file holds, in the order in which problems are told. */
export const CSV_FILES = {
  brews: { file: 'brews.csv', columns: BREW_COLUMNS, schema: Brew },
  tanks: { file: 'tanks.csv', columns: TANK_COLUMNS, schema: Tank },
  yeasts: { file: 'yeasts.csv', columns: YEAST_COLUMNS, schema: Yeast },
  jars: { file: 'jars.csv', columns: JAR_COLUMNS, schema: Jar },
  counts: { file: 'counts.csv', columns: COUNT_COLUMNS, schema: YeastCount, optional: true },
} as const satisfies Record<string, CsvFile>;

export type CsvList = keyof typeof CSV_FILES;
export const CSV_LISTS = [
  'brews',
  'tanks',
  'yeasts',
  'jars',
  'counts',
] as const satisfies readonly CsvList[];

/** Whether a folder may do without the file of this list. */
export const isOptional = (list: CsvList): boolean => {
  const file: CsvFile = CSV_FILES[list];
  return file.optional === true;
};

/** The columns of a list as pairs of the model's field and its column. */
export const columnsOf = (list: CsvList): [field: string, column: Column][] =>
  Object.entries<Column>(CSV_FILES[list].columns);

/** The columns without which no row of a list can be sound. */
export function requiredColumns(list: CsvList): string[] {
  const { schema }: CsvFile = CSV_FILES[list];
  return columnsOf(list)
    .filter(([field]) => !acceptsNothing(schema, field))
    .map(([, { column }]) => column);
}

function acceptsNothing(schema: z.ZodObject, field: string): boolean {
  const part = schema.shape[field];
  return part !== undefined && 'safeParse' in part && part.safeParse(undefined).success;
}
