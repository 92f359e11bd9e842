// How the server and the commands are bundled into .build/server: our own sources together, npm packages left outside.
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vite';

const root = fileURLToPath(new URL('..', import.meta.url));

/** Each becomes .build/server/<name>.js, all side by side: worker.js lies beside whoever starts it. */
const entries = {
  main: 'api/main.ts',
  worker: 'api/runs/worker.ts',
  'plan-command': 'api/plan-command.ts',
  'schema-command': 'api/schema-command.ts',
  'password-command': 'api/password-command.ts',
};

const input = Object.fromEntries(
  Object.entries(entries).map(([name, file]) => [name, join(root, file)]),
);

export default defineConfig({
  root,
  publicDir: false,
  build: {
    ssr: true,
    target: 'node20',
    outDir: join(root, '.build/server'),
    sourcemap: true,
    rolldownOptions: {
      input,
      output: { entryFileNames: '[name].js', chunkFileNames: '[name]-[hash].js' },
    },
  },
});
