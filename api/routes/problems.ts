// From a zod error to the project's problems: place, value, bound and what to do, all at once.
import type { z } from 'zod';
import type { Problem } from '../../planner/index.ts';

const MAX_VALUE_LENGTH = 80;

/** A path as a person reads it: `brews[3].og`; the whole document is `(body)`. */
export function pathText(path: readonly PropertyKey[], whole = '(body)'): string {
  if (path.length === 0) return whole;
  return path
    .map((key, at) =>
      typeof key === 'number' ? `[${key}]` : at === 0 ? String(key) : `.${String(key)}`,
    )
    .join('');
}

/** What stands at a path, shortened; null where nothing does. */
export function valueText(input: unknown, path: readonly PropertyKey[]): string | null {
  let at: unknown = input;
  for (const key of path) {
    if (typeof at !== 'object' || at === null || !Object.hasOwn(at, key)) return null;
    at = Reflect.get(at, key);
  }
  if (at === undefined) return null;
  const text = typeof at === 'string' ? at : (JSON.stringify(at) ?? String(at));
  return text.length > MAX_VALUE_LENGTH ? `${text.slice(0, MAX_VALUE_LENGTH)}…` : text;
}

/** Types as a person calls them. */
const KINDS: { readonly [expected: string]: string } = {
  string: 'a text',
  number: 'a number',
  int: 'a whole number',
  boolean: 'true or false',
  array: 'a list',
  object: 'an object',
  record: 'an object',
  null: 'null',
};

/** Forms of a text that have no words of their own in the schemas. */
const FORMATS: { readonly [format: string]: string } = {
  uuid: 'an id as the server gave it',
  regex: 'in the documented form',
  url: 'an address',
};

/** The parser's own wording, which means something to its users alone. */
const JARGON = /^(Invalid|Too (small|big)|Unrecognized|Expected)\b/;

/** The least or the most that may stand there, counted as what it is. */
function limitText(issue: { origin: string }, word: string, limit: unknown): string {
  const counted: { readonly [origin: string]: string } = {
    string: ' characters',
    array: ' entries',
    set: ' entries',
    file: ' bytes',
  };
  const noun = counted[issue.origin] ?? '';
  const one = limit === 1 ? noun.replace('entries', 'entry').replace(/s$/, '') : noun;
  return `${word} ${String(limit)}${one}`;
}

/** What is wrong, as the second half of a sentence; the schema's own words where it has some. */
function saysOf(issue: z.core.$ZodIssue): string {
  if (!JARGON.test(issue.message)) return issue.message;
  const bound = boundText(issue);
  return bound === null ? 'it cannot be used' : `it must be ${bound}`;
}

function boundText(issue: z.core.$ZodIssue): string | null {
  switch (issue.code) {
    case 'too_small':
      return limitText(issue, issue.inclusive === false ? 'more than' : 'at least', issue.minimum);
    case 'too_big':
      return limitText(issue, issue.inclusive === false ? 'less than' : 'at most', issue.maximum);
    case 'invalid_value':
      return issue.values.length === 1
        ? String(issue.values[0])
        : `one of ${issue.values.map(String).join(', ')}`;
    case 'invalid_key':
      return 'under a key that may stand here';
    case 'invalid_union':
      return 'options' in issue && Array.isArray(issue.options)
        ? `one of ${issue.options.map(String).join(', ')}`
        : 'of one of the documented kinds';
    case 'invalid_type':
      return KINDS[issue.expected] ?? issue.expected;
    case 'invalid_format':
      return JARGON.test(issue.message)
        ? (FORMATS[issue.format] ?? 'in another form')
        : issue.message;
    default:
      return null;
  }
}

function remedyText(issue: z.core.$ZodIssue, missing: boolean): string {
  if (missing) return 'Add this field.';
  switch (issue.code) {
    case 'unrecognized_keys':
      return 'Remove the field, or correct its name.';
    case 'too_small':
    case 'too_big':
      return 'Give a value inside the bound.';
    case 'invalid_value':
      return 'Use one of the values named.';
    case 'invalid_union':
      return 'Use one of the documented kinds; GET /api/openapi.json lists them.';
    default:
      return 'Correct the value; GET /api/openapi.json says what may stand there.';
  }
}

/** Every issue of a zod error as a problem. */
export function problemsOf(error: z.ZodError, input: unknown, whole = '(body)'): Problem[] {
  const problems: Problem[] = [];
  for (const issue of error.issues) {
    if (issue.code === 'unrecognized_keys') {
      for (const key of issue.keys) {
        const path = [...issue.path, key];
        problems.push({
          code: 'unknown-field',
          path: pathText(path, whole),
          value: valueText(input, path),
          bound: null,
          message: `${pathText(path, whole)} is not a field that is known here.`,
          remedy: remedyText(issue, false),
          level: 'error',
        });
      }
      continue;
    }
    const value = valueText(input, issue.path);
    const missing = value === null && issue.path.length > 0;
    const place = pathText(issue.path, whole);
    problems.push({
      code: missing ? 'missing-field' : `bad-${issue.code.replaceAll('_', '-')}`,
      path: place,
      value,
      bound: boundText(issue),
      message: missing
        ? `${place} is missing.`
        : `${place} is ${value === null ? 'not what is wanted' : value}: ${saysOf(issue)}.`,
      remedy: remedyText(issue, missing),
      level: 'error',
    });
  }
  return problems;
}
