// One CSV file of a season folder to rows for the house's schema, each with its line.
import Papa from 'papaparse';
import type { Problem } from '../../planner/index.ts';
import { readCell } from './cells.ts';
import { type Column, CSV_FILES, type CsvList, columnsOf, requiredColumns } from './columns.ts';
import { guessColumn } from './guesses.ts';
import { fileProblem } from './problem.ts';

/** What a person said about a file beside the file itself. */
export type CsvWish = {
  /** What a cell of the header means, as a column that is known; '': leave it aside. */
  columns?: Readonly<Record<string, string>>;
  /** Cells to be read as if this stood there. */
  corrections?: readonly { line: number; column: string; text: string }[];
};

/** The file cell by cell, as it was read. */
export type CsvTable = {
  header: { cell: string; column: string | null; guess: string | null }[];
  rows: { line: number; cells: string[] }[];
};

export type CsvReading = {
  rows: { [field: string]: unknown }[];
  /** The line of each row, counted from 1. */
  lines: number[];
  problems: Problem[];
  /** Lines of which the cells cannot be told apart: what is missing there is not said again. */
  unreadable: ReadonlySet<number>;
  /** Columns that have to be there and are not: what is missing in their cells is not said again. */
  missingColumns: ReadonlySet<string>;
  table: CsvTable;
};

type RawRow = { line: number; cells: string[]; quotes: boolean };

const DELIMITERS = [',', ';', '\t'] as const;
const DELIMITER_NAME = { ',': 'commas', ';': 'semicolons', '\t': 'tabs' } as const;

/** What the cells are separated by: the sign that stands most often in the header. */
function delimiterOf(text: string): (typeof DELIMITERS)[number] {
  const header = text.slice(0, text.indexOf('\n') + 1 || text.length).replace(/"[^"]*"/g, '');
  const count = (sign: string) => header.split(sign).length;
  return DELIMITERS.reduce((best, sign) => (count(sign) > count(best) ? sign : best));
}

function splitRows(text: string, delimiter: string): RawRow[] {
  const rows: RawRow[] = [];
  let line = 1;
  let from = 0;
  Papa.parse<string[]>(text, {
    delimiter,
    newline: '\n',
    step: ({ data, errors, meta }) => {
      const cells = data.map((cell) => cell.trim());
      const quotes = errors.some((error) => error.type === 'Quotes');
      if (cells.some((cell) => cell !== '')) rows.push({ line, cells, quotes });
      for (let at = from; at < meta.cursor; at++) if (text[at] === '\n') line++;
      from = meta.cursor;
    },
  });
  return rows;
}

type KnownColumn = { field: string; column: Column };

/** What each cell of the header stands for; null where it stands for nothing that is known. */
function readHeader(
  list: CsvList,
  header: RawRow,
  wished: NonNullable<CsvWish['columns']>,
  problems: Problem[],
): (KnownColumn | null)[] {
  const { file } = CSV_FILES[list];
  const columns = columnsOf(list);
  const names = columns.map(([, { column }]) => column);
  const seen = new Set<string>();
  return header.cells.map((cell) => {
    const wish = Object.hasOwn(wished, cell) ? wished[cell] : undefined;
    const name = (wish ?? cell).toLowerCase();
    if (name === '') return null;
    const known = columns.find(([, { column }]) => column === name);
    const doubled = seen.has(name);
    seen.add(name);
    if (known && !doubled) return { field: known[0], column: known[1] };
    const meant = guessColumn(list, name);
    problems.push(
      fileProblem({
        code: known ? 'doubled-column' : 'unknown-column',
        path: `${file}:${header.line}:${cell}`,
        value: cell,
        bound: known ? null : `one of ${names.join(', ')}`,
        message: known
          ? `${file} has the column ${name} twice.`
          : `${file} has a column “${cell}” that is not known.`,
        remedy: known
          ? 'Remove one of the two; only the first was read.'
          : meant === null || seen.has(meant)
            ? 'Remove it, or correct its name.'
            : `Rename it to ${meant}, or remove it.`,
      }),
    );
    return null;
  });
}

function missingColumnProblem(list: CsvList, line: number, column: string): Problem {
  const { file } = CSV_FILES[list];
  return fileProblem({
    code: 'missing-column',
    path: `${file}:${line}:${column}`,
    bound: `a column ${column}`,
    message: `${file} has no column ${column}.`,
    remedy: `Add the column ${column} to the first line, and its value to each row.`,
  });
}

