// What the fields of tanks, yeasts, jars and brews are called, in which unit they are, and how they are written.
import './no-eval.ts';
import { Jar, Souring, Tank, Yeast } from '../../../planner/index.ts';
import type { ListName, Written } from './book.ts';

export type FieldKind =
  | 'text'
  | 'number'
  | 'choice'
  | 'yesno'
  | 'maybe'
  | 'day'
  | 'style'
  | 'strain'
  | 'strains'
  | 'words'
  | 'stretches';

export type FieldSpec = {
  field: string;
  /** As a column is headed and a field is named. */
  label: string;
  kind: FieldKind;
  /** L, mL, SG, EBC or °C are read in the units that were chosen; anything else stands as it is. */
  unit?: string;
  options?: readonly string[];
  /** What a blank one means; there: it may be blank. */
  blank?: string;
  /** Column width in letters. */
  wide: number;
  /** Stands in the line itself, not in the fold below it. */
  line?: true;
};

const number = (
  field: string,
  label: string,
  unit: string,
  wide = 5,
  more: Partial<FieldSpec> = {},
): FieldSpec => ({ field, label, kind: 'number', unit, wide, ...more });
const line = { line: true } as const;

const BREW_FIELDS: readonly FieldSpec[] = [
  { field: 'brew', label: 'Beer', kind: 'text', wide: 14, ...line },
  { field: 'style', label: 'Style', kind: 'style', wide: 15, ...line },
  { field: 'yeasts', label: 'Yeast', kind: 'strains', wide: 14, ...line },
  number('volumeL', 'Volume', 'L', 5, line),
  number('og', 'OG', 'SG', 5, line),
  number('fg', 'FG', 'SG', 5, line),
  number('ebc', 'Colour', 'EBC', 5, line),
  number('ibu', 'Bitterness', 'IBU', 5, line),
  number('fermentC', 'Ferments at', '°C', 5, line),
  number('tankDays', 'In the tank', 'days', 5, line),
  number('conditionDays', 'Conditions', 'days', 5, line),
  { field: 'readyBy', label: 'Wanted by', kind: 'day', blank: 'no day', wide: 10, ...line },
  { field: 'notBefore', label: 'Not before', kind: 'day', blank: 'any day', wide: 10 },
  { field: 'brewOn', label: 'Fixed brew day', kind: 'day', blank: 'not fixed', wide: 10 },
  number('priority', 'Priority, larger first', '', 5),
  number('value', 'Worth of the batch', 'currency', 6),
  number('harvestDay', 'Earliest crop, after the pitch', 'days', 5, { blank: 'by kind of yeast' }),
  number('dryHopDay', 'Dry hop, after the pitch', 'days', 5, { blank: 'none' }),
  {
    field: 'souring',
    label: 'Souring',
    kind: 'choice',
    options: Souring.options,
    blank: 'none',
    wide: 8,
  },
  {
    field: 'additions',
    label: 'Fruit, spice, smoke …, split by |',
    kind: 'words',
    blank: 'none',
    wide: 14,
  },
  { field: 'fades', label: 'Loses by standing', kind: 'maybe', blank: 'by the style', wide: 8 },
  number('needMPerMlP', 'Own pitching rate', 'million per mL per °P', 5, {
    blank: 'by the rules of the house',
  }),
];

const TANK_FIELDS: readonly FieldSpec[] = [
  { field: 'tank', label: 'Tank', kind: 'text', wide: 16, ...line },
  number('minFillL', 'Smallest fill', 'L', 6, line),
  number('maxFillL', 'Largest fill', 'L', 6, line),
  number('minC', 'Coldest', '°C', 5, line),
  number('maxC', 'Warmest', '°C', 5, line),
  number('turnaroundDays', 'Empty between brews', 'days', 5, line),
  { field: 'bottomOutlet', label: 'Yeast from below', kind: 'yesno', wide: 6, ...line },
  {
    field: 'outOfUse',
    label: 'Out of use: first day/last day, split by |',
    kind: 'stretches',
    blank: 'never',
    wide: 20,
  },
];

