// The password as it is kept: its hash alone, by the settings it was promised, in a file for nobody else.
import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseOptions } from '@node-rs/argon2';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import {
  isPassword,
  passwordProblem,
  readPassword,
  removePassword,
  setPassword,
} from '../../../api/doors/password.ts';

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'barmline-password-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

describe('how long it has to be', () => {
  test.each([
    ['eleven chars', 'abcdefghijk', /has 11 characters.*at least 12/],
    ['nothing', '', /has 0 characters/],
    // Eleven characters in 22 code units: characters are counted.
    ['eleven smileys', '😀'.repeat(11), /has 11 characters/],
    ['twelve', 'abcdefghijkl', null],
    ['two hundred', 'a'.repeat(200), null],
    ['two hundred and one', 'a'.repeat(201), /at most 200/],
  ])('%s', (_what, password, sentence) => {
    if (sentence === null) expect(passwordProblem(password)).toBeNull();
    else expect(passwordProblem(password)).toMatch(sentence);
  });
});

test('kept as argon2id with at least the memory and passes of the OWASP Password Storage Cheat Sheet', async () => {
  await setPassword(folder, 'four unrelated words');
  const stored = readPassword(folder) ?? '';
  expect(stored).toMatch(/^\$argon2id\$v=19\$/);
  // OWASP Password Storage Cheat Sheet, argon2id: m=19456 (19 MiB), t=2, p=1.
  expect(parseOptions(stored)).toMatchObject({ memoryCost: 19_456, timeCost: 2, parallelism: 1 });
  expect(parseOptions(stored).saltLen).toBeGreaterThanOrEqual(16);
});

test('the password itself is nowhere in the folder, and nobody else reads the hash', async () => {
  await setPassword(folder, 'four unrelated words');
  for (const name of readdirSync(folder)) {
    const file = join(folder, name);
    expect(readFileSync(file, 'utf8')).not.toContain('unrelated');
    expect(statSync(file).mode & 0o077).toBe(0);
  }
  expect(readdirSync(folder)).toEqual(['password.hash']);
});

test('the same password twice has two hashes: each is salted', async () => {
  await setPassword(folder, 'four unrelated words');
  const first = readPassword(folder);
  await setPassword(folder, 'four unrelated words');
  expect(readPassword(folder)).not.toBe(first);
});

test('opens with itself and with nothing else', async () => {
  await setPassword(folder, 'Brauhaus Käse 12');
  const stored = readPassword(folder) ?? '';
  expect(await isPassword(stored, 'Brauhaus Käse 12')).toBe(true);
  // ä as a and a mark of its own (Unicode NFD): the same password.
  expect(await isPassword(stored, 'Brauhaus Käse 12'.normalize('NFD'))).toBe(true);
  for (const wrong of ['brauhaus käse 12', 'Brauhaus Käse 1', 'Brauhaus Käse 12 ', '', stored]) {
    expect(await isPassword(stored, wrong)).toBe(false);
  }
});

test('a file that holds no hash opens to nothing', async () => {
  writeFileSync(join(folder, 'password.hash'), 'four unrelated words\n');
  expect(await isPassword(readPassword(folder) ?? '', 'four unrelated words')).toBe(false);
  writeFileSync(join(folder, 'password.hash'), '\n');
  expect(readPassword(folder)).toBeNull();
});

test('taken away, there is none', async () => {
  await setPassword(folder, 'four unrelated words');
  removePassword(folder);
  expect(readPassword(folder)).toBeNull();
});
