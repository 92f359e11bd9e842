// The secret address of a feed: derived from a key in the data folder, stored only as a hash, compared in constant time.
import { createHash, createHmac, randomBytes, timingSafeEqual } from 'node:crypto';
import { chmodSync, existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

const KEY_BYTES = 32;

/** @throws Error with a sentence where the key file is there but is not one */
export function readFeedKey(dataFolder: string): Buffer {
  const file = join(dataFolder, 'feed.key');
  if (!existsSync(file)) {
    writeFileSync(file, `${randomBytes(KEY_BYTES).toString('base64url')}\n`, {
      mode: 0o600,
      flag: 'wx',
    });
  }
  const key = Buffer.from(readFileSync(file, 'utf8').trim(), 'base64url');
  if (key.length !== KEY_BYTES) {
    throw new Error(
      `${file} does not hold the key of the calendar addresses. Put it back from a backup, or remove it: ` +
        'then a new key is made and every calendar has to subscribe to a new address.',
    );
  }
  chmodSync(file, 0o600);
  return key;
}

/** The token of a feed: 256 bits that nobody guesses and that can be told again. */
export function tokenOf(key: Buffer, feedId: string): string {
  return createHmac('sha256', key).update(feedId).digest('base64url');
}

/** What is stored of a token. */
export function hashOf(token: string): string {
  return createHash('sha256').update(token).digest('hex');
}

/** Compares a token with a stored hash in a time that does not tell how much of it was right. */
export function matches(token: string, storedHash: string): boolean {
  const given = Buffer.from(hashOf(token), 'hex');
  const stored = Buffer.from(storedHash, 'hex');
  return given.length === stored.length && timingSafeEqual(given, stored);
}
