// A copy back to the document that it holds: from a database file of this or an earlier version, or from JSON.
import { copyFileSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Problem } from '../../planner/index.ts';
import { problemsOf } from '../routes/problems.ts';
import { openStore, StoreError } from '../store/index.ts';
import { checkWhole, FORMAT, FORMAT_VERSION, readWhole, WholeHouse } from './whole.ts';

export type Reading = { whole: WholeHouse | null; problems: Problem[] };

function unreadable(message: string, remedy: string): Reading {
  const problem: Problem = {
    code: 'unreadable-copy',
    path: '(copy)',
    value: null,
    bound: null,
    message,
    remedy,
    level: 'error',
  };
  return { whole: null, problems: [problem] };
}

/** A document that came as JSON: its shape, then whether its parts fit together. */
export function readDocument(value: unknown): Reading {
  const { format, formatVersion } = (value ?? {}) as Record<string, unknown>;
  if (format === FORMAT && typeof formatVersion === 'number' && formatVersion > FORMAT_VERSION) {
    return unreadable(
      `It was written by a newer version of Barmline (format ${formatVersion}; this one knows ${FORMAT_VERSION}).`,
      'Restore it with that version.',
    );
  }
  const parsed = WholeHouse.safeParse(value);
  if (!parsed.success) {
    return { whole: null, problems: problemsOf(parsed.error, value, '(document)') };
  }
  const problems = checkWhole(parsed.data);
  return { whole: problems.length > 0 ? null : parsed.data, problems };
}

/** Reads a copy from its file, which is never written to: an older database is brought forward in a copy of the copy. */
export async function readCopy(file: string): Promise<Reading> {
  if (file.endsWith('.json')) {
    try {
      return readDocument(JSON.parse(readFileSync(file, 'utf8')));
    } catch {
      return unreadable('The copy is no JSON.', 'Take another copy.');
    }
  }
  const folder = mkdtempSync(join(tmpdir(), 'barmline-restore-'));
  try {
    const temporary = join(folder, 'copy.db');
    copyFileSync(file, temporary);
    const store = await openStore({ url: pathToFileURL(temporary).href });
    try {
      const whole = await readWhole(store.db);
      if (whole === null) return unreadable('The copy holds no house.', 'Take another copy.');
      return readDocument(JSON.parse(JSON.stringify(whole)));
    } finally {
      store.close();
    }
  } catch (error) {
    if (!(error instanceof StoreError)) throw error;
    const newer = error.message.includes('newer version');
    return unreadable(
      newer
        ? 'The copy was made by a newer version of Barmline.'
        : 'The copy is damaged, or is no database of Barmline.',
      newer ? 'Restore it with that version.' : 'Take another copy.',
    );
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
