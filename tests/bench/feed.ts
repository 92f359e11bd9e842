// Measures the calendar's address: how many 'not changed' a second, and how long 20 subscribers wait while a large season is planned.
import { readFolder } from '../../api/folder/index.ts';
import { startRealServer } from '../browser/real-server.mjs';
import type { Row } from './measure.ts';

const SUBSCRIBERS = 20;

async function tell<T>(
  base: string,
  method: string,
  path: string,
  body: object,
  match?: string,
): Promise<T> {
  const answer = await fetch(`${base}${path}`, {
    method,
    headers: {
      'Content-Type': 'application/json',
      ...(match === undefined ? {} : { 'If-Match': match }),
    },
    body: JSON.stringify(body),
  });
  if (!answer.ok) throw new Error(`${path}: ${await answer.text()}`);
  return (await answer.json()) as T;
}

/** Asks as fast as answers come, over a few connections. @returns answers a second */
async function unchangedASecond(address: string, tag: string, seconds: number): Promise<number> {
  let answers = 0;
  const end = performance.now() + seconds * 1000;
  const asker = async () => {
    while (performance.now() < end) {
      const answer = await fetch(address, { headers: { 'If-None-Match': tag } });
      await answer.arrayBuffer();
      if (answer.status !== 304) throw new Error(`answered with ${answer.status}`);
      answers += 1;
    }
  };
  await Promise.all(Array.from({ length: 8 }, asker));
  return answers / seconds;
}

/** Waits of subscribers who ask twice a second until they are told to stop, ms. */
async function waits(address: string, goesOn: () => boolean): Promise<number[]> {
  const all: number[] = [];
  const subscriber = async (_: unknown, index: number) => {
    await new Promise((resolve) => setTimeout(resolve, index * 25));
    while (goesOn()) {
      const from = performance.now();
      await (await fetch(address)).arrayBuffer();
      all.push(performance.now() - from);
      await new Promise((resolve) => setTimeout(resolve, 500));
    }
  };
  await Promise.all(Array.from({ length: SUBSCRIBERS }, subscriber));
  return all.sort((a, b) => a - b);
}

/** Rows about the feed, on the built server. */
export async function feedRows(): Promise<Row[]> {
  const server = await startRealServer('2027-01-02');
  try {
    const { base } = server;
    const { made } = await tell<{ made: { address: string } }>(base, 'POST', '/api/feeds', {});
    const first = await fetch(made.address);
    await first.arrayBuffer();
    const tag = first.headers.get('ETag') ?? '';
    await unchangedASecond(made.address, tag, 1);
    const perSecond = await unchangedASecond(made.address, tag, 5);

    const { house } = await readFolder(new URL('../seasons/quay-seven', import.meta.url).pathname);
    if (house === null) throw new Error('quay-seven cannot be read');
    await tell(base, 'PUT', '/api/house?startOver=true', house, '1');
    const { run } = await tell<{ run: { id: string } }>(base, 'POST', '/api/runs', {});
    let running = true;
    const watch = async () => {
      while (running) {
        const { run: now } = await server.read<{ run: { id: string; state: string } }>(
          '/api/runs/current',
        );
        running = now.id === run.id && now.state === 'running';
        await new Promise((resolve) => setTimeout(resolve, 200));
      }
    };
    const [sorted] = await Promise.all([waits(made.address, () => running), watch()]);
    const p99 = sorted[Math.floor(sorted.length * 0.99)] ?? Number.NaN;
    return [
      {
        what: "calendar: 'not changed' answers",
        value: perSecond,
        unit: 'a second',
        target: null,
        better: 'more',
        note: 'If-None-Match over 8 connections, one server process, asked from the same machine',
      },
      {
        what: 'calendar: wait of 20 subscribers while 60 brews are planned, 99th of 100',
        value: p99,
        unit: 'ms',
        target: 100,
        better: 'less',
        note: `${sorted.length} fetches of the whole feed`,
      },
    ];
  } finally {
    await server.stop();
  }
}
