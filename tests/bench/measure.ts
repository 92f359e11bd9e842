// What a measurement is, and how a run of them becomes the table in docs/benchmarks.md.

import { execFileSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { cpus } from 'node:os';
import { MISSED } from './missed.ts';

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

function fileText(): string {
  try {
    return readFileSync(FILE, 'utf8');
  } catch {
    return '';
  }
}

/** The figures of the run before, by what was measured. */
function before(text: string): Map<string, number> {
  const known = new Map<string, number>();
  for (const line of text.split('\n')) {
    const cells = line.split('|').map((cell) => cell.trim());
    const value = Number.parseFloat(cells[2] ?? '');
    if (cells.length > 6 && cells[1] && Number.isFinite(value)) known.set(cells[1], value);
  }
  return known;
}

/** Whether a row is within its target. No figure is not. */
const met = ({ value, target, better }: Row): boolean =>
  target === null || (better === 'less' ? value <= target : value >= target);

function verdict(row: Row, old: number | undefined): string {
  const says: string[] = [];
  if (row.target !== null) says.push(met(row) ? 'met' : '**missed**');
  if (old !== undefined && old !== 0) {
    const worse = row.better === 'less' ? row.value / old - 1 : old / Math.max(1e-9, row.value) - 1;
    if (worse > NOISE) says.push('**worse than before**');
  }
  return says.join(', ');
}

/** What stands in the file of each section: from its mark to the next. */
function standing(text: string): Map<string, string> {
  const out = new Map<string, string>();
  for (const part of text.split('<!-- section ').slice(1)) {
    const name = part.slice(0, part.indexOf(' '));
    out.set(name, `<!-- section ${part}`.trimEnd());
  }
  return out;
}

function verdictLine(row: Row, was: number | undefined): string {
  const target =
    row.target === null ? '' : `${row.better === 'less' ? '≤' : '≥'} ${shown(row.target)}`;
  return `| ${row.what} | ${shown(row.value)} | ${row.unit} | ${target} | ${was === undefined ? '' : shown(was)} | ${verdict(row, was)} | ${row.note} |`;
}

/** Writes the rows of one section into docs/benchmarks.md; the other sections stay as they were measured. */
export function writeSections(
  name: string,
  title: string,
  rows: readonly Row[],
  quick: boolean,
  order: readonly string[],
): void {
  const text = fileText();
  const old = before(text);
  const sections = standing(text);
  const commit = execFileSync('git', ['rev-parse', '--short', 'HEAD'], { encoding: 'utf8' }).trim();
  const when = new Date().toISOString().slice(0, 10);
  const machine = `${cpus().length} × ${cpus()[0]?.model.trim() ?? 'unknown processor'}, Node ${process.versions.node}`;
  const lines = [
    `<!-- section ${name} -->`,
    `## ${title}`,
    '',
    `Commit ${commit}, ${when}, ${machine}${quick ? ', a quick look only' : ''}. Anew: \`npm run bench -- ${name}\`.`,
    '',
    '| what | value | unit | target | before | | note |',
    '|---|---|---|---|---|---|---|',
    ...rows.map((row) => verdictLine(row, old.get(row.what))),
  ];
  const why = MISSED[name];
  if (why && !rows.every(met)) lines.push('', `What is missed, and why: ${why}`);
  sections.set(name, lines.join('\n'));
  const known = order.filter((section) => sections.has(section));
  writeFileSync(FILE, `${[HEAD, ...known.map((section) => sections.get(section))].join('\n\n')}\n`);
}

const HEAD = `# Benchmarks

<!-- written by npm run bench -->
Seconds are CPU seconds of the planning thread unless a note says otherwise. "Before" is the run before this one; a figure more
than ${NOISE * 100} % worse is marked. \`npm run bench\` measures all, \`npm run bench -- NAME\` one section, \`--quick\` takes a first look;
\`npm run bench -- long\` looks for better plans for the book of the best known (\`tests/bench/best-known.json\`).`;
