// What differs between two states of a house, place by place: for counting edits, and for merging them. Pure.
import { LISTS, type ListName, NAMED_BY, same, type Written } from './book.ts';

export type Difference = {
  /** Where it is, the same for the same place in any two states. */
  key: string;
  list: ListName | null;
  /** The row's name, or null for the house itself. */
  name: string | null;
  /** The field; null: the whole row. */
  field: string | null;
  before: unknown;
  after: unknown;
};

/** Parts of the house of which each key is a place of its own. */
const PARTS = new Set(['store', 'starterGear', 'rules', 'weights']);

/** The parts of a house that are no list, each place by its path. */
function headPlaces(head: Written): Map<string, unknown> {
  const places = new Map<string, unknown>();
  for (const [key, value] of Object.entries(head)) {
    if (!PARTS.has(key) || typeof value !== 'object' || value === null) places.set(key, value);
    else for (const [inner, part] of Object.entries(value)) places.set(`${key}.${inner}`, part);
  }
  return places;
}

/** How a row is known in its list; a count by all that it says. */
export const nameOf = (list: ListName, row: Written): string =>
  NAMED_BY[list] === '' ? JSON.stringify(row) : String(row[NAMED_BY[list]] ?? '');

/** A row before and after; null where it is not there. */
export type RowPair = { name: string; before: Written | null; after: Written | null };

export function headDifferences(before: Written, after: Written): Difference[] {
  const [old, fresh] = [headPlaces(before), headPlaces(after)];
  return [...new Set([...old.keys(), ...fresh.keys()])]
    .filter((key) => !same(old.get(key), fresh.get(key)))
    .map((key) => ({
      key,
      list: null,
      name: null,
      field: key,
      before: old.get(key) ?? null,
      after: fresh.get(key) ?? null,
    }));
}

/** What differs in one row; a row that came or went is one difference. */
export function rowDifferences(list: ListName, { name, before, after }: RowPair): Difference[] {
  const place = { list, name, key: `${list}[${name}]` };
  if (before === null || after === null) {
    return before === after ? [] : [{ ...place, field: null, before, after }];
  }
  return [...new Set([...Object.keys(before), ...Object.keys(after)])]
    .filter((field) => !same(before[field], after[field]))
    .map((field) => ({
      ...place,
      key: `${place.key}.${field}`,
      field,
      before: before[field] ?? null,
      after: after[field] ?? null,
    }));
}

/** Pairs the rows of two lists by their names. */
export function pairsByName(
  list: ListName,
  before: readonly Written[],
  after: readonly Written[],
): RowPair[] {
  const old = new Map(before.map((row) => [nameOf(list, row), row]));
  const fresh = new Map(after.map((row) => [nameOf(list, row), row]));
  return [...new Set([...old.keys(), ...fresh.keys()])].map((name) => ({
    name,
    before: old.get(name) ?? null,
    after: fresh.get(name) ?? null,
  }));
}

type Lists = Readonly<Record<ListName, readonly Written[]>>;

/** Everything in which two houses differ, rows known by their names. */
export function houseDifferences(
  before: { head: Written; lists: Lists },
  after: { head: Written; lists: Lists },
): Difference[] {
  return [
    ...headDifferences(before.head, after.head),
    ...LISTS.flatMap((list) =>
      pairsByName(list, before.lists[list], after.lists[list]).flatMap((pair) =>
        rowDifferences(list, pair),
      ),
    ),
  ];
}
