// From anything that was given to a house, with everything that is wrong said at once.
import { findMeaning, inDocument } from './check-house.ts';
import {
  draftOf,
  draftOfParts,
  isRecord,
  LISTS,
  type ListName,
  type Placing,
} from './checks/draft.ts';
import { type Found, reportOn } from './checks/report.ts';
import { sayShape } from './checks/shape.ts';
import { House } from './house.ts';
import type { Problem } from './problem-report.ts';

export type ParsedHouse = {
  /** The house, when nothing is wrong with it but warnings; otherwise null. */
  house: House | null;
  /** The same, or the house of those rows that are sound; null where the house itself is unsound. */
  rest: House | null;
  problems: Problem[];
};

/** The rows of the lists that an error lies in. */
function faultyRows(found: readonly Found[]): Map<ListName, Set<number>> {
  const rows = new Map<ListName, Set<number>>();
  for (const { at, problem } of found) {
    const [name, row] = at;
    const list = LISTS.find((one) => one === name);
    if (problem.level !== 'error' || list === undefined || typeof row !== 'number') continue;
    const set = rows.get(list) ?? new Set<number>();
    rows.set(list, set.add(row));
  }
  return rows;
}

/** Takes one part out of the house's own fields; its default, if it has one, then stands there. */
function takeOut(document: { [key: string]: unknown }, [key, part]: Found['at']): void {
  if (key === undefined) return;
  const value = document[key];
  if (isRecord(value) && part !== undefined) {
    document[key] = Object.fromEntries(Object.entries(value).filter(([name]) => name !== part));
  } else if (Array.isArray(value) && typeof part === 'number') {
    document[key] = value.toSpliced(part, 1);
  } else {
    delete document[key];
  }
}

/** The document without what is wrong, until what is left is sound; null if that cannot be. */
function soundRest(input: unknown, found: readonly Found[]): House | null {
  if (!isRecord(input)) return null;
  const document: { [key: string]: unknown } = {};
  for (const key of Object.keys(House.shape)) {
    if (Object.hasOwn(input, key)) document[key] = input[key];
  }
  for (const list of LISTS) if (!Array.isArray(document[list])) document[list] = [];
  const ownFaults = found.filter(
    ({ at, problem }) => problem.level === 'error' && !LISTS.some((list) => list === at[0]),
  );
  // from the back, so that the places in a list stay where they are
  for (const { at } of ownFaults.toReversed()) takeOut(document, at);
  let faulty = faultyRows(found);
  // each round takes away at least one row
  for (;;) {
    for (const [list, rows] of faulty) {
      const value = document[list];
      if (Array.isArray(value)) document[list] = value.filter((_, at) => !rows.has(at));
    }
    const parsed = House.safeParse(document);
    if (!parsed.success) return null;
    faulty = faultyRows(findMeaning(draftOf(parsed.data), inDocument));
    if (faulty.size === 0) return parsed.data;
  }
}

/**
 * Parses a house and checks its meaning. Every problem is found at once: what is wrong in one field
 * hides nothing that is wrong elsewhere, and nothing is said that only follows from another problem.
 * @param input anything, e.g. a parsed JSON document
 * @param place says where a path of the document lies for whoever wrote it
 */
export function parseHouse(input: unknown, place: Placing = inDocument): ParsedHouse {
  const parsed = House.safeParse(input);
  const issues = parsed.success ? [] : parsed.error.issues;
  const draft = parsed.success
    ? draftOf(parsed.data)
    : draftOfParts(
        input,
        issues.map((issue) => issue.path),
      );
  const found: Found[] = [];
  if (!parsed.success) sayShape(reportOn(draft, place, found), issues, input);
  found.push(...findMeaning(draft, place));
  const problems = found.map((one) => one.problem);
  if (problems.every((problem) => problem.level !== 'error') && parsed.success) {
    return { house: parsed.data, rest: parsed.data, problems };
  }
  return { house: null, rest: soundRest(input, found), problems };
}
