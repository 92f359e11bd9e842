// Puts a question: checks every field at once, refuses what contradicts itself, and answers with reasons.
import type { Range } from '../../model/common.ts';
import type { Problem } from '../../model/problem-report.ts';
import type { Settings } from '../../model/settings.ts';
import { type CautionId, cautionText } from '../../tasks/cautions.ts';
import { complaint, type Fields, type Input, schemaOf } from './field.ts';

/** One number of an answer; `low` and `high` where it is a prediction (80 % interval). */
export type Figure = {
  name: string;
  value: number | null;
  low: number | null;
  high: number | null;
  unit: string;
};

export type Found = {
  /** The answer in sentences. */
  says: string[];
  figures: Figure[];
  /** Where it goes beyond what has been measured. */
  beyond: string[];
  /** How the work that was asked about can hurt someone; left out where it cannot. */
  cautions?: readonly CautionId[];
};

/** A question of one page: what it asks for, how it answers, and what that rests on. */
export type Question<F extends Fields = Fields> = {
  id: string;
  title: string;
  fields: F;
  /** The formula in words, the range it holds in, and where it comes from. */
  formula: string;
  range: string;
  sources: readonly string[];
  /** Answers that cannot both be true. */
  contradictions(input: Input<F>): Problem[];
  answer(input: Input<F>, s: Settings): Found;
};

/** A question without the types of its own fields, as lists of questions hold it. */
export type AnyQuestion = Omit<Question, 'contradictions' | 'answer'> & {
  ask(input: unknown, s: Settings): Asked;
};

export type Asked = { answer: Answer; problems: [] } | { answer: null; problems: Problem[] };

export type Answer = Omit<Found, 'cautions'> & {
  question: string;
  /** In sentences; null where the work hurts nobody. */
  caution: string | null;
  formula: string;
  range: string;
  sources: readonly string[];
};

export const figure = (name: string, value: number | null, unit: string): Figure => ({
  name,
  value: value === null || Number.isFinite(value) ? value : null,
  low: null,
  high: null,
  unit,
});

export const predicted = (name: string, range: Range, unit: string): Figure => ({
  ...figure(name, range.likely, unit),
  low: Number.isFinite(range.low) ? range.low : null,
  high: Number.isFinite(range.high) ? range.high : null,
});

/** A number for people: three figures, no trailing noise. */
export function plain(value: number): string {
  if (!Number.isFinite(value)) return 'no amount';
  if (Math.abs(value) >= 100) return Math.round(value).toLocaleString('en');
  return String(Number(value.toPrecision(3)));
}

export const inDays = (days: number): string => (days === 1 ? 'one day' : `${days} days`);

export const percent = (share: number): string => `${Math.round(share * 100)} %`;

/** Wraps a question so that it takes anything and answers with a sentence and no number where it must. */
export function question<const F extends Fields>(asked: Question<F>): AnyQuestion {
  const schema = schemaOf(asked.fields);
  const { contradictions, answer, ...face } = asked;
  return {
    ...face,
    ask(given, s) {
      const parsed = schema.safeParse(given);
      if (!parsed.success)
        return { answer: null, problems: problemsOf(parsed.error.issues, asked.fields, given) };
      // The schema was made from the fields, so that its output is the fields' input.
      const input = parsed.data as unknown as Input<F>;
      const problems = contradictions(input);
      if (problems.length > 0) return { answer: null, problems };
      const { cautions = [], ...found } = answer(input, s);
      return {
        answer: {
          question: asked.id,
          ...found,
          caution: cautionText(...cautions),
          formula: asked.formula,
          range: asked.range,
          sources: asked.sources,
        },
        problems: [],
      };
    },
  };
}

type Issue = { code?: string; path: PropertyKey[]; keys?: string[] };

function problemsOf(issues: readonly Issue[], fields: Fields, given: unknown): Problem[] {
  const said = new Map<string, Problem>();
  for (const issue of issues) {
    if (issue.code === 'unrecognized_keys') {
      for (const key of issue.keys ?? []) said.set(key, unknownField(key, fields));
      continue;
    }
    const key = String(issue.path[0] ?? '');
    const field = fields[key];
    if (!field) said.set(key, notAnObject());
    else {
      const value: unknown =
        typeof given === 'object' && given !== null ? Reflect.get(given, key) : undefined;
      said.set(key, complaint(key, field, value));
    }
  }
  return [...said.values()];
}

function unknownField(key: string, fields: Fields): Problem {
  return {
    code: 'unknown-field',
    path: key,
    value: null,
    bound: `one of ${Object.keys(fields).join(', ')}`,
    message: `"${key}" is not a field of this question.`,
    remedy: `Remove it, or use one of ${Object.keys(fields).join(', ')}.`,
    level: 'error',
  };
}

function notAnObject(): Problem {
  return {
    code: 'not-an-object',
    path: '',
    value: null,
    bound: 'an object with a field for each thing asked',
    message: 'A question is asked with an object of fields.',
    remedy: 'Send a JSON object.',
    level: 'error',
  };
}
