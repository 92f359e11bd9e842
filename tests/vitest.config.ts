// How Vitest finds the tests. Browser tests run on their own: see tests/run.mjs.
import { defineConfig } from 'vitest/config';

export default defineConfig({
  root: new URL('..', import.meta.url).pathname,
  test: {
    include: ['tests/**/*.test.ts', 'tests/**/*.test.tsx'],
    exclude: ['tests/browser/**'],
    testTimeout: 60_000,
  },
});
