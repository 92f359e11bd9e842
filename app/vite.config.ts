// How the page is built into .build/app, and served while it is worked on.
import { fileURLToPath } from 'node:url';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

const here = fileURLToPath(new URL('.', import.meta.url));
const server = process.env.BARMLINE_DEV_API ?? 'http://127.0.0.1:7420';

export default defineConfig({
  root: here,
  plugins: [react()],
  build: {
    outDir: fileURLToPath(new URL('../.build/app', import.meta.url)),
    emptyOutDir: true,
    target: 'es2023',
    // The content security policy lets nothing inline in: no data: addresses, no polyfill script.
    assetsInlineLimit: 0,
    chunkSizeWarningLimit: 700,
    modulePreload: { polyfill: false },
    rolldownOptions: {
      // The page takes a few pure converters from the planner; the rest of it must fall away.
      treeshake: {
        moduleSideEffects: [{ test: /[\\/](planner|zod|luxon)[\\/]/, sideEffects: false }],
      },
    },
  },
  server: {
    port: 5173,
    strictPort: false,
    proxy: { '/api': server, '/feed': server },
  },
});
