// The one book that is open in this tab: written in by every page, undone step by step, kept through a reload.
import { useSyncExternalStore } from 'react';
import type { House } from '../../../planner/index.ts';
import { type Book, isTouched, openBook } from './book.ts';
import { forget, keep, onOwnTaken, ownKept, takeTab } from './keeping.ts';

const MOST_STEPS = 200;
const KEEP_AFTER_MS = 250;

type Step = { book: Book; says: string; place: string };
export type OpenBook = {
  book: Book;
  touched: boolean;
  /** What the last step did; null: nothing to undo. */
  undoes: string | null;
  /** false: this browser keeps nothing, so a reload would lose what is in pencil. */
  kept: boolean;
};

let open: OpenBook | null = null;
let steps: Step[] = [];
let late: ReturnType<typeof setTimeout> | undefined;
const listeners = new Set<() => void>();

function show(book: Book): void {
  const touched = isTouched(book);
  open = { book, touched, undoes: steps.at(-1)?.says ?? null, kept: open?.kept ?? true };
  for (const listener of listeners) listener();
}

function keepNow(): void {
  clearTimeout(late);
  late = undefined;
  if (open === null) return;
  if (!open.touched) {
    forget();
    return;
  }
  const kept = keep(open.book);
  if (kept === open.kept) return;
  open = { ...open, kept };
  for (const listener of listeners) listener();
}

function keepSoon(): void {
  clearTimeout(late);
  late = setTimeout(keepNow, KEEP_AFTER_MS);
}

if (typeof window !== 'undefined') {
  window.addEventListener('pagehide', () => {
    if (late !== undefined) keepNow();
  });
  // A tab that was duplicated carries the name of the other: it takes one of its own.
  onOwnTaken(() => {
    takeTab();
    if (open?.touched) keepNow();
  });
}

/** The book of this house: the one that is open, or what was kept of it, or opened now. */
export function bookFor(house: House | null, revision: number): OpenBook | null {
  if (open !== null && (open.touched || open.book.revision === revision)) return open;
  const kept = open === null ? ownKept()?.book : undefined;
  if (kept) show(kept);
  else if (house !== null) show(openBook(house, revision));
  return open;
}

/**
 * Writes in the book.
 * @param says what was done, to be named where it is undone: 'removed Heron'
 * @param place writing in the same place again is one step with the time before; '' stands alone
 */
export function write(change: (book: Book) => Book, says: string, place = ''): void {
  if (open === null) return;
  const next = change(open.book);
  if (next === open.book) return;
  if (place === '' || steps.at(-1)?.place !== place) {
    steps = [...steps.slice(1 - MOST_STEPS), { book: open.book, says, place }];
  }
  show(next);
  keepSoon();
}

export function undo(): void {
  const last = steps.at(-1);
  if (last === undefined) return;
  steps = steps.slice(0, -1);
  show(last.book);
  keepSoon();
}

/** Closes the book and opens another: after saving, after throwing away, after a merge. */
export function reopen(book: Book): void {
  steps = [];
  show(book);
  keepNow();
}

function subscribe(changed: () => void): () => void {
  listeners.add(changed);
  return () => listeners.delete(changed);
}

/** The open book; re-renders when something is written. */
export const useOpenBook = (): OpenBook | null => useSyncExternalStore(subscribe, () => open);
