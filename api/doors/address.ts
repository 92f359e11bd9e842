// Where a request comes from; what a proxy says about it counts only where that proxy was named.
import { getConnInfo } from '@hono/node-server/conninfo';
import type { Context } from 'hono';

const UNKNOWN = 'unknown';

/** An IPv4 address that arrives over a socket of the newer protocol is still that address. */
const plain = (address: string) => address.trim().replace(/^::ffff:(?=\d+\.)/, '');

function peerOf(c: Context): string {
  try {
    return plain(getConnInfo(c).remote.address ?? UNKNOWN);
  } catch {
    return UNKNOWN;
  }
}

/**
 * The address that a request comes from: the peer's own, or, where the peer is a proxy that was named,
 * the last one in X-Forwarded-For that is none of these. Whatever stands before it anybody may have written.
 */
export function addressOf(c: Context, proxies: readonly string[]): string {
  const peer = peerOf(c);
  if (!proxies.includes(peer)) return peer;
  const told = (c.req.header('X-Forwarded-For') ?? '').split(',').map(plain);
  return told.reverse().find((one) => one !== '' && !proxies.includes(one)) ?? peer;
}
