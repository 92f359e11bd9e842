// The password that opens the doors: only its argon2id hash is kept, in a file of the data folder.
//
// A file and not a row: a copy of the database that somebody downloads holds nothing to guess at.
import { chmodSync, mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { hash, verify } from '@node-rs/argon2';

export const MIN_CHARACTERS = 12;
export const MAX_CHARACTERS = 200;

// 19 MiB, two passes, one lane: among the settings that the OWASP Password Storage Cheat Sheet names as
// the least for argon2id, which is `algorithm` 2.
const COST = { algorithm: 2, memoryCost: 19_456, timeCost: 2, parallelism: 1 } as const;

const fileIn = (dataFolder: string) => join(dataFolder, 'password.hash');

// One letter may be typed as one mark or as two: both are the same password.
const normal = (password: string) => password.normalize('NFC');

/** What is wrong with a new password, in one sentence; null: nothing. */
export function passwordProblem(password: string): string | null {
  const characters = [...normal(password)].length;
  if (characters < MIN_CHARACTERS) {
    return `The password has ${characters} characters: it needs at least ${MIN_CHARACTERS}. Several unrelated words do well.`;
  }
  if (characters > MAX_CHARACTERS) {
    return `The password has ${characters} characters: at most ${MAX_CHARACTERS} are taken.`;
  }
  return null;
}

/** Whether this is the password behind a stored hash; takes the same long time either way. */
export async function isPassword(storedHash: string, password: string): Promise<boolean> {
  if ([...normal(password)].length > MAX_CHARACTERS) return false;
  return verify(storedHash, normal(password)).catch(() => false);
}

/** The stored hash, or null where no password is set. */
export function readPassword(dataFolder: string): string | null {
  try {
    const stored = readFileSync(fileIn(dataFolder), 'utf8').trim();
    return stored === '' ? null : stored;
  } catch {
    return null;
  }
}

/** Sets a new password; every session that was opened with another one ends by that. */
export async function setPassword(dataFolder: string, password: string): Promise<void> {
  const stored = await hash(normal(password), COST);
  mkdirSync(dataFolder, { recursive: true, mode: 0o700 });
  const file = fileIn(dataFolder);
  const fresh = `${file}.${process.pid}`;
  writeFileSync(fresh, `${stored}\n`, { mode: 0o600 });
  renameSync(fresh, file);
  chmodSync(file, 0o600);
}

/** Takes the password away: the server then answers to its own machine alone, and without a session. */
export function removePassword(dataFolder: string): void {
  rmSync(fileIn(dataFolder), { force: true });
}