function noHeaderProblem(list: CsvList, header: RawRow | undefined): Problem {
  const { file } = CSV_FILES[list];
  const names = columnsOf(list)
    .filter(([, { extra }]) => extra === undefined)
    .map(([, { column }]) => column);
  return fileProblem({
    code: 'no-header',
    path: `${file}:${header?.line ?? 1}`,
    value: header?.cells.join(',').slice(0, 80) ?? null,
    bound: names.join(','),
    message: header
      ? `The first line of ${file} names none of its columns.`
      : `${file} is empty: not even its columns are named.`,
    remedy: `Make this the first line: ${names.join(',')}`,
  });
}

const unreadable = (file: string, row: RawRow, excess: string | undefined): Problem =>
  row.quotes
    ? fileProblem({
        code: 'broken-quotes',
        path: `${file}:${row.line}`,
        value: row.cells.join(',').slice(0, 80),
        message: `A double quote in line ${row.line} of ${file} opens or closes where it should not.`,
        remedy:
          'Put a cell that holds a quote between quotes, and write the quote inside it twice.',
      })
    : fileProblem({
        code: 'too-many-cells',
        path: `${file}:${row.line}`,
        value: excess ?? null,
        message: `Line ${row.line} of ${file} has more cells than there are columns.`,
        remedy: 'Put a cell that holds the separating sign between double quotes.',
      });

/**
 * Reads the rows of one file. Cells that cannot be read as what their column holds stay text, for the
 * schema to refuse; here only what concerns the file as a table is said.
 */
export function readCsv(list: CsvList, text: string, wish: CsvWish = {}): CsvReading {
  const { file } = CSV_FILES[list];
  const delimiter = delimiterOf(text);
  const [header, ...body] = splitRows(text, delimiter);
  const reading = {
    rows: [] as CsvReading['rows'],
    lines: [] as number[],
    problems: [] as Problem[],
    unreadable: new Set<number>(),
    missingColumns: new Set<string>(),
    table: { header: [], rows: [] } as CsvTable,
  };
  const headerProblems: Problem[] = [];
  const columns = header ? readHeader(list, header, wish.columns ?? {}, headerProblems) : [];
  reading.table.header = (header?.cells ?? []).map((cell, at) => {
    const column = columns[at]?.column.column ?? null;
    return { cell, column, guess: column === null && cell !== '' ? guessColumn(list, cell) : null };
  });
  if (!header || columns.every((column) => column === null)) {
    reading.problems.push(noHeaderProblem(list, header));
    reading.table.rows = body.map(({ line, cells }) => ({ line, cells }));
    return reading;
  }
  reading.problems.push(...headerProblems);
  const there = new Set(columns.flatMap((column) => (column ? [column.column.column] : [])));
  for (const column of requiredColumns(list)) {
    if (there.has(column)) continue;
    reading.missingColumns.add(column);
    reading.problems.push(missingColumnProblem(list, header.line, column));
  }
  const decimalComma = delimiter !== ',';
  const corrected = new Map(
    wish.corrections?.map(({ line, column, text: to }) => [`${line} ${column}`, to.trim()]),
  );
  for (const row of body) {
    columns.forEach((column, at) => {
      const to = column && corrected.get(`${row.line} ${column.column.column}`);
      if (typeof to === 'string') row.cells[at] = to;
    });
    reading.table.rows.push({ line: row.line, cells: row.cells });
    const excess = row.cells.find((cell, at) => cell !== '' && !header.cells[at]);
    const broken = row.quotes || excess !== undefined;
    if (broken) {
      reading.problems.push(unreadable(file, row, excess));
      reading.unreadable.add(row.line);
    }
    // of a row whose cells have shifted, only its name is sure
    const sure = row.quotes ? 0 : broken ? 1 : columns.length;
    const values = columns.slice(0, sure).flatMap((column, at) => {
      const value = column
        ? readCell(row.cells[at] ?? '', column.column.kind, decimalComma)
        : undefined;
      return column && value !== undefined ? [[column.field, value] as const] : [];
    });
    reading.rows.push(Object.fromEntries(values));
    reading.lines.push(row.line);
  }
  if (delimiter !== ',') {
    reading.problems.push(
      fileProblem({
        code: 'other-separator',
        path: `${file}:${header.line}`,
        value: DELIMITER_NAME[delimiter],
        bound: DELIMITER_NAME[','],
        message: `The cells of ${file} are separated by ${DELIMITER_NAME[delimiter]}: it was read so, with decimal commas allowed.`,
        remedy:
          'Nothing to do if the amounts look right; otherwise save it with commas and points.',
        level: 'warning',
      }),
    );
  }
  return reading;
}
