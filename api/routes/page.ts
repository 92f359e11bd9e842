// Serves the built page.
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { serveStatic } from '@hono/node-server/serve-static';
import { type Context, Hono, type MiddlewareHandler } from 'hono';
import { refuse } from './errors.ts';
import { makeNonce, secure } from './guards.ts';

/** The first page; the nonce in its head lets the component library add its few style elements. */
async function firstPage(c: Context, folder: string) {
  const html = await readFile(join(folder, 'index.html'), 'utf8').catch(() =>
    refuse(
      404,
      'no-page',
      'The page is not built yet: npm start builds it. The API answers anyway.',
    ),
  );
  const nonce = makeNonce();
  secure(c, nonce);
  c.header('Cache-Control', 'no-cache');
  return c.html(
    html.replace('<head>', `<head><meta property="csp-nonce" content="${nonce}">`),
    200,
  );
}

const kept =
  (cacheControl: string): MiddlewareHandler =>
  async (c, next) => {
    await next();
    if (c.res.status === 200) c.header('Cache-Control', cacheControl);
  };

/** Assets carry a hash of their content in the name and may be kept for good. */
export const pageRoutes = (folder: string) =>
  new Hono()
    .get('/', (c) => firstPage(c, folder))
    .get('/index.html', (c) => c.redirect('/', 301))
    .use('/assets/*', kept('public, max-age=31536000, immutable'), serveStatic({ root: folder }))
    .get('*', kept('no-cache'), serveStatic({ root: folder }));
