// Backups while the server runs: a copy a day, pruned, made without holding up an answer; one by hand; reading one back.
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { describeError } from '../routes/errors.ts';
import { todayIn } from '../runs/planning.ts';
import { readHouse } from '../store/house.ts';
import type { Store } from '../store/index.ts';
import { troubleOf } from '../store/troubles.ts';
import {
  type Copy,
  type CopyKind,
  type Kept,
  listCopies,
  makeCopy,
  nameFor,
  prune,
  readName,
} from './copies.ts';

export type Backups = {
  folder: string;
  kept: Kept;
  list: () => Promise<Copy[]>;
  /** Makes a copy now. @returns its name @throws what the disk had against it */
  make: (kind: CopyKind) => Promise<string>;
  /** The file of a copy, or null where there is none of this name. */
  file: (name: string) => string | null;
  /** Why the last daily copy could not be made, in a sentence; null: it was made. */
  failure: () => string | null;
  /** Makes the copy of the day if it is not there yet. */
  ifDue: () => Promise<void>;
  /** Looks now and every hour whether a copy is due. */
  start: () => void;
  close: () => Promise<void>;
};

export type BackupOptions = {
  store: Store;
  folder: string;
  kept: Kept;
  report: (line: string) => void;
  /** ms before the first look, so that a start is not held up, and between looks. */
  firstMs?: number;
  everyMs?: number;
};

const FIRST_MS = 20_000;
const EVERY_MS = 3_600_000;

/** Backups of a store into a folder; nothing is made before it is started or asked. */
export function createBackups(options: BackupOptions): Backups {
  const { store, folder, kept, report } = options;
  let failure: string | null = null;
  let timer: NodeJS.Timeout | null = null;
  let last: Promise<unknown> = Promise.resolve();

  async function make(kind: CopyKind): Promise<string> {
    const timeZone = (await readHouse(store.db))?.house.timeZone ?? 'utc';
    const name = await makeCopy(store, folder, timeZone, kind);
    await prune(folder, kept);
    return name;
  }

  /** One after the other, so that two never write the same file. */
  function queued<T>(work: () => Promise<T>): Promise<T> {
    const mine = last.then(work);
    last = mine.catch(() => undefined);
    return mine;
  }

  async function ifDue(): Promise<void> {
    try {
      const stored = await readHouse(store.db);
      if (stored === null) return;
      const { timeZone } = stored.house;
      const day = todayIn(timeZone, store.now());
      const ending = store.copyTo === null ? 'json' : 'db';
      const wanted = nameFor(store.now(), timeZone, 'daily', ending);
      if (!existsSync(join(folder, wanted))) await queued(() => make('daily'));
      if (failure !== null) report(`The copy of ${day} is made; backups work again.`);
      failure = null;
    } catch (error) {
      const says = `No copy of today could be made in ${folder}. ${troubleOf(error)?.says ?? 'Something unforeseen went wrong.'}`;
      if (says !== failure) report(`${says}\n${describeError(error)}`);
      failure = says;
    }
  }

  return {
    folder,
    kept,
    list: () => listCopies(folder),
    make: (kind) => queued(() => make(kind)),
    file: (name) => {
      const path = readName(name) === null ? null : join(folder, name);
      return path !== null && existsSync(path) ? path : null;
    },
    failure: () => failure,
    ifDue,
    start: () => {
      const look = () => {
        void ifDue();
        timer = setTimeout(look, options.everyMs ?? EVERY_MS);
        timer.unref();
      };
      timer = setTimeout(look, options.firstMs ?? FIRST_MS);
      timer.unref();
    },
    close: async () => {
      if (timer !== null) clearTimeout(timer);
      await last;
    },
  };
}
