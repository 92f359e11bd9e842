// What can be wrong with the disk under the database, recognised by its code, and the sentence that says what to do.

export type Trouble = {
  code: 'disk-full' | 'read-only' | 'locked' | 'damaged' | 'cannot-open';
  says: string;
};

const SAYS: Readonly<Record<Trouble['code'], string>> = {
  'disk-full':
    'The disk has no room left. Nothing was changed. Make room where the data folder lies, then do it again.',
  'read-only':
    'The data folder, or the database in it, cannot be written to. Nothing was changed. ' +
    'Give the folder and its files back to the user who runs Barmline, or see whether the disk was mounted read-only.',
  locked:
    'Another program holds the database. Nothing was changed. See whether a second Barmline or a database tool runs ' +
    'on the same data folder, end it, then do it again.',
  damaged:
    'The database file is damaged, or is no database. It was left as it is. Stop Barmline, move barmline.db with its ' +
    '-wal and -shm aside (do not delete them), copy the newest file of the folder backups there as barmline.db, and start again.',
  'cannot-open':
    'The database file cannot be opened. Nothing was changed. Check that the data folder exists and that the user who ' +
    'runs Barmline may read and write there.',
};

// Result codes of SQLite (https://www.sqlite.org/rescode.html) and of Node's file system.
const CODES: readonly (readonly [RegExp, Trouble['code']])[] = [
  [/^(SQLITE_FULL|ENOSPC|EDQUOT|EFBIG)$/, 'disk-full'],
  [/^(SQLITE_READONLY|SQLITE_PERM|EROFS|EACCES|EPERM)/, 'read-only'],
  [/^(SQLITE_BUSY|SQLITE_LOCKED)/, 'locked'],
  [/^(SQLITE_CORRUPT|SQLITE_NOTADB|SQLITE_IOERR_SHORT_READ)/, 'damaged'],
  [/^SQLITE_CANTOPEN/, 'cannot-open'],
  // A write that the disk refused half-way: on most systems because it is full.
  [/^SQLITE_IOERR/, 'disk-full'],
];

function codesOf(error: unknown, depth = 0): string[] {
  if (typeof error !== 'object' || error === null || depth > 5) return [];
  const { code, extendedCode, cause, message } = error as Record<string, unknown>;
  const own = [extendedCode, code].filter((one): one is string => typeof one === 'string');
  // NOTE: an error of opening carries its number in the words alone; 14 is SQLITE_CANTOPEN.
  const opening = /Unable to open connection to local database .*: 14"/.test(String(message));
  return [...own, ...(opening ? ['SQLITE_CANTOPEN'] : []), ...codesOf(cause, depth + 1)];
}

/** Whether an error came from the database itself, and not from the work that was done in it. */
export function isOfDatabase(error: unknown): boolean {
  return codesOf(error).some((code) => code.startsWith('SQLITE_'));
}

/** The trouble behind an error, or null where it is of another kind. */
export function troubleOf(error: unknown): Trouble | null {
  for (const given of codesOf(error)) {
    const code = CODES.find(([pattern]) => pattern.test(given))?.[1];
    if (code !== undefined) return { code, says: SAYS[code] };
  }
  return null;
}
