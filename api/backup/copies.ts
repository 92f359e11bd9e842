// The dated copies in their folder: their names, which of them are kept, and how one is made without leaving a half.
import { existsSync } from 'node:fs';
import { mkdir, readdir, rename, rm, stat, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { DateTime } from 'luxon';
import type { Store } from '../store/index.ts';
import { readWhole } from './whole.ts';

export type Kept = { daily: number; weekly: number };
export const KEPT: Kept = { daily: 14, weekly: 8 };
/** Copies made by hand or before a restore, kept beside the dated ones. */
export const KEPT_EXTRA = 10;

export type CopyKind = 'daily' | 'by-hand' | 'before-restore';
export type Copy = { name: string; day: string; kind: CopyKind; bytes: number; madeAt: string };

const NAME = /^barmline-(\d{4}-\d\d-\d\d)(?:-(\d{6})(-before-restore)?)?\.(db|json)$/;

/** What a file's name says, or null where it is not one of ours. */
export function readName(name: string): { day: string; kind: CopyKind } | null {
  const [, day, time, before] = NAME.exec(name) ?? [];
  if (day === undefined || !DateTime.fromISO(day).isValid) return null;
  if (time === undefined) return { day, kind: 'daily' };
  return { day, kind: before === undefined ? 'by-hand' : 'before-restore' };
}

/**
 * Which copies may go: of the daily ones all but the newest days and, for older ones, the first of each of the
 * newest weeks; of the others all but the newest few. A clock that was wrong for a while costs no copy: days are
 * counted by the copies that there are, not from today.
 */
export function toDrop(names: readonly string[], kept: Kept = KEPT): string[] {
  const known = names.flatMap((name) => {
    const read = readName(name);
    return read === null ? [] : [{ name, ...read }];
  });
  const daily = known.filter(({ kind }) => kind === 'daily');
  daily.sort((a, b) => (a.name < b.name ? 1 : -1));
  const days = [...new Set(daily.map(({ day }) => day))];
  const keptDays = new Set(days.slice(0, kept.daily));
  const firstOfWeek = new Map<string, string>();
  for (const day of days) firstOfWeek.set(DateTime.fromISO(day).toFormat('kkkk-WW'), day);
  for (const day of [...firstOfWeek.values()].slice(0, kept.weekly)) keptDays.add(day);
  const extra = known.filter(({ kind }) => kind !== 'daily');
  extra.sort((a, b) => (a.name < b.name ? 1 : -1));
  return [...daily.filter(({ day }) => !keptDays.has(day)), ...extra.slice(KEPT_EXTRA)].map(
    ({ name }) => name,
  );
}

/** The copies in a folder, newest first; none where there is no folder yet. */
export async function listCopies(folder: string): Promise<Copy[]> {
  if (!existsSync(folder)) return [];
  const copies: Copy[] = [];
  for (const name of await readdir(folder)) {
    const read = readName(name);
    if (read === null) continue;
    const { size, mtime } = await stat(join(folder, name));
    copies.push({ name, ...read, bytes: size, madeAt: mtime.toISOString() });
  }
  return copies.sort((a, b) => (a.name < b.name ? 1 : -1));
}

/** The name of a copy made at a moment in the house's time zone. */
export function nameFor(now: Date, timeZone: string, kind: CopyKind, ending: string): string {
  const moment = DateTime.fromJSDate(now, { zone: timeZone });
  const day = moment.toFormat('yyyy-MM-dd');
  if (kind === 'daily') return `barmline-${day}.${ending}`;
  const before = kind === 'before-restore' ? '-before-restore' : '';
  return `barmline-${day}-${moment.toFormat('HHmmss')}${before}.${ending}`;
}

/**
 * Writes a copy beside the others: a database file, or the whole house as JSON where the database is behind a URL.
 * Under its own name it appears only once it is complete; one of that name that is there already stays.
 */
export async function makeCopy(
  store: Store,
  folder: string,
  timeZone: string,
  kind: CopyKind,
): Promise<string> {
  await mkdir(folder, { recursive: true, mode: 0o700 });
  const name = nameFor(store.now(), timeZone, kind, store.copyTo === null ? 'json' : 'db');
  const target = join(folder, name);
  if (existsSync(target)) return name;
  const part = join(folder, `.${name}.${process.pid}.part`);
  await rm(part, { force: true });
  try {
    if (store.copyTo !== null) await store.copyTo(part);
    else await writeFile(part, wholeText(await readWhole(store.db)), { mode: 0o600, flush: true });
    await rename(part, target);
  } catch (error) {
    await rm(part, { force: true });
    await rm(`${part}-journal`, { force: true });
    throw error;
  }
  return name;
}

/** The document as it is written and downloaded. */
export function wholeText(whole: unknown): string {
  return `${JSON.stringify(whole, null, 1)}\n`;
}

/** Removes what need not be kept, and halves that a server left that was ended meanwhile. */
export async function prune(folder: string, kept: Kept): Promise<void> {
  const names = await readdir(folder);
  const halves = names.filter((name) => /^\.barmline-.*\.part(-journal)?$/.test(name));
  for (const name of [...toDrop(names, kept), ...halves]) {
    await rm(join(folder, name), { force: true });
  }
}
