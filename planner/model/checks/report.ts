// Collects what a check finds, each with its place and in one form of sentence.
import type { Problem } from '../problem-report.ts';
import { type Draft, type ListName, type PathPart, type Placing, ROW_NOUN } from './draft.ts';

export type Found = { at: readonly PathPart[]; problem: Problem };

/** What a check says about one place; the place itself and its field's name are filled in. */
export type Saying = {
  code: string;
  at: readonly PathPart[];
  value?: string | number | null;
  bound?: string | null;
  message: string;
  remedy: string;
  level?: 'error' | 'warning';
};

export type Report = {
  /** The house as far as it is known. */
  draft: Draft;
  /** What a field is called where the brewer wrote it: `notBefore`, or `not_before` in a file. */
  field: (...path: PathPart[]) => string;
  /** `brew “Heron”`, or `brew 3` where the name is not known. */
  row: (list: ListName, at: number) => string;
  say: (saying: Saying) => void;
};

const MAX_VALUE_LENGTH = 80;

/** A value as it is shown: short, on one line. */
export function shown(value: unknown): string {
  const text = typeof value === 'string' ? value : (JSON.stringify(value) ?? String(value));
  const line = text.replace(/\s+/g, ' ');
  return line.length > MAX_VALUE_LENGTH ? `${line.slice(0, MAX_VALUE_LENGTH)}…` : line;
}

const capital = (word: string) => word.charAt(0).toUpperCase() + word.slice(1);

/** A report on this draft that adds to `found`. */
export function reportOn(draft: Draft, place: Placing, found: Found[]): Report {
  return {
    draft,
    field: (...path) => place(path).field,
    row: (list, at) => {
      const noun = ROW_NOUN[list];
      const row: { [key: string]: unknown } = { ...draft[list][at] };
      const name = row[noun];
      return typeof name === 'string' ? `${noun} “${shown(name)}”` : `${noun} ${at + 1}`;
    },
    say: ({ code, at, value = null, bound = null, message, remedy, level = 'error' }) => {
      const problem: Problem = {
        code,
        path: place(at).path,
        value: value === null ? null : shown(value),
        bound,
        message: message.replace(/^(tank|yeast|jar|brew|count)(?= [“\d])/, capital),
        remedy,
        level,
      };
      found.push({ at, problem });
    },
  };
}

/**
 * How many letters have to be put in, left out, changed or swapped with their neighbour to make one
 * text of the other; more than `limit` where their lengths alone are further apart.
 */
function distance(a: string, b: string, limit: number): number {
  if (Math.abs(a.length - b.length) > limit) return limit + 1;
  let beforeLast: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      const changed = (last[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1);
      const swapped =
        i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]
          ? (beforeLast[j - 2] ?? 0) + 1
          : changed;
      next.push(Math.min(changed, swapped, (last[j] ?? 0) + 1, (next[j - 1] ?? 0) + 1));
    }
    beforeLast = last;
    last = next;
  }
  return last[b.length] ?? limit + 1;
}

/** The name that was most likely meant, or null where none is near. */
export function nearest(word: string, names: readonly string[]): string | null {
  const plain = (text: string) => text.toLowerCase().replace(/[\s_-]/g, '');
  const limit = Math.max(1, Math.floor(word.length / 4));
  let best: string | null = null;
  let bestDistance = limit + 1;
  for (const name of names) {
    const apart = distance(plain(word).slice(0, 200), plain(name).slice(0, 200), limit);
    if (apart < bestDistance) {
      best = name;
      bestDistance = apart;
    }
  }
  return best;
}
