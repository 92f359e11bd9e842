// What a measurement is, and how a run of them becomes the table in docs/benchmarks.md.

import { execFileSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { cpus } from 'node:os';

export type Row = {
  /** What is measured: the key by which the next run finds it again. */
  what: string;
  value: number;
  unit: string;
  /** What it should stay within, in the same unit, or null where it is only watched. */
  target: number | null;
  /** Which way is better. */
  better: 'less' | 'more';
  note: string;
};

const FILE = new URL('../../docs/benchmarks.md', import.meta.url);
/** A change by less than this is the machine, not the code. */
const NOISE = 0.25;

const shown = (n: number): string =>
  Math.abs(n) >= 1000 ? n.toFixed(0) : Math.abs(n) >= 10 ? n.toFixed(1) : n.toFixed(2);

/** CPU seconds that `work` takes in this process. */
export function cpuSeconds<T>(work: () => T): { result: T; seconds: number } {
  const before = process.cpuUsage();
  const result = work();
  const used = process.cpuUsage(before);
  return { result, seconds: (used.user + used.system) / 1e6 };
}

/** The figures of the run before, by what was measured. */
function before(): Map<string, number> {
  const known = new Map<string, number>();
  let text = '';
  try {
    text = readFileSync(FILE, 'utf8');
  } catch {
    return known;
  }
  for (const line of text.split('\n')) {
    const cells = line.split('|').map((cell) => cell.trim());
    const value = Number.parseFloat(cells[2] ?? '');
    if (cells.length > 6 && cells[1] && Number.isFinite(value)) known.set(cells[1], value);
  }
  return known;
}

function verdict(row: Row, old: number | undefined): string {
  const says: string[] = [];
  if (row.target !== null) {
    const met = row.better === 'less' ? row.value <= row.target : row.value >= row.target;
    says.push(met ? 'met' : '**missed**');
  }
  if (old !== undefined && old !== 0) {
    const worse = row.better === 'less' ? row.value / old - 1 : old / Math.max(1e-9, row.value) - 1;
    if (worse > NOISE) says.push('**worse than before**');
  }
  return says.join(', ');
}

/** Writes the table; rows of the run before that were not measured now are dropped. */
export function writeTable(rows: readonly Row[], about: readonly string[]): void {
  const old = before();
  const commit = execFileSync('git', ['rev-parse', '--short', 'HEAD'], { encoding: 'utf8' }).trim();
  const lines = [
    '# Benchmarks',
    '',
    '<!-- written by npm run bench -->',
    `Commit ${commit}, ${new Date().toISOString().slice(0, 10)}, ${cpus().length} × ${cpus()[0]?.model.trim() ?? 'unknown processor'}, Node ${process.versions.node}.`,
    'Seconds are CPU seconds of the planning thread unless a note says otherwise. "Before" is the run before this one;',
    `a figure more than ${NOISE * 100} % worse is marked.`,
    '',
    '| what | value | unit | target | before | | note |',
    '|---|---|---|---|---|---|---|',
    ...rows.map((row) => {
      const was = old.get(row.what);
      const target =
        row.target === null ? '' : `${row.better === 'less' ? '≤' : '≥'} ${shown(row.target)}`;
      return `| ${row.what} | ${shown(row.value)} | ${row.unit} | ${target} | ${was === undefined ? '' : shown(was)} | ${verdict(row, was)} | ${row.note} |`;
    }),
    '',
    ...about,
    '',
  ];
  writeFileSync(FILE, lines.join('\n'));
}
