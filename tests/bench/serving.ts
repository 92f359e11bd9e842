// Measures the built server: how soon it stands, what memory it holds at rest, how large the page's JavaScript is.
import { execFileSync, spawn } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { pageDir, root } from '../../api/prepare.mjs';
import { startRealServer } from '../browser/real-server.mjs';
import type { Row } from './measure.ts';

/** Bytes, gzipped, of the scripts that index.html names and of those they import before anything is clicked. */
function firstPageScriptBytes(): number {
  const html = readFileSync(join(pageDir, 'index.html'), 'utf8');
  const wanted = [...html.matchAll(/(?:src|href)="\/?([^"]+\.js)"/g)].map((m) => m[1] as string);
  const seen = new Set<string>();
  let bytes = 0;
  while (wanted.length > 0) {
    const file = wanted.pop() as string;
    if (seen.has(file)) continue;
    seen.add(file);
    const text = readFileSync(join(pageDir, file));
    bytes += gzipSync(text).length;
    for (const m of text.toString('utf8').matchAll(/(?:from|import)\s*"\.\/([^"]+\.js)"/g)) {
      wanted.push(join('assets', m[1] as string));
    }
  }
  return bytes;
}

/** Resident memory of a process and of those it started, MB. */
function residentMb(pid: number): number {
  const table = execFileSync('ps', ['-eo', 'pid=,ppid=,rss='], { encoding: 'utf8' })
    .trim()
    .split('\n')
    .map((line) => line.trim().split(/\s+/).map(Number));
  const of = (id: number): number =>
    table.reduce(
      (sum, [p, parent, rss]) => sum + (p === id ? (rss ?? 0) : parent === id ? of(p ?? 0) : 0),
      0,
    );
  return of(pid) / 1024;
}

export async function servingRows(): Promise<Row[]> {
  const rows: Row[] = [];
  rows.push({
    what: "first page's JavaScript",
    value: firstPageScriptBytes() / 1000,
    unit: 'kB gzipped',
    target: 250,
    better: 'less',
    note: `${readdirSync(join(pageDir, 'assets')).length} files built`,
  });
  const first = await startRealServer('2027-01-02');
  await first.stop(true);
  const began = performance.now();
  const port = 20_000 + Math.floor(Math.random() * 20_000);
  const child = spawn(process.execPath, ['api/start.mjs'], {
    cwd: root,
    stdio: 'ignore',
    env: {
      ...process.env,
      BARMLINE_PORT: String(port),
      BARMLINE_DATA: first.folder,
      BARMLINE_TODAY: '2027-01-02',
    },
  });
  let up = false;
  while (!up && performance.now() - began < 60_000) {
    up = await fetch(`http://127.0.0.1:${port}/api/health`).then(
      (r) => r.ok,
      () => false,
    );
    if (!up) await new Promise((resolve) => setTimeout(resolve, 20));
  }
  rows.push({
    what: 'second start',
    value: (performance.now() - began) / 1000,
    unit: 's',
    target: 3,
    better: 'less',
    note: 'wall clock from the command to the first answer, nothing built or planned anew',
  });
  await fetch(`http://127.0.0.1:${port}/api/plan`).then((r) => r.arrayBuffer());
  await new Promise((resolve) => setTimeout(resolve, 3000));
  rows.push({
    what: 'server at rest',
    value: residentMb(child.pid as number),
    unit: 'MB',
    target: 150,
    better: 'less',
    note: 'resident, three seconds after its first answers',
  });
  child.kill('SIGINT');
  await new Promise((resolve) => child.on('exit', resolve));
  return rows;
}
