// What every request has to pass before a route sees it, and the headers that every answer carries.
import { randomBytes } from 'node:crypto';
import type { Context, MiddlewareHandler } from 'hono';
import { bodyLimit } from 'hono/body-limit';
import { refuse } from './errors.ts';

export const MAX_BODY_BYTES = 8 * 1024 * 1024;

const SAFE_METHODS = new Set(['GET', 'HEAD', 'OPTIONS']);

function hostName(address: string): string | null {
  try {
    return new URL(`http://${address}`).hostname;
  } catch {
    return null;
  }
}

/** Answers only under known names: a page of somebody else that points its own name here gets nothing. */
export const knownHost =
  (hosts: readonly string[]): MiddlewareHandler =>
  async (c, next) => {
    const host = hostName(c.req.header('Host') ?? new URL(c.req.url).host);
    if (host === null || !hosts.includes(host)) {
      return refuse(
        421,
        'unknown-host',
        'This server does not answer under that name. Open it under the address that it printed when it started; ' +
          'BARMLINE_BASE adds another name.',
      );
    }
    return next();
  };

/**
 * Changes only come from the page itself or from a program, never from another site's page. The page's own
 * origin is the base, or the host that the request names (a proxy may name another one than the base).
 * What brings a cookie comes from a browser, and every browser says from which page: silence is refused.
 */
export const sameSite =
  (base: string): MiddlewareHandler =>
  async (c, next) => {
    if (SAFE_METHODS.has(c.req.method)) return next();
    const origin = c.req.header('Origin');
    const site = c.req.header('Sec-Fetch-Site');
    const host = c.req.header('Host') ?? new URL(c.req.url).host;
    const foreignOrigin = origin !== undefined && origin !== base && !sameHost(origin, host);
    const foreignSite = site !== undefined && site !== 'same-origin' && site !== 'none';
    const silent =
      origin === undefined && site === undefined && c.req.header('Cookie') !== undefined;
    if (foreignOrigin || (foreignSite && origin === undefined) || silent) {
      return refuse(403, 'foreign-page', 'A page of another site may not change anything here.');
    }
    return next();
  };

function sameHost(origin: string, host: string): boolean {
  try {
    return new URL(origin).host === new URL(`http://${host}`).host;
  } catch {
    return false;
  }
}

/** A body says what it is, and is not larger than a house of thousands of brews could be. */
export const knownBody: MiddlewareHandler = async (c, next) => {
  const kind = (c.req.header('Content-Type') ?? '').split(';')[0]?.trim().toLowerCase() ?? '';
  // NOTE: over a socket every POST has a body stream, an empty one too: only the headers tell (RFC 9112 §6.3).
  const length = c.req.header('Content-Length') ?? '0';
  const hasBody = c.req.header('Transfer-Encoding') !== undefined || length !== '0';
  const form = kind === 'multipart/form-data' && c.req.path === '/api/house/import';
  const known = kind === 'application/json' || form || (kind === '' && !hasBody);
  if (!known && !SAFE_METHODS.has(c.req.method)) {
    return refuse(
      415,
      'unknown-body',
      'The body has to be JSON and say so: Content-Type: application/json.',
    );
  }
  return next();
};

/** Refuses a body above the limit before it is read. */
export const limitedBody: MiddlewareHandler = bodyLimit({
  maxSize: MAX_BODY_BYTES,
  onError: () =>
    refuse(
      413,
      'too-large',
      `The body is larger than ${MAX_BODY_BYTES / 1024 / 1024} MB, which is the most that is taken.`,
    ),
});

export const MAX_NESTING = 32;

/** Whether a JSON text opens more brackets inside each other than any document here has. */
function nestsTooDeep(json: string): boolean {
  let depth = 0;
  let inText = false;
  for (let at = 0; at < json.length; at += 1) {
    const mark = json[at];
    if (inText) {
      if (mark === '\\') at += 1;
      else if (mark === '"') inText = false;
    } else if (mark === '"') inText = true;
    else if (mark === '[' || mark === '{') {
      depth += 1;
      if (depth > MAX_NESTING) return true;
    } else if (mark === ']' || mark === '}') depth -= 1;
  }
  return false;
}

/** Refuses a body whose nesting alone would wear out whoever walks through it. */
export const shallowBody: MiddlewareHandler = async (c, next) => {
  const kind = c.req.header('Content-Type') ?? '';
  if (!SAFE_METHODS.has(c.req.method) && /^application\/json\b/i.test(kind)) {
    if (nestsTooDeep(await c.req.text())) {
      return refuse(
        400,
        'too-deep',
        `The body nests lists and objects more than ${MAX_NESTING} deep, which no document here does.`,
      );
    }
  }
  return next();
};

/** Puts the headers on an answer that keep a page to itself. No inline script runs, and style only with the nonce. */
export function secure(c: Context, nonce: string | null): void {
  const style = nonce === null ? "'self'" : `'self' 'nonce-${nonce}'`;
  c.header(
    'Content-Security-Policy',
    [
      "default-src 'none'",
      "script-src 'self'",
      `style-src ${style}`,
      "img-src 'self' data: blob:",
      "font-src 'self'",
      "connect-src 'self'",
      "manifest-src 'self'",
      "base-uri 'none'",
      "form-action 'self'",
      "frame-ancestors 'none'",
      "object-src 'none'",
    ].join('; '),
  );
  c.header('X-Content-Type-Options', 'nosniff');
  c.header('Referrer-Policy', 'no-referrer');
  c.header('Cross-Origin-Resource-Policy', 'same-origin');
  c.header('Cross-Origin-Opener-Policy', 'same-origin');
}

/** Before the route runs: headers put on a finished answer would make the server take it apart and build it anew. */
export const securityHeaders: MiddlewareHandler = (c, next) => {
  secure(c, null);
  return next();
};

/** A fresh one for each page that is served. */
export function makeNonce(): string {
  return randomBytes(16).toString('base64url');
}
