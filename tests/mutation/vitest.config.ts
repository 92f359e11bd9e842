// The tests that a mutant has to get past: those named in MUTATION_TESTS, see run.mjs.
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  root: fileURLToPath(new URL('../..', import.meta.url)),
  test: {
    include: (process.env.MUTATION_TESTS ?? '').split(',').filter((name) => name !== ''),
    testTimeout: 60_000,
  },
});
