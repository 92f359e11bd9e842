// docs/server.md names every variable and every operation that there is, and none that there is not.
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { OPERATIONS } from '../../api/routes/contract.ts';

const read = (path: string) =>
  readFileSync(fileURLToPath(new URL(`../../${path}`, import.meta.url)), 'utf8');
const page = read('docs/server.md');
const rows = (pattern: RegExp) => [...page.matchAll(pattern)].map(([, name]) => name).sort();

test('variables', () => {
  const code = read('api/environment.ts');
  const known = [...code.matchAll(/given\('(BARMLINE_\w+)'\)/g)].map(([, name]) => name);
  expect(rows(/^\| `(BARMLINE_\w+)` \|/gm)).toEqual([...new Set(known)].sort());
});

test('operations', () => {
  expect(rows(/^\| `((?:GET|PUT|POST|DELETE) \S+)` \|/gm)).toEqual(
    OPERATIONS.map(({ method, path }) => `${method.toUpperCase()} ${path}`).sort(),
  );
});
