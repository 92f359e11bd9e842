// Where in the files the problems of an import lie. Pure.
import type { Problem } from '../../../../planner/index.ts';
import type { ImportTable } from '../../../queries/import.ts';

export type Place = { file: string; line: number | null; column: string | null };

/** `brews.csv:7:og` as file, line and column; a column may hold a colon itself. */
export function placeOf(path: string): Place {
  const [file = '', line, ...column] = path.split(':');
  return {
    file,
    line: line !== undefined && /^\d+$/.test(line) ? Number(line) : null,
    column: column.length > 0 ? column.join(':') : null,
  };
}

export type TableProblems = {
  /** Of the file as a whole, and of its first line. */
  whole: Problem[];
  ofLine: ReadonlyMap<number, { column: string | null; problem: Problem }[]>;
};

/** The problems of one table, by line. */
export function problemsIn(table: ImportTable, problems: readonly Problem[]): TableProblems {
  const whole: Problem[] = [];
  const ofLine = new Map<number, { column: string | null; problem: Problem }[]>();
  const lines = new Set(table.rows.map(({ line }) => line));
  for (const problem of problems) {
    const { file, line, column } = placeOf(problem.path);
    if (file !== table.file) continue;
    if (line === null || !lines.has(line)) whole.push(problem);
    else ofLine.set(line, [...(ofLine.get(line) ?? []), { column, problem }]);
  }
  return { whole, ofLine };
}

/** Columns of a table that nothing in its header was taken for. */
export const freeColumns = (table: ImportTable): string[] =>
  table.known.filter((name) => table.header.every(({ column }) => column !== name));
