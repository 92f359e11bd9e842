// An edit that came too late: what is in pencil laid over what somebody else saved meanwhile, field by field. Pure.
import type { House } from '../../../planner/index.ts';
import {
  type Book,
  type BookRow,
  baseRow,
  headOf,
  LISTS,
  type ListName,
  openBook,
  same,
  type Written,
  writeHead,
} from './book.ts';
import {
  type Difference,
  headDifferences,
  nameOf,
  pairsByName,
  rowDifferences,
} from './differences.ts';

/** A place that both changed, each otherwise. */
export type Clash = Difference & { mine: unknown; theirs: unknown };
export type Side = 'mine' | 'theirs';

export type Merge = {
  /** What the other side changed meanwhile. */
  theirs: Difference[];
  /** What is in pencil here. */
  mine: Difference[];
  clashes: Clash[];
};

/** The rows of the base beside what the book made of them, and the rows that are new. */
function myPairs(book: Book, list: ListName) {
  const before = book.base?.[list] ?? [];
  const mine = new Map(book.lists[list].map(({ id, row }) => [id, row]));
  const old = before.map((row: Written, id) => ({
    name: nameOf(list, row),
    before: row,
    after: mine.get(id) ?? null,
  }));
  const added = book.lists[list]
    .filter(({ id }) => id >= before.length)
    .map(({ row }) => ({ name: nameOf(list, row), before: null, after: row }));
  return [...old, ...added];
}

/** Every difference of the book from the house as it was opened; a renamed row is the same row. */
export function pencilled(book: Book): Difference[] {
  if (book.base === null) return [];
  return [
    ...headDifferences(headOf(book.base), book.head),
    ...LISTS.flatMap((list) => myPairs(book, list).flatMap((pair) => rowDifferences(list, pair))),
  ];
}

/** Lays the book over the house as it stands now. */
export function mergeOf(book: Book, now: House): Merge {
  const base = book.base;
  if (base === null) return { theirs: [], mine: [], clashes: [] };
  const mine = pencilled(book);
  const theirs = [
    ...headDifferences(headOf(base), headOf(now)),
    ...LISTS.flatMap((list) =>
      pairsByName(list, base[list], now[list]).flatMap((pair) => rowDifferences(list, pair)),
    ),
  ];
  const rowOf = ({ list, name }: Difference) => (list === null ? null : `${list}[${name}]`);
  const clashes = mine.flatMap((one): Clash[] => {
    const same_ = theirs.find((other) => other.key === one.key);
    if (same_) {
      return same(same_.after, one.after) ? [] : [{ ...one, mine: one.after, theirs: same_.after }];
    }
    // one took the whole row away, the other wrote in it
    const row = rowOf(one);
    if (row === null) return [];
    const other = theirs.filter((two) => rowOf(two) === row);
    const gone = other.find((two) => two.field === null);
    if (gone) return [{ ...one, mine: one.after, theirs: null, field: one.field }];
    if (one.field === null && one.after === null && other.length > 0) {
      const [list, name] = [one.list, one.name];
      const kept = list && now[list].find((two) => nameOf(list, two) === name);
      return [{ ...one, mine: null, theirs: kept ?? null }];
    }
    return [];
  });
  return { theirs, mine, clashes };
}

/** The book on top of the house as it stands now; of a clash the side that was chosen, mine where none was. */
export function mergedBook(
  book: Book,
  now: House,
  revision: number,
  chosen: Readonly<Record<string, Side>>,
): Book {
  const { mine, clashes } = mergeOf(book, now);
  const theirsWins = new Set(
    clashes.filter(({ key }) => chosen[key] === 'theirs').map(({ key }) => key),
  );
  const edits = mine.filter(({ key }) => !theirsWins.has(key));
  let next = openBook(now, revision);
  for (const edit of edits) {
    if (edit.list === null && edit.field !== null) {
      const [key = '', inner] = edit.field.split('.');
      next = writeHead(next, [key, inner], edit.after ?? undefinedWhereOptional(key));
    }
  }
  for (const list of LISTS) {
    const own = edits.filter((edit) => edit.list === list);
    if (own.length > 0) next = withRows(next, list, applied(book, next, list, own));
  }
  return next;
}

/** A key of rules or weights that is taken out is not there; other places hold null. */
const undefinedWhereOptional = (key: string): undefined | null =>
  key === 'rules' || key === 'weights' ? undefined : null;

const withRows = (book: Book, list: ListName, rows: BookRow[]): Book => ({
  ...book,
  lists: { ...book.lists, [list]: rows },
});

function applied(old: Book, next: Book, list: ListName, edits: readonly Difference[]): BookRow[] {
  let rows = [...next.lists[list]];
  let free = next.base?.[list].length ?? 0;
  const at = (name: string | null) => rows.findIndex(({ row }) => nameOf(list, row) === name);
  const fields = new Map<string, Difference[]>();
  for (const edit of edits) {
    const place = at(edit.name);
    if (edit.field !== null) {
      fields.set(edit.name ?? '', [...(fields.get(edit.name ?? '') ?? []), edit]);
    } else if (edit.after === null) {
      rows = rows.filter((_, index) => index !== place);
    } else if (place >= 0) {
      rows[place] = { id: rows[place]?.id ?? free++, row: edit.after as Written };
    } else {
      rows.push({ id: free++, row: edit.after as Written });
    }
  }
  for (const [name, changes] of fields) {
    const place = at(name);
    const written = Object.fromEntries(changes.map((edit) => [edit.field ?? '', edit.after]));
    const there = rows[place];
    if (there) {
      rows[place] = { id: there.id, row: { ...there.row, ...written } };
    } else {
      // the row is gone on the other side, and is kept here: whole
      const mine = wholeRow(old, list, name);
      if (mine) rows.push({ id: free++, row: mine });
    }
  }
  return rows;
}

/** The row of the base of this name, as the book has it now. */
function wholeRow(book: Book, list: ListName, name: string): Written | null {
  const found = book.lists[list].find(({ id, row }) => {
    const before = baseRow(book, list, id);
    return nameOf(list, before ?? row) === name;
  });
  return found?.row ?? null;
}
