// The book: a working copy of the house in which things are written in pencil until they are saved. Pure.
import type { House } from '../../../planner/index.ts';

export const LISTS = ['tanks', 'yeasts', 'jars', 'brews', 'counts'] as const;
export type ListName = (typeof LISTS)[number];

/** The field that names a row; counts have none. */
export const NAMED_BY: Readonly<Record<ListName, string>> = {
  tanks: 'tank',
  yeasts: 'yeast',
  jars: 'jar',
  brews: 'brew',
  counts: '',
};

/** Anything that can be written down, sound or not: what is half typed is kept, too. */
export type Written = Readonly<Record<string, unknown>>;

/** A row with a number of its own: below the length of the base's list it is that row, renamed or not. */
export type BookRow = { readonly id: number; readonly row: Written };

export type Book = {
  /** The revision that was opened; 0: there was no house. */
  readonly revision: number;
  /** A new house, which begins a new season when it is saved. */
  readonly startOver: boolean;
  /** The house as it was opened; null for a new one. */
  readonly base: House | null;
  readonly head: Written;
  readonly lists: Readonly<Record<ListName, readonly BookRow[]>>;
};

const isList = (key: string): key is ListName => LISTS.some((list) => list === key);

/** The parts of a house that are no list. */
export function headOf(house: Written): Written {
  return Object.fromEntries(Object.entries(house).filter(([key]) => !isList(key)));
}

/** Numbers the rows of a list; the numbers below `from` belong to the base. */
const numbered = (rows: readonly Written[], from = 0): BookRow[] =>
  rows.map((row, at) => ({ id: from + at, row }));

function listsOf(of: (list: ListName) => readonly BookRow[]): Book['lists'] {
  return Object.fromEntries(LISTS.map((list) => [list, of(list)])) as Record<
    ListName,
    readonly BookRow[]
  >;
}

/** Opens a house for writing. */
export function openBook(house: House, revision: number): Book {
  return {
    revision,
    startOver: false,
    base: house,
    head: headOf(house),
    lists: listsOf((list) => numbered(house[list])),
  };
}

/** Begins a book for a new house, which takes the place of the one at this revision. */
export function newBook(house: Written, revision: number): Book {
  const rows = (list: ListName) => {
    const value = house[list];
    return Array.isArray(value) ? numbered(value as Written[]) : [];
  };
  return { revision, startOver: true, base: null, head: headOf(house), lists: listsOf(rows) };
}

/** What is written, as a document of the house's shape; whether it is sound is for the planner to say. */
export function documentOf(book: Book): Record<string, unknown> {
  const document: Record<string, unknown> = { ...book.head };
  for (const list of LISTS) document[list] = book.lists[list].map(({ row }) => row);
  return document;
}

/** Whether two values say the same; order of keys aside. */
export function same(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  if (Array.isArray(a) || Array.isArray(b)) {
    if (!Array.isArray(a) || !Array.isArray(b) || a.length !== b.length) return false;
    return a.every((value, at) => same(value, b[at]));
  }
  const [left, right] = [a as Written, b as Written];
  const keys = new Set([...Object.keys(left), ...Object.keys(right)]);
  return [...keys].every((key) => same(left[key], right[key]));
}

/** The row of the base that a row was, or null for one that is new. */
export function baseRow(book: Book, list: ListName, id: number): Written | null {
  return book.base?.[list][id] ?? null;
}

/** Whether anything in the book differs from the house as it was opened. */
export function isTouched(book: Book): boolean {
  if (book.startOver || book.base === null) return true;
  return !same(documentOf(book), book.base);
}

const withList = (book: Book, list: ListName, rows: readonly BookRow[]): Book => ({
  ...book,
  lists: { ...book.lists, [list]: rows },
});

/** Writes a field of the house itself; a second key goes into a part such as `store`. undefined takes it out. */
export function writeHead(
  book: Book,
  path: readonly [string, (string | undefined)?],
  value: unknown,
): Book {
  const [key, inner] = path;
  if (inner === undefined) return { ...book, head: put(book.head, key, value) };
  const part = (book.head[key] ?? {}) as Written;
  return { ...book, head: { ...book.head, [key]: put(part, inner, value) } };
}

function put(record: Written, key: string, value: unknown): Written {
  if (value !== undefined) return { ...record, [key]: value };
  const { [key]: _gone, ...rest } = record;
  return rest;
}

/** Writes one cell. */
export function writeCell(
  book: Book,
  list: ListName,
  id: number,
  field: string,
  value: unknown,
): Book {
  const rows = book.lists[list].map((one) =>
    one.id === id ? { id, row: { ...one.row, [field]: value } } : one,
  );
  return withList(book, list, rows);
}

/** The first number that no row of a list has, and none of the base had. */
function freeId(book: Book, list: ListName): number {
  const ids = book.lists[list].map(({ id }) => id + 1);
  return Math.max(book.base?.[list].length ?? 0, ...ids);
}

/** Adds rows at the end, or after a row. */
export function addRows(
  book: Book,
  list: ListName,
  rows: readonly Written[],
  after: number | null = null,
): Book {
  const added = numbered(rows, freeId(book, list));
  const at = book.lists[list].findIndex(({ id }) => id === after);
  const place = at < 0 ? book.lists[list].length : at + 1;
  return withList(book, list, book.lists[list].toSpliced(place, 0, ...added));
}

export function removeRow(book: Book, list: ListName, id: number): Book {
  return withList(
    book,
    list,
    book.lists[list].filter((one) => one.id !== id),
  );
}

/** A name that no row of a list has: 'Heron 2', 'Heron 3' … */
export function freeName(book: Book, list: ListName, wanted: string): string {
  const field = NAMED_BY[list];
  const taken = new Set(book.lists[list].map(({ row }) => row[field]));
  if (!taken.has(wanted)) return wanted;
  const stem = wanted.replace(/ \d+$/, '');
  for (let n = 2; ; n += 1) if (!taken.has(`${stem} ${n}`)) return `${stem} ${n}`;
}

/** The same row once more, below it, under a name of its own. */
export function duplicateRow(book: Book, list: ListName, id: number): Book {
  const row = book.lists[list].find((one) => one.id === id)?.row;
  if (row === undefined) return book;
  const field = NAMED_BY[list];
  const name = freeName(book, list, String(row[field] ?? ''));
  return addRows(book, list, [field === '' ? row : { ...row, [field]: name }], id);
}

/** Puts rows in the place of a list, or beside what is there: a row of the same name takes its place. */
export function bringRows(
  book: Book,
  list: ListName,
  rows: readonly Written[],
  how: 'replace' | 'add',
): Book {
  const field = NAMED_BY[list];
  const known = new Map(book.lists[list].map(({ id, row }) => [row[field], id]));
  const old = (row: Written) => (field === '' ? undefined : known.get(row[field]));
  const kept = book.lists[list].flatMap((one) => {
    const fresh = rows.find((row) => old(row) === one.id);
    if (fresh) return [{ id: one.id, row: fresh }];
    return how === 'add' ? [one] : [];
  });
  const next = withList(book, list, kept);
  const first = Math.max(freeId(book, list), freeId(next, list));
  const added = numbered(
    rows.filter((row) => old(row) === undefined),
    first,
  );
  return withList(next, list, [...kept, ...added]);
}
