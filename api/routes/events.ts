// A run as server-sent events: told now and at every change, until it has ended.
import type { Context } from 'hono';
import { streamSSE } from 'hono/streaming';
import type { Runs } from '../runs/index.ts';
import type { Run } from './shapes.ts';

const HEARTBEAT_MS = 15_000;

/** Streams `progress` …, then one of `done`, `stopped`, `failed`, each with `{"run": …}`. The run has to be there. */
export function runEvents(c: Context, runs: Pick<Runs, 'subscribe'>, id: string): Response {
  return streamSSE(c, async (stream) => {
    await new Promise<void>((resolve) => {
      let queue: Promise<void> = Promise.resolve();
      const send = (event: string, data: string) => {
        queue = queue.then(() => stream.writeSSE({ event, data })).catch(() => undefined);
      };
      const heartbeat = setInterval(() => send('still-here', ''), HEARTBEAT_MS);
      let leave: (() => void) | null = null;
      const over = () => {
        clearInterval(heartbeat);
        leave?.();
        void queue.then(resolve);
      };
      stream.onAbort(over);
      leave = runs.subscribe(id, (run: Run) => {
        send(run.state === 'running' ? 'progress' : run.state, JSON.stringify({ run }));
        if (run.state !== 'running') over();
      });
    });
  });
}
