// The best that anything has found for each season of the bench, kept in best-known.json beside this file.
import { readFileSync, writeFileSync } from 'node:fs';

const FILE = new URL('best-known.json', import.meta.url);

export type Known = { leftOut: number; costMinor: number; by: string };
type Book = Record<string, Known>;

function read(): Book {
  try {
    return JSON.parse(readFileSync(FILE, 'utf8')) as Book;
  } catch {
    return {};
  }
}

export const bestKnown = (season: string): Known | null => read()[season] ?? null;

/** Notes a plan if it is better than what is known; returns what is known now. */
export function noteBest(season: string, found: Known): Known {
  const book = read();
  const old = book[season];
  const better =
    !old ||
    found.leftOut < old.leftOut ||
    (found.leftOut === old.leftOut && found.costMinor < old.costMinor);
  if (!better) return old;
  book[season] = found;
  const sorted = Object.fromEntries(Object.entries(book).sort(([a], [b]) => a.localeCompare(b)));
  writeFileSync(FILE, `${JSON.stringify(sorted, null, 2)}\n`);
  return found;
}
