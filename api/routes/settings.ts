// Where the server can be reached, and how to change that.
import { Hono } from 'hono';
import type { z } from 'zod';
import type { Parts } from './parts.ts';
import type { SettingsAnswer } from './shapes.ts';

const LOOPBACK = /^(localhost|127(\.\d{1,3}){3}|\[::1\]|::1)$/;

/** Whether only this machine answers to a host name. */
export function isLoopback(host: string): boolean {
  return LOOPBACK.test(host);
}

/** What the reachable base means, in words. */
export function settingsOf(base: string): z.infer<typeof SettingsAnswer> {
  const loopback = isLoopback(new URL(base).hostname);
  return {
    base,
    loopback,
    says: loopback
      ? `The addresses begin with ${base}, which only this machine can reach: a phone cannot subscribe to them. ` +
        'To change that, set a password with npm run password, then start with BARMLINE_BASE set to the address ' +
        'under which your devices reach this server. ' +
        'Behind a reverse proxy on this machine: BARMLINE_BASE=https://brewhouse.example npm start. ' +
        'In your own network: BARMLINE_HOST=0.0.0.0 BARMLINE_BASE=http://192.168.1.20:8642 npm start, ' +
        'with the address of this machine.'
      : `The addresses begin with ${base}. Whoever holds the address of a calendar can read it, so treat it like a key.`,
  };
}

export const settingsRoutes = (parts: Parts) =>
  new Hono().get('/', (c) => c.json(settingsOf(parts.base), 200));
