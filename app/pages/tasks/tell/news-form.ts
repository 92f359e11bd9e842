// The form of each kind of news, read from the schema of the news itself: its fields, their bounds, and what is written in them.
import '../../../parts/book/no-eval.ts';
import { z } from 'zod';
import { Brew, Jar, News } from '../../../../planner/index.ts';
import { cellText, cellValue } from '../../../parts/book/cells.ts';
import {
  aNewBrew,
  aNewJar,
  type FieldSpec as BookField,
  FIELDS,
} from '../../../parts/book/fields.ts';
import type { Units } from '../../../parts/units.ts';
import { wayOf } from '../../../parts/ways.ts';
import type { NewsGiven } from '../../../queries/news.ts';

export type NewsKind = News['kind'];

/** Whatever a field names: chosen from a list, never typed. */
export type Naming = 'brew' | 'tank' | 'jar' | 'yeast' | 'culture' | 'source';

export type NewsField = {
  /** Where it stands in the news, as a refusal names it: `day`, `row.og`. */
  path: string;
  spec: BookField;
  names: Naming | null;
  /** Of a culture or a source: which kinds of it may be named. */
  among: readonly string[];
  required: boolean;
  least: number | null;
  most: number | null;
  whole: boolean;
};

/** Labels and units that a schema does not tell; the figure is shown in the reader's own unit. */
const WORDS: Readonly<Record<string, { label: string; unit?: string }>> = {
  brew: { label: 'Brew' },
  tank: { label: 'Tank' },
  jar: { label: 'Jar' },
  yeast: { label: 'Yeast' },
  of: { label: 'What' },
  source: { label: 'Yeast from' },
  day: { label: 'Day' },
  to: { label: 'Not before' },
  until: { label: 'Not before' },
  hours: { label: 'From the pitch to the first foam', unit: 'hours' },
  volumeL: { label: 'Wort into the tank', unit: 'L' },
  og: { label: 'Gravity of the wort', unit: 'SG' },
  fg: { label: 'Gravity at the end', unit: 'SG' },
  drawnMl: { label: 'Slurry pitched', unit: 'mL' },
  settledMl: { label: 'Settled slurry', unit: 'mL' },
  stained: { label: 'Stained (dead) cells' },
  total: { label: 'Cells looked at, dead ones too' },
  viability: { label: 'Or the share alive', unit: '%' },
  millionPerMl: { label: 'Cells in a mL of settled slurry', unit: 'million' },
  packs: { label: 'Packs' },
  arrivesOn: { label: 'There on' },
  expectedOn: { label: 'Was to come on' },
  from: { label: 'First day' },
  what: { label: 'Which' },
};
/** Where one name means different things. */
const WORDS_OF: Readonly<Record<string, string>> = {
  'tank-out.to': 'Last day',
  'brewed.tank': 'Into tank',
  'slow.until': 'Neither harvested nor emptied before',
  'pinned.day': 'On',
  'pinned.tank': 'In tank',
};
/** What a blank field means. */
const BLANK: Readonly<Record<string, string>> = {
  tank: 'as planned',
  drawnMl: 'as planned',
  fg: 'as planned',
  expectedOn: 'the only delivery under way',
  'pinned.tank': 'any',
  source: 'any',
  what: 'all of it',
};
const DAYS = new Set(['day', 'to', 'until', 'arrivesOn', 'expectedOn', 'from']);
const SHARE = 100;

type Bare = { schema: z.ZodType; required: boolean };

/** A schema without its default and its null. */
function bare(schema: z.ZodType): Bare {
  if (schema instanceof z.ZodDefault || schema instanceof z.ZodNullable) {
    return { schema: bare(schema.unwrap() as z.ZodType).schema, required: false };
  }
  return { schema, required: true };
}

function optionOf(kind: NewsKind) {
  for (const option of News.options) {
    if (option.shape.kind.value === kind) return option;
  }
  throw new Error(`the news has no kind ${kind}`);
}

function numbers(schema: z.ZodType): Pick<NewsField, 'least' | 'most' | 'whole'> {
  if (!(schema instanceof z.ZodNumber)) return { least: null, most: null, whole: false };
  return { least: schema.minValue, most: schema.maxValue, whole: schema.isInt };
}

/** The fields of one kind of news, in the order of its schema. */
export function fieldsOf(kind: NewsKind): NewsField[] {
  if (kind === 'brew-added') return rowFields('brews', Brew);
  if (kind === 'jar-found') return rowFields('jars', Jar);
  const shape: Readonly<Record<string, z.ZodType>> = optionOf(kind).shape;
  return Object.entries(shape)
    .filter(([name]) => name !== 'kind')
    .map(([name, given]) => {
      const { schema, required } = bare(given);
      const word = WORDS[name] ?? { label: name };
      const blank = required ? undefined : (BLANK[`${kind}.${name}`] ?? BLANK[name] ?? '');
      const options = schema instanceof z.ZodEnum ? schema.options.map(String) : undefined;
      const spec: BookField = {
        field: name,
        label: WORDS_OF[`${kind}.${name}`] ?? word.label,
        kind:
          schema instanceof z.ZodNumber
            ? 'number'
            : options
              ? 'choice'
              : DAYS.has(name)
                ? 'day'
                : 'text',
        wide: 12,
        ...(word.unit === undefined ? {} : { unit: word.unit }),
        ...(options === undefined ? {} : { options }),
        ...(blank === undefined ? {} : { blank }),
      };
      return { path: name, spec, ...naming(name, schema), required, ...numbers(schema) };
    });
}

