// What a question asks for: one field each, from which its form, its schema and its complaints are made.
import { z } from 'zod';
import type { Problem } from '../../model/problem-report.ts';
import { sgFromPlato } from '../gravity.ts';
import { celsiusFromFahrenheit } from '../units.ts';

type Common = {
  label: string;
  says: string;
  /** Taken where nothing is given; null: nothing is a good answer. Absent: it must be given. */
  fallback?: number | string | boolean | null;
};

export type Field =
  | (Common & { kind: 'number'; unit: string; min: number; max: number; whole?: boolean })
  | (Common & { kind: 'gravity' })
  | (Common & { kind: 'share' })
  | (Common & { kind: 'choice'; options: readonly string[] })
  | (Common & { kind: 'yesNo' })
  | (Common & { kind: 'counts'; most: number });

export type Fields = Readonly<Record<string, Field>>;

/** What comes in for a field of this kind. */
type Value<F extends Field> = F extends { kind: 'choice'; options: readonly (infer O)[] }
  ? O
  : F extends { kind: 'yesNo' }
    ? boolean
    : F extends { kind: 'counts' }
      ? number[]
      : number;

export type Input<F extends Fields> = {
  [K in keyof F]: F[K] extends { fallback: null } ? Value<F[K]> | null : Value<F[K]>;
};

export const flocculationField = (says: string) =>
  ({
    kind: 'choice',
    label: 'Flocculation',
    says,
    options: ['low', 'medium', 'high'],
    fallback: 'medium',
  }) as const;

const LIGHTEST = 0.98;
const HEAVIEST = 1.2;

function bare(field: Field): z.ZodType {
  switch (field.kind) {
    case 'number': {
      const number = z.number().min(field.min).max(field.max);
      return field.whole ? number.int() : number;
    }
    case 'gravity':
      return z.number().min(LIGHTEST).max(HEAVIEST);
    case 'share':
      return z.number().min(0).max(1);
    case 'choice':
      return z.enum(field.options as readonly [string, ...string[]]);
    case 'yesNo':
      return z.boolean();
    case 'counts':
      return z.array(z.number().int().min(0).max(100_000)).min(1).max(field.most);
  }
}

/** The schema of a question's input, for parsing and for the API's description. */
export function schemaOf(fields: Fields) {
  return z.strictObject(
    Object.fromEntries(
      Object.entries(fields).map(([key, field]) => {
        const schema = bare(field).describe(`${field.label}. ${field.says}`);
        if (field.fallback === undefined) return [key, schema];
        if (field.fallback === null) return [key, schema.nullable().default(null)];
        return [key, schema.default(field.fallback)];
      }),
    ),
  );
}

/** What may stand in a field, in words. */
export function boundOf(field: Field): string {
  switch (field.kind) {
    case 'number':
      return `${field.whole ? 'a whole number' : 'a number'} from ${field.min} to ${field.max} ${field.unit}`.trim();
    case 'gravity':
      return `a specific gravity from ${LIGHTEST.toFixed(3)} to ${HEAVIEST.toFixed(3)}`;
    case 'share':
      return 'a share from 0 to 1';
    case 'choice':
      return `one of ${field.options.join(', ')}`;
    case 'yesNo':
      return 'true or false';
    case 'counts':
      return `1 to ${field.most} whole numbers from 0`;
  }
}

/** A number written like a gravity without its point, or like °P: which of the two is meant? */
export function gravityRemedy(value: number): string {
  if (value >= 980 && value <= 1200)
    return `If ${value} is a specific gravity without its point, write ${(value / 1000).toFixed(3)}.`;
  if (value > HEAVIEST && value < 2)
    return 'No wort is that heavy; if a nought was lost, write it like 1.048, otherwise read the hydrometer again.';
  if (value >= 2 && value <= 40)
    return `If ${value} is °P, write ${sgFromPlato(value).toFixed(3)}; if it is a gravity, write it like 1.048.`;
  return 'Write the specific gravity with its point, like 1.048.';
}

/** Other units in which a number may have been written, and what it then is in the unit that is asked for. */
const MEANT: Readonly<Record<string, readonly [meant: string, from: (value: number) => number][]>> =
  {
    '°C': [['°F', celsiusFromFahrenheit]],
    L: [['mL', (ml) => ml / 1000]],
    billion: [['single cells', (cells) => cells / 1e9]],
    'billion per mL': [
      ['million per mL', (million) => million / 1000],
      ['cells per mL', (cells) => cells / 1e9],
    ],
    times: [['a share', (share) => 1 / share]],
  };

/** What a number beyond its bound may have meant in another unit; null where that fits no better. */
function otherUnit(field: Field, value: unknown): string | null {
  if (field.kind !== 'number' || typeof value !== 'number') return null;
  for (const [meant, from] of MEANT[field.unit] ?? []) {
    const is = from(value);
    if (is >= field.min && is <= field.max)
      return `If ${value} is ${meant}, write ${Number(is.toPrecision(3))}; otherwise give ${boundOf(field)}.`;
  }
  return null;
}

function remedyOf(field: Field, value: unknown): string {
  if (typeof value === 'string' && /^\s*[-+]?\d+([.,]\d+)?\s*$/.test(value))
    return `Give a number and not a text: ${value.trim().replace(',', '.')}.`;
  if (field.kind === 'gravity')
    return typeof value === 'number' ? gravityRemedy(value) : 'Write it like 1.048.';
  if (field.kind === 'share' && typeof value === 'number' && value > 1 && value <= 100)
    return `If ${value} is per cent, write ${value / 100}.`;
  return otherUnit(field, value) ?? `Give ${boundOf(field)}.`;
}

function shown(value: unknown): string {
  const text = typeof value === 'string' ? `"${value}"` : (JSON.stringify(value) ?? String(value));
  return text.length > 60 ? `${text.slice(0, 57)}…` : text;
}

/** Says what is wrong with one field of an input, by its label, value, bound and remedy. */
export function complaint(key: string, field: Field, value: unknown): Problem {
  const bound = boundOf(field);
  const missing = value === undefined || value === null || value === '';
  return {
    code: missing ? 'missing-field' : 'bad-value',
    path: key,
    value: missing ? null : shown(value),
    bound,
    message: missing
      ? `${field.label} is missing: it must be ${bound}.`
      : `${field.label} is ${shown(value)}; it must be ${bound}.`,
    remedy: missing ? `Give ${bound}.` : remedyOf(field, value),
    level: 'error',
  };
}

/** Two answers that cannot both be true. */
export function contradiction(path: string, message: string, remedy: string): Problem {
  return { code: 'contradiction', path, value: null, bound: null, message, remedy, level: 'error' };
}

/** No wort is thinner: it is what 1.000 to 1.200 become when they are read as °P. */
const THINNEST_WORT = 1.005;

/** An original gravity that is no wort's; the fields allow it because a finished beer may be lighter than water. */
export function noWort(og: number): Problem[] {
  if (og >= THINNEST_WORT) return [];
  return [
    contradiction(
      'og',
      `An original gravity of ${og.toFixed(4)} is no wort: there is next to nothing to ferment below ${THINNEST_WORT}.`,
      'Give the gravity before fermentation, like 1.048; if a gravity like that was read as °P, choose SG.',
    ),
  ];
}