const YEAST_FIELDS: readonly FieldSpec[] = [
  { field: 'yeast', label: 'Yeast', kind: 'text', wide: 16, ...line },
  {
    field: 'kind',
    label: 'Kind',
    kind: 'choice',
    options: Yeast.shape.kind.options,
    wide: 8,
    ...line,
  },
  {
    field: 'form',
    label: 'Form',
    kind: 'choice',
    options: Yeast.shape.form.options,
    wide: 7,
    ...line,
  },
  number('packCellsB', 'Cells in a pack', 'billion', 6, line),
  number('packPrice', 'Price of a pack', 'currency', 6, line),
  number('packsOnHand', 'Packs here', '', 4, line),
  { field: 'packsMadeOn', label: 'Made on', kind: 'day', blank: 'not known', wide: 10, ...line },
  number('minC', 'From', '°C', 5, line),
  number('maxC', 'To', '°C', 5, line),
  {
    field: 'flocculation',
    label: 'Flocculation',
    kind: 'choice',
    options: Yeast.shape.flocculation.options,
    wide: 8,
    ...line,
  },
  {
    field: 'nature',
    label: 'Nature',
    kind: 'choice',
    options: Yeast.shape.nature.options,
    wide: 8,
  },
  number('maxGeneration', 'Generation limit of its own', '', 5, { blank: 'the rule of the house' }),
];

const JAR_FIELDS: readonly FieldSpec[] = [
  { field: 'jar', label: 'Jar', kind: 'text', wide: 8, ...line },
  { field: 'yeast', label: 'Yeast', kind: 'strain', wide: 16, ...line },
  number('generation', 'Generation', '', 4, line),
  number('settledMl', 'Settled', 'mL', 6, line),
  { field: 'harvestedOn', label: 'Harvested', kind: 'day', wide: 10, ...line },
  {
    field: 'state',
    label: 'State',
    kind: 'choice',
    options: Jar.shape.state.unwrap().options,
    wide: 8,
    ...line,
  },
  number('sourceOg', 'OG of its beer', 'SG', 5, { blank: 'not known' }),
  number('sourceEbc', 'Colour of its beer', 'EBC', 5, { blank: 'not known' }),
  number('sourceIbu', 'Bitterness of its beer', 'IBU', 5, { blank: 'not known' }),
  {
    field: 'sourceSouring',
    label: 'Souring of its beer',
    kind: 'choice',
    options: Souring.options,
    blank: 'none',
    wide: 8,
  },
  {
    field: 'sourceAdditions',
    label: 'Fruit, spice … in its beer, split by |',
    kind: 'words',
    blank: 'none',
    wide: 14,
  },
  { field: 'sourceDryHopped', label: 'Its beer was dry-hopped', kind: 'yesno', wide: 6 },
  number('measuredViability', 'Counted share alive, 0 to 1', '', 5, { blank: 'not counted' }),
  { field: 'measuredOn', label: 'Counted on', kind: 'day', blank: 'not counted', wide: 10 },
];

/** The fields of each list that is edited on the page, in order. */
export const FIELDS = {
  brews: BREW_FIELDS,
  tanks: TANK_FIELDS,
  yeasts: YEAST_FIELDS,
  jars: JAR_FIELDS,
} as const satisfies Partial<Record<ListName, readonly FieldSpec[]>>;
export type EditedList = keyof typeof FIELDS;

/** What one row of each list is called. */
export const ROW_WORD: Readonly<Record<EditedList, string>> = {
  brews: 'brew',
  tanks: 'tank',
  yeasts: 'yeast',
  jars: 'jar',
};

/** A new row of a tank, with what most houses have; parsed, so that every default of the model stands in it. */
export const aNewTank = (tank: string): Written =>
  Tank.parse({
    tank,
    minFillL: 10,
    maxFillL: 21,
    minC: 2,
    maxC: 24,
    turnaroundDays: 1,
    bottomOutlet: false,
  });

export const aNewYeast = (yeast: string): Written =>
  Yeast.parse({
    yeast,
    kind: 'ale',
    form: 'liquid',
    nature: 'clean',
    packCellsB: 100,
    packPrice: 9,
    packsOnHand: 0,
    minC: 16,
    maxC: 22,
    flocculation: 'medium',
  });

export const aNewJar = (jar: string, yeast: string, today: string): Written =>
  Jar.parse({
    jar,
    yeast: yeast === '' ? 'yeast' : yeast,
    generation: 1,
    settledMl: 150,
    harvestedOn: today,
  });

/** A new brew, with amounts of an ordinary beer of twenty litres. */
export const aNewBrew = (brew: string, yeast: string): Written => ({
  brew,
  style: '',
  yeasts: yeast === '' ? [] : [yeast],
  volumeL: 20,
  og: 1.048,
  fg: 1.011,
  ebc: 12,
  ibu: 30,
  fermentC: 19,
  tankDays: 14,
  harvestDay: null,
  conditionDays: 14,
  dryHopDay: null,
  souring: null,
  additions: [],
  notBefore: null,
  readyBy: null,
  brewOn: null,
  priority: 1,
  value: 0,
  fades: null,
  needMPerMlP: null,
});
