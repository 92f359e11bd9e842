// What is in pencil, kept in this browser: through a reload, a closed tab, a server that is away.
import type { Book } from './book.ts';

const PREFIX = 'barmline.book.';
const OWN = 'barmline.book.mine';

export type Kept = { tab: string; at: string; book: Book };

/** Storage may be shut (private windows) or full: then nothing is kept, and the page says so. */
function tried<T>(work: () => T, otherwise: T): T {
  try {
    return work();
  } catch {
    return otherwise;
  }
}

const freshTab = (): string => {
  // NOTE: crypto.randomUUID is there on https and this machine alone.
  const bytes = crypto.getRandomValues(new Uint8Array(8));
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('');
};

let tab: string | null = null;

/** This tab's own name; it stays through a reload. */
export function ownTab(): string {
  tab ??= tried(() => window.sessionStorage.getItem(OWN), null) ?? takeTab();
  return tab;
}

/** A new name, for a tab that turns out to be the copy of another. */
export function takeTab(): string {
  tab = freshTab();
  const name = tab;
  tried(() => window.sessionStorage.setItem(OWN, name), undefined);
  return name;
}

function isBook(value: unknown): value is Book {
  return (
    typeof value === 'object' &&
    value !== null &&
    'revision' in value &&
    typeof value.revision === 'number' &&
    'head' in value &&
    typeof value.head === 'object' &&
    'lists' in value &&
    typeof value.lists === 'object'
  );
}

function read(key: string): Kept | null {
  const text = tried(() => window.localStorage.getItem(key), null);
  if (text === null) return null;
  const value: unknown = tried(() => JSON.parse(text), null);
  if (typeof value !== 'object' || value === null || !('book' in value) || !('at' in value)) {
    return null;
  }
  if (!isBook(value.book)) return null;
  return { tab: key.slice(PREFIX.length), at: String(value.at), book: value.book };
}

/** What this tab had in pencil. */
export const ownKept = (): Kept | null => read(PREFIX + ownTab());

/** What other tabs have or had in pencil, the newest first. */
export function othersKept(): Kept[] {
  const keys = tried(() => Object.keys(window.localStorage), []);
  return keys
    .filter((key) => key.startsWith(PREFIX) && key !== PREFIX + ownTab() && key !== OWN)
    .flatMap((key) => read(key) ?? [])
    .sort((a, b) => (a.at < b.at ? 1 : -1));
}

/** Keeps what is in pencil. @returns whether this browser does */
export function keep(book: Book): boolean {
  const text = JSON.stringify({ at: new Date().toISOString(), book });
  return tried(() => {
    window.localStorage.setItem(PREFIX + ownTab(), text);
    return true;
  }, false);
}

export function forget(of: string = ownTab()): void {
  tried(() => window.localStorage.removeItem(PREFIX + of), undefined);
}

/** Calls back when another tab writes under this tab's name: this one is its copy. */
export function onOwnTaken(taken: () => void): () => void {
  const listen = (event: StorageEvent) => {
    if (event.key === PREFIX + ownTab() && event.newValue !== null) taken();
  };
  window.addEventListener('storage', listen);
  return () => window.removeEventListener('storage', listen);
}
