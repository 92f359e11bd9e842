// From what zod finds wrong with the shape of a house to sentences with place, value, bound and remedy.
import { z } from 'zod';
import { platoFromSg, sgFromPlato } from '../../science/gravity.ts';
import { House } from '../house.ts';
import { isRecord, LISTS, type ListName, type PathPart } from './draft.ts';
import { nearest, type Report, shown } from './report.ts';

const GRAVITIES = new Set<PathPart>(['og', 'fg', 'sourceOg', 'gravityCeiling']);
const A_DAY = 'a day written YYYY-MM-DD';
const SHARES = new Set<PathPart>(['measuredViability', 'viabilityFloor']);

type Path = readonly PathPart[];

/** The schema of the place itself, wrappers such as 'optional' taken off; null where there is none. */
function schemaAt(path: Path): z.core.$ZodType | null {
  let schema: z.core.$ZodType = unwrapped(House);
  for (const part of path) {
    if (schema instanceof z.ZodObject) {
      const next: z.core.$ZodType | undefined = schema.shape[part];
      if (next === undefined) return null;
      schema = unwrapped(next);
    } else if (schema instanceof z.ZodArray) {
      schema = unwrapped(schema.element);
    } else if (schema instanceof z.ZodRecord) {
      schema = unwrapped(schema.valueType);
    } else {
      return null;
    }
  }
  return schema;
}

function unwrapped(schema: z.core.$ZodType): z.core.$ZodType {
  let inner = schema;
  while (
    inner instanceof z.ZodNullable ||
    inner instanceof z.ZodDefault ||
    inner instanceof z.ZodOptional
  ) {
    inner = inner.def.innerType;
  }
  return inner;
}

/** What may stand at a place, in words; null where the schema says no more than its own message. */
function boundAt(path: Path): string | null {
  const schema = schemaAt(path);
  if (schema instanceof z.ZodNumber) {
    const { minValue: low, maxValue: high } = schema;
    const kind = schema.format?.includes('int') ? 'a whole number' : 'a number';
    if (low === null || high === null || !Number.isFinite(low) || !Number.isFinite(high)) {
      return kind;
    }
    return `${kind} from ${low} to ${high}`;
  }
  if (schema instanceof z.ZodEnum) return `one of ${schema.options.join(', ')}`;
  if (schema instanceof z.ZodString && schema.meta()?.id === 'IsoDay') return A_DAY;
  if (schema instanceof z.ZodBoolean) return 'true or false';
  if (schema instanceof z.ZodArray) return 'a list';
  if (schema instanceof z.ZodObject || schema instanceof z.ZodRecord) return 'an object';
  return null;
}

const trimmed = (message: string) => message.replace(/^(must be|is not) /, '');

/** A text that has the form of a day but is none wants other advice than one without the form. */
const isOffCalendar = (issue: z.core.$ZodIssue) =>
  issue.code === 'custom' && issue.message.endsWith('day of the calendar');

function boundOf(issue: z.core.$ZodIssue, path: Path, value: unknown): string | null {
  if (issue.code === 'too_big' && issue.origin === 'array') return `at most ${issue.maximum}`;
  if (issue.code === 'too_small' && issue.origin === 'array') return `at least ${issue.minimum}`;
  if (issue.code === 'too_big' && issue.origin === 'string') {
    return `at most ${issue.maximum} characters`;
  }
  if (isOffCalendar(issue)) return 'a day of the calendar';
  const bound = boundAt(path);
  if (bound !== null) return bound;
  if (typeof value !== 'string') return 'text';
  return issue.code === 'custom' || issue.code === 'invalid_format' ? trimmed(issue.message) : null;
}

/** Advice on a gravity that is none: most often a point left out, or °P. */
function gravityRemedy(value: unknown): string {
  const number = typeof value === 'string' ? Number(value.replace(',', '.')) : value;
  if (typeof number === 'number' && number >= 900 && number <= 1250) {
    return `Write it with its point: ${(number / 1000).toFixed(3)}.`;
  }
  if (typeof number === 'number' && number > 1.2 && number <= 40) {
    // 1.3 to 2 is no wort in either unit
    if (number < 2) return 'Read the hydrometer again: a wort lies between 1.000 and 1.200.';
    return `If this is °P, write the specific gravity: ${sgFromPlato(number).toFixed(3)}.`;
  }
  return `Write the specific gravity, such as 1.048 (${platoFromSg(1.048).toFixed(1)} °P).`;
}

