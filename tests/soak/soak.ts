// Lets the real server run under users, subscribers and re-plans, and watches its memory and its open descriptors.
import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { startServer } from '../kill/server.ts';
import { dice, nothingYet, writeOn } from '../kill/user.ts';
import { brewOn, type Lived } from './brewer.ts';

const minutes = Number(process.argv[2] ?? 30);
if (!(minutes >= 0.5 && minutes <= 10_000)) {
  process.stderr.write('How many minutes, from 0.5 on: npm run soak -- 30\n');
  process.exit(2);
}

/** Two users who tell something twice as often would leave the brewer no draft that is not stale. */
const USER_PAUSE_MS = 6000;

/** How long nobody asks before what is open at rest is counted. */
const REST_MS = 8000;

/** Connections to the database that are kept for the next to come, and a socket or two. */
const MORE_DESCRIPTORS = 12;

/** What memory may grow a minute once it is warm; a third of a gigabyte a day would be noticed on a small box. */
const FLAT_MB_A_MINUTE = 0.25;

const say = (line: string) => process.stdout.write(`${line}\n`);
const pause = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms));

type Sample = { minute: number; residentMb: number; descriptors: number };

/** Resident memory and open descriptors as the kernel tells them; Linux only. */
function sample(pid: number, minute: number): Sample {
  const status = readFileSync(`/proc/${pid}/status`, 'utf8');
  const kilobytes = Number(/^VmRSS:\s+(\d+) kB/m.exec(status)?.[1]);
  return {
    minute,
    residentMb: kilobytes / 1024,
    descriptors: readdirSync(`/proc/${pid}/fd`).length,
  };
}

/** Least squares: how much a figure grows a minute. */
function slope(samples: readonly Sample[], of: (one: Sample) => number): number {
  const n = samples.length;
  const meanX = samples.reduce((sum, { minute }) => sum + minute, 0) / n;
  const meanY = samples.reduce((sum, one) => sum + of(one), 0) / n;
  const top = samples.reduce((sum, one) => sum + (one.minute - meanX) * (of(one) - meanY), 0);
  return top / samples.reduce((sum, { minute }) => sum + (minute - meanX) ** 2, 0);
}

/**
 * The least of every minute: a run of the planner has a thread of its own and takes its memory with it when it ends,
 * so peaks tell how many runs there were and only the least tells what stays.
 */
function leastOfEachMinute(samples: readonly Sample[]): Sample[] {
  const least = new Map<number, Sample>();
  for (const one of samples) {
    const minute = Math.floor(one.minute);
    const before = least.get(minute);
    if (before === undefined || one.residentMb < before.residentMb) least.set(minute, one);
  }
  return [...least.values()];
}

function megabytes(name: string): string {
  const bytes = statSync(join(folder, name), { throwIfNoEntry: false })?.size ?? 0;
  return (bytes / 1e6).toFixed(1);
}

const folder = mkdtempSync(join(tmpdir(), 'barmline-soak-'));
const server = await startServer(folder, { BARMLINE_TODAY: '2027-01-02' });
try {
  await server.up;
  const pid = server.child.pid ?? 0;
  const { base } = server;
  const made = await fetch(`${base}/api/feeds`, {
    method: 'POST',
    headers: { 'Content-Type': 'application/json' },
    body: '{}',
  });
  const { address } = ((await made.json()) as { made: { address: string } }).made;
  await pause(REST_MS);
  const before = sample(pid, 0);
  const counts = { polls: 0, unchanged: 0, odd: 0 };
  let over = false;

  const subscriber = async () => {
    let tag = '';
    while (!over) {
      const answer = await fetch(address, { headers: { 'If-None-Match': tag } }).catch(() => null);
      if (answer === null) return;
      await answer.arrayBuffer();
      counts.polls += 1;
      if (answer.status === 304) counts.unchanged += 1;
      else if (answer.status !== 200) counts.odd += 1;
      tag = answer.headers.get('ETag') ?? tag;
      await pause(500);
    }
  };
  const kept = nothingYet();
  const lived: Lived = { slips: 0, takenBack: 0, runs: 0, adopted: 0 };
  const others = [
    ...Array.from({ length: 20 }, subscriber),
    ...[1, 2].map((seed) => writeOn(base, seed, dice(seed), kept, USER_PAUSE_MS, () => !over)),
    brewOn(base, 3, lived, () => !over),
  ];
  const samples: Sample[] = [];
  const from = Date.now();
  for (;;) {
    await pause(Math.min(10_000, minutes * 3000));
    const minute = (Date.now() - from) / 60_000;
    samples.push(sample(pid, minute));
    if (minute >= minutes) break;
  }
  over = true;
  await Promise.all(others);
  // Connections that nobody uses are closed after five seconds: what is open then stays open.
  await pause(REST_MS);
  const atRest = sample(pid, minutes);
  server.child.kill('SIGINT');
  await server.gone;

  // The first third warms up: caches fill and the code is compiled.
  const settled = samples.slice(Math.floor(samples.length / 3));
  const descriptors = samples.map((one) => one.descriptors);
  const memory = samples.map((one) => one.residentMb);
  const growth = slope(leastOfEachMinute(settled), (one) => one.residentMb);
  const writes = kept.news.size + kept.houses.size + kept.feeds.size;
  say(
    `${minutes} minutes: ${counts.polls} polls by 20 subscribers (${counts.unchanged} unchanged, ${counts.odd} odd), ` +
      `${writes} writes by 2 users; ${lived.slips} slips and ${lived.takenBack} taken back by a brewer, ` +
      `${lived.adopted + kept.adopted.length} plans adopted`,
  );
  for (const one of leastOfEachMinute(samples)) {
    say(`  minute ${Math.floor(one.minute)}: ${one.residentMb.toFixed(0)} MB at least`);
  }
  say(
    `memory: ${memory[0]?.toFixed(0)} MB at first, ${memory.at(-1)?.toFixed(0)} MB at last, ${Math.max(...memory).toFixed(0)} MB at most`,
  );
  const told = minutes < 5 ? 'too short to tell' : `${growth.toFixed(2)} MB a minute`;
  say(`slope of each minute's least, after the first third: ${told}`);
  say(
    `descriptors: ${before.descriptors} at rest before, ${atRest.descriptors} at rest afterwards, ${Math.max(...descriptors)} at most`,
  );
  say(`database: ${megabytes('barmline.db')} MB, its log ${megabytes('barmline.db-wal')} MB`);
  const leaks = atRest.descriptors > before.descriptors + MORE_DESCRIPTORS;
  // A short run is still warming up: it is told, not judged.
  const grows = minutes >= 20 && growth > FLAT_MB_A_MINUTE;
  if (counts.odd > 0 || leaks || grows || lived.adopted === 0) process.exitCode = 1;
} finally {
  server.child.kill('SIGKILL');
  rmSync(folder, { recursive: true, force: true });
}
