// Serves the built page.
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { serveStatic } from '@hono/node-server/serve-static';
import { type Context, Hono } from 'hono';
import { makeNonce, secure } from './guards.ts';

/** The first page; the nonce in its head lets the component library add its few style elements. */
async function firstPage(c: Context, folder: string) {
  const html = await readFile(join(folder, 'index.html'), 'utf8');
  const nonce = makeNonce();
  secure(c, nonce);
  c.header('Cache-Control', 'no-cache');
  return c.html(
    html.replace('<head>', `<head><meta property="csp-nonce" content="${nonce}">`),
    200,
  );
}

/** Assets carry a hash of their content in the name and may be kept for good. */
export const pageRoutes = (folder: string) =>
  new Hono()
    .get('/', (c) => firstPage(c, folder))
    .get('/index.html', (c) => c.redirect('/', 301))
    .use(
      '/assets/*',
      serveStatic({
        root: folder,
        onFound: (_path, c) => c.header('Cache-Control', 'public, max-age=31536000, immutable'),
      }),
    )
    .get(
      '*',
      serveStatic({ root: folder, onFound: (_path, c) => c.header('Cache-Control', 'no-cache') }),
    );