function remedyOf(path: Path, value: unknown, bound: string | null): string {
  const schema = schemaAt(path);
  const key = path.at(-1) ?? '';
  if (GRAVITIES.has(key)) return gravityRemedy(value);
  if (SHARES.has(key) && typeof value === 'number' && value > 1 && value <= 100) {
    return `Write the share: ${value / 100} for ${value} %.`;
  }
  if (schema instanceof z.ZodNumber && typeof value === 'string') {
    if (/^[+-]?\d+,\d+$/.test(value.trim())) {
      return `Write the number with a point: ${value.trim().replace(',', '.')}.`;
    }
    return 'Write a plain number, without a unit.';
  }
  if (bound === A_DAY) {
    return 'Write the day as year-month-day, such as 2027-03-13.';
  }
  if (bound === 'a day of the calendar') {
    return 'Correct the day: that month has no such day.';
  }
  if (schema instanceof z.ZodEnum && typeof value === 'string') {
    const meant = nearest(value, schema.options.map(String));
    if (meant !== null) return `Write ${meant}, if that is what is meant.`;
  }
  return bound === null ? 'Correct it.' : `Give ${bound}.`;
}

const isList = (part: PathPart | undefined): part is ListName =>
  LISTS.some((list) => list === part);

/** `og of brew “Heron”`, or the field's name alone at the top. */
function subject(report: Report, path: Path): string {
  const field = report.field(...path);
  const [list, row] = path;
  if (!isList(list) || typeof row !== 'number') return field;
  return path.length === 2 ? report.row(list, row) : `${field} of ${report.row(list, row)}`;
}

/** What stands at a path of the document. */
function valueAt(input: unknown, path: Path): unknown {
  let at = input;
  for (const part of path) {
    if (typeof at !== 'object' || at === null || !Object.hasOwn(at, part)) return undefined;
    at = Reflect.get(at, part);
  }
  return at;
}

function knownKeys(path: Path): string[] {
  const schema = schemaAt(path);
  return schema instanceof z.ZodObject ? Object.keys(schema.shape) : [];
}

function sayUnknownKey(report: Report, path: Path, key: string, value: unknown): void {
  const meant = nearest(key, knownKeys(path));
  const where = path.length === 0 ? 'a house' : subject(report, path);
  report.say({
    code: 'unknown-field',
    at: [...path, key],
    value: shown(value),
    message: `${shown(key)} is not a field of ${where}.`,
    remedy:
      meant === null
        ? 'Remove it, or correct its name.'
        : `Rename it to ${report.field(...path, meant)} if that is what is meant, or remove it.`,
  });
}

function sayMissing(report: Report, path: Path, bound: string | null): void {
  report.say({
    code: 'missing-field',
    at: path,
    bound,
    message: `${subject(report, path)} is missing.`,
    remedy: bound === null ? 'Fill it in.' : `Fill it in: ${bound}.`,
  });
}

/** What is wrong, as the second half of a sentence. */
function finding(issue: z.core.$ZodIssue, value: unknown, bound: string | null): string {
  if ('origin' in issue && issue.origin === 'array') {
    if (issue.message.startsWith('names ')) return issue.message;
    if (Array.isArray(value)) return `has ${value.length} entries; it may have ${bound ?? 'fewer'}`;
  }
  return bound === null
    ? `is ${shown(value)}: ${issue.message}`
    : `is ${shown(value)}; it must be ${bound}`;
}

/** Says each issue of a shape in a sentence. */
export function sayShape(report: Report, issues: readonly z.core.$ZodIssue[], input: unknown) {
  if (!isRecord(input)) {
    report.say({
      code: 'not-a-house',
      at: [],
      value: shown(input),
      bound: 'an object',
      message: `A house is an object with its fields, not ${shown(input)}.`,
      remedy: 'Give the house as a JSON object.',
    });
    return;
  }
  const said = new Set<string>();
  for (const issue of issues) {
    const path = issue.path.map((part) => (typeof part === 'symbol' ? String(part) : part));
    if (issue.code === 'unrecognized_keys') {
      for (const key of issue.keys) {
        sayUnknownKey(report, path, key, valueAt(input, [...path, key]));
      }
      continue;
    }
    // one sentence a place: a text that is no day in its form is not said to be off the calendar too
    const place = JSON.stringify(path);
    if (said.has(place)) continue;
    said.add(place);
    const value = valueAt(input, path);
    const bound = boundOf(issue, path, value);
    if (value === undefined || value === '') {
      sayMissing(report, path, bound);
      continue;
    }
    report.say({
      code: `bad-${issue.code.replaceAll('_', '-')}`,
      at: path,
      value: shown(value),
      bound,
      message: `${subject(report, path)} ${finding(issue, value, bound)}.`,
      remedy: remedyOf(path, value, bound),
    });
  }
}
