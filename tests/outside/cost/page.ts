// The defaults as docs/planner.md prints them: settings and weights by kind of house, read from its tables.
import { readFileSync } from 'node:fs';

const page = readFileSync(new URL('../../../docs/planner.md', import.meta.url), 'utf8');

function rows(name: string): string[][] {
  const from = page.indexOf(`<!-- ${name} -->`);
  const to = page.indexOf(`<!-- /${name} -->`);
  if (from < 0 || to < 0) throw new Error(`docs/planner.md has no table of ${name}`);
  return page
    .slice(from, to)
    .split('\n')
    .filter((line) => line.startsWith('| ') && !line.startsWith('|---'))
    .slice(1)
    .map((line) => line.split(/(?<!\\)\|/).map((cell) => cell.trim().replaceAll('\\|', '|')))
    .map((cells) => cells.slice(1, -1));
}

type Kind = 'home' | 'nano';

function byKind(list: [key: string, home: string, nano: string][], kind: Kind) {
  return new Map(
    list
      .filter(([, home]) => home !== '')
      .map(([key, home, nano]) => [key, Number(kind === 'home' ? home : nano)] as const),
  );
}

/** A number by name; a name that the page does not know is an error of the reader. */
export type Numbers = (name: string) => number;

const reader =
  (defaults: Map<string, number>, own: Record<string, number | undefined>): Numbers =>
  (name) => {
    const value = own[name] ?? defaults.get(name);
    if (value === undefined) throw new Error(`docs/planner.md has no number for ${name}`);
    return value;
  };

export const settingsOf = (kind: Kind, own: Record<string, number | undefined>): Numbers =>
  reader(
    byKind(
      rows('settings').map(([key = '', home = '', nano = '']) => [
        key.replaceAll('`', ''),
        home,
        nano,
      ]),
      kind,
    ),
    own,
  );

export const weightsOf = (kind: Kind, own: Record<string, number>): Numbers =>
  reader(
    byKind(
      rows('rules').map(([link = '', , , home = '', nano = '']) => [
        /\[(.+?)\]/.exec(link)?.[1] ?? '',
        home,
        nano,
      ]),
      kind,
    ),
    own,
  );
