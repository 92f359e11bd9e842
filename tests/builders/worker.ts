// The planning thread, bundled once for a test file: from source every thread would translate the planner anew.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'vite';

const root = fileURLToPath(new URL('../..', import.meta.url));

/** Bundles the thread as the server's build does. The folder goes when the process ends. */
export async function bundledWorker(): Promise<URL> {
  const folder = mkdtempSync(join(tmpdir(), 'barmline-worker-'));
  process.on('exit', () => rmSync(folder, { recursive: true, force: true }));
  await build({
    // not the server's own list of entries: what only the server needs cannot be bundled
    configFile: false,
    root,
    publicDir: false,
    logLevel: 'error',
    // Nothing is left outside: the bundle does not lie beside node_modules.
    ssr: { noExternal: true },
    build: {
      ssr: true,
      target: 'node20',
      outDir: folder,
      emptyOutDir: true,
      sourcemap: false,
      rolldownOptions: {
        input: { worker: join(root, 'api/runs/worker.ts') },
        output: { entryFileNames: '[name].js' },
      },
    },
  });
  return pathToFileURL(join(folder, 'worker.js'));
}