function naming(name: string, schema: z.ZodType): Pick<NewsField, 'names' | 'among'> {
  if (schema instanceof z.ZodDiscriminatedUnion) {
    const among = schema.options.flatMap((option) => {
      const kind = option instanceof z.ZodObject ? option.shape.kind : null;
      return kind instanceof z.ZodLiteral ? [String(kind.value)] : [];
    });
    return { names: name === 'of' ? 'culture' : 'source', among };
  }
  const named = (['brew', 'tank', 'jar', 'yeast'] as const).find((one) => one === name);
  return { names: named ?? null, among: [] };
}

/** The fields of a whole row that stand in its line in the book; the others keep what a new row has. */
function rowFields(list: 'brews' | 'jars', row: z.ZodObject): NewsField[] {
  const specs: readonly BookField[] = FIELDS[list];
  return specs
    .filter((spec) => spec.line)
    .map((spec) => {
      const schema: unknown = row.shape[spec.field];
      const { schema: inner } =
        schema instanceof z.ZodType ? bare(schema) : { schema: z.unknown() };
      const strains = spec.kind === 'strains' || spec.kind === 'strain';
      return {
        path: `row.${spec.field}`,
        spec,
        names: strains ? 'yeast' : null,
        among: [],
        required: spec.blank === undefined && spec.kind !== 'style',
        ...numbers(inner),
      };
    });
}

/** What is written in a form, field by field, as text; a culture or a source as its JSON. */
export type Filled = Readonly<Record<string, string>>;
export type Wrong = { path: string; says: string };

/** The unit in which a field is written. */
export function unitOfField(field: NewsField, units: Units): string {
  const { unit } = wayOf(field.spec.unit ?? '', units);
  return unit === 'SG' || unit === 'currency' ? '' : unit;
}

/** A value as it is written in its field. */
export function written(field: NewsField, value: unknown, units: Units): string {
  if (value === null || value === undefined) return '';
  if (field.names === 'culture' || field.names === 'source') return JSON.stringify(value);
  if (field.spec.unit === '%' && typeof value === 'number') return String(value * SHARE);
  return cellText(field.spec, value, units);
}

/** A bound in the unit in which the field is written. */
function boundText(field: NewsField, value: number, units: Units): string {
  const text = field.spec.unit === '%' ? String(value * SHARE) : cellText(field.spec, value, units);
  const unit = unitOfField(field, units);
  return unit === '' ? text : `${text} ${unit}`;
}

function readField(field: NewsField, text: string, units: Units): { value: unknown } | Wrong {
  const { path, spec, least, most } = field;
  const wrong = (says: string): Wrong => ({ path, says });
  if (text.trim() === '') {
    if (field.required) return wrong(`${spec.label} is missing.`);
    return { value: spec.kind === 'style' ? '' : null };
  }
  if (field.names === 'culture' || field.names === 'source') return { value: JSON.parse(text) };
  if (spec.kind === 'strains') return { value: [text] };
  const read = cellValue(spec, text, units);
  if (spec.kind !== 'number') return { value: read };
  if (typeof read !== 'number') return wrong(`${text.trim()} is no number.`);
  const value = spec.unit === '%' ? read / SHARE : read;
  if (field.whole && !Number.isInteger(value)) return wrong('It has to be a whole number.');
  if (least !== null && value < least)
    return wrong(`${text.trim()} is too little: from ${boundText(field, least, units)} on.`);
  if (most !== null && value > most)
    return wrong(`${text.trim()} is too much: up to ${boundText(field, most, units)}.`);
  return { value };
}

/**
 * What a filled form tells, or everything that is wrong with it.
 * @param fixed what is known from where the form was opened
 */
export function newsFrom(
  kind: NewsKind,
  filled: Filled,
  fixed: Readonly<Record<string, unknown>>,
  units: Units,
): { news: NewsGiven } | { wrong: Wrong[] } {
  const wrong: Wrong[] = [];
  const row: Record<string, unknown> = {};
  const own: Record<string, unknown> = {};
  for (const field of fieldsOf(kind)) {
    if (field.path in fixed) continue;
    const read = readField(field, filled[field.path] ?? '', units);
    if ('says' in read) wrong.push(read);
    else if (field.path.startsWith('row.')) row[field.spec.field] = read.value;
    else own[field.path] = read.value;
  }
  if (wrong.length > 0) return { wrong };
  const isRow = kind === 'brew-added' || kind === 'jar-found';
  const whole = isRow ? { row: { ...newRow(kind), ...row } } : own;
  const parsed = News.safeParse({ kind, ...fixed, ...whole });
  if (parsed.success) return { news: parsed.data };
  return {
    wrong: parsed.error.issues.map(({ path, message }) => ({
      path: path.join('.'),
      says: message,
    })),
  };
}

const newRow = (kind: 'brew-added' | 'jar-found', yeast = '', today = '2000-01-01') =>
  kind === 'brew-added' ? aNewBrew('brew', yeast) : aNewJar('jar', yeast, today);

/** What stands in the fields of a new row before anything is written. */
export function rowStart(kind: NewsKind, yeast: string, today: string): Record<string, unknown> {
  if (kind !== 'brew-added' && kind !== 'jar-found') return {};
  return { ...newRow(kind, yeast, today), brew: '', jar: '' };
}
