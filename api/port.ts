// Opening the port, and naming the next free one when it is taken.
import type { Server } from 'node:http';
import { createServer } from 'node:net';

function canListen(port: number, host: string): Promise<boolean> {
  return new Promise((resolve) => {
    const probe = createServer();
    probe.once('error', () => resolve(false));
    probe.listen(port, host, () => probe.close(() => resolve(true)));
  });
}

/** The first free port above one, or null where twenty in a row are taken. */
export async function nextFreePort(port: number, host: string): Promise<number | null> {
  for (let next = port + 1; next <= Math.min(65_535, port + 20); next += 1) {
    if (await canListen(next, host)) return next;
  }
  return null;
}

/** The port cannot be opened; the message says what to do. */
export class PortError extends Error {
  override name = 'PortError';
}

/** Opens the port. @throws PortError with the next free port where this one is taken */
export async function listen(server: Server, port: number, host: string): Promise<void> {
  try {
    await new Promise<void>((resolve, reject) => {
      server.once('error', reject);
      server.listen(port, host, () => {
        server.off('error', reject);
        resolve();
      });
    });
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? error.code : null;
    if (code !== 'EADDRINUSE') {
      throw new PortError(
        `Port ${port} on ${host} cannot be opened (${String(code)}). Set BARMLINE_PORT or BARMLINE_HOST to another one.`,
      );
    }
    const next = await nextFreePort(port, host);
    throw new PortError(
      `Port ${port} on ${host} is taken: another program, perhaps Barmline itself, uses it.\n` +
        (next === null
          ? 'Set BARMLINE_PORT to a free port and start again.'
          : `Port ${next} is free; to use it:\n\n  BARMLINE_PORT=${next} npm start\n`),
    );
  }
}
