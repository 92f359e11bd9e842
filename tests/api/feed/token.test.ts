// The secret of a feed: as long as promised, told again from the key, and nowhere but behind a hash.
import { mkdtempSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { hashOf, matches, readFeedKey, tokenOf } from '../../../api/feed/token.ts';

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'barmline-key-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

test('the key is made once, is 256 bits, and only its owner reads it', () => {
  const key = readFeedKey(folder);
  expect(key).toHaveLength(32);
  expect(readFeedKey(folder).equals(key)).toBe(true);
  expect(statSync(join(folder, 'feed.key')).mode & 0o777).toBe(0o600);
});

test('a key file that holds something else is not overwritten', () => {
  writeFileSync(join(folder, 'feed.key'), 'short');
  expect(() => readFeedKey(folder)).toThrow(/Put it back from a backup/);
});

test('HMAC-SHA256 as in RFC 4231 §4.3 (test case 2), in base64url', () => {
  // key "Jefe", data "what do ya want for nothing?"
  const digest = '5bdcc146bf60754e6a042426089575c75a003f089d2739839dec58b964ec3843';
  expect(tokenOf(Buffer.from('Jefe'), 'what do ya want for nothing?')).toBe(
    Buffer.from(digest, 'hex').toString('base64url'),
  );
});

test('a token opens only the feed that it was made for', () => {
  const key = readFeedKey(folder);
  const token = tokenOf(key, 'one');
  expect(token).toMatch(/^[A-Za-z0-9_-]{43}$/);
  expect(matches(token, hashOf(token))).toBe(true);
  expect(matches(tokenOf(key, 'two'), hashOf(token))).toBe(false);
  expect(matches('', hashOf(token))).toBe(false);
  expect(matches(token, '')).toBe(false);
});
