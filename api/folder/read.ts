// A season folder's files to a house, with every problem of every file placed by line and column.
import { type House, type Placing, type Problem, parseHouse } from '../../planner/index.ts';
import {
  type Column,
  CSV_FILES,
  CSV_LISTS,
  type CsvList,
  columnsOf,
  HOUSE_FILE,
  isOptional,
} from './columns.ts';
import { type CsvReading, type CsvTable, type CsvWish, readCsv } from './csv.ts';
import { type JsonLines, JsonSyntaxError, parseJsonWithLines } from './json-lines.ts';
import { fileProblem } from './problem.ts';
import { decode } from './text.ts';

export const SEASON_FILES = [HOUSE_FILE, ...CSV_LISTS.map((list) => CSV_FILES[list].file)] as const;
export type SeasonFile = (typeof SEASON_FILES)[number];
/** Those without which there is no season. */
export const NEEDED_FILES: readonly SeasonFile[] = [
  HOUSE_FILE,
  ...CSV_LISTS.filter((list) => !isOptional(list)).map((list) => CSV_FILES[list].file),
];

/** The bytes of the files that are there. */
export type SeasonBytes = { readonly [file in SeasonFile]?: Uint8Array | undefined };

export type FolderReading = {
  /** The house, where nothing is wrong but warnings; otherwise null. */
  house: House | null;
  /** The same, or what is sound of it; null where nothing can be shown. */
  rest: House | null;
  problems: Problem[];
  /** The CSV files as they were read, cell by cell. */
  tables: { file: SeasonFile; list: CsvList; table: CsvTable }[];
};

/** What is said beside the files themselves. */
export type SeasonWish = {
  /** A house from which the files that are missing are taken. */
  onto?: House | null;
  /** For each file: what its columns are called. */
  columns?: { readonly [file: string]: NonNullable<CsvWish['columns']> };
  corrections?: readonly (NonNullable<CsvWish['corrections']>[number] & { file: string })[];
};

type Record = { [key: string]: unknown };

/** Text of a file that is there; says what is odd about its bytes. */
function textOf(file: SeasonFile, bytes: Uint8Array, problems: Problem[]): string | null {
  const { text, readAs } = decode(bytes);
  if (text === null) {
    const message = `${file} is not a text file, but something that a program keeps for itself.`;
    const remedy =
      file === HOUSE_FILE
        ? 'Save it as plain text in UTF-8.'
        : 'In the spreadsheet, save the sheet as CSV (UTF-8) under this name.';
    problems.push(fileProblem({ code: 'not-text', path: file, message, remedy }));
  } else if (readAs !== null) {
    problems.push(
      fileProblem({
        code: 'other-encoding',
        path: file,
        value: readAs,
        bound: 'UTF-8',
        message: `${file} is not UTF-8; it was read as ${readAs}.`,
        remedy: 'Look at names with accents; save the file as UTF-8 if one is wrong.',
        level: 'warning',
      }),
    );
  }
  return text;
}

type HeadReading = { head: Record | null; lineOf: JsonLines['lineOf'] };

function readHead(text: string, problems: Problem[]): HeadReading {
  const nowhere: HeadReading = { head: null, lineOf: () => 1 };
  try {
    const { value, lineOf, doubled } = parseJsonWithLines(text);
    for (const { path, line } of doubled) {
      const key = path.join('.');
      problems.push(
        fileProblem({
          code: 'doubled-key',
          path: `${HOUSE_FILE}:${line}:${key}`,
          value: key,
          message: `${HOUSE_FILE} has the key ${key} twice.`,
          remedy: 'Remove one of the two.',
        }),
      );
    }
    if (typeof value !== 'object' || value === null || Array.isArray(value)) {
      problems.push(
        fileProblem({
          code: 'not-a-house',
          path: `${HOUSE_FILE}:1`,
          value: text.trim().slice(0, 80),
          bound: 'an object in braces',
          message: `${HOUSE_FILE} holds no object.`,
          remedy: 'Begin it with { and give the house’s keys.',
        }),
      );
      return nowhere;
    }
    const head: Record = { ...value };
    for (const list of CSV_LISTS) {
      if (!Object.hasOwn(head, list)) continue;
      delete head[list];
      problems.push(
        fileProblem({
          code: 'belongs-elsewhere',
          path: `${HOUSE_FILE}:${lineOf([list])}:${list}`,
          value: list,
          message: `${HOUSE_FILE} has a key ${list}; in a folder they stand in ${CSV_FILES[list].file}.`,
          remedy: `Move them to ${CSV_FILES[list].file}.`,
        }),
      );
    }
    return { head, lineOf };
  } catch (error) {
    if (!(error instanceof JsonSyntaxError)) throw error;
    problems.push(
      fileProblem({
        code: 'not-json',
        path: `${HOUSE_FILE}:${error.line}:${error.column}`,
        value: text.split('\n')[error.line - 1]?.trim().slice(0, 80) ?? null,
        bound: 'JSON',
        message: `${HOUSE_FILE} is no JSON from line ${error.line}, character ${error.column} on. ${error.message}`,
        remedy: 'Correct that line.',
      }),
    );
    return nowhere;
  }
}

/** Where a path of the house stands in the files, and what it is called there. */
function placing(lists: ReadonlyMap<CsvList, CsvReading>, lineOf: JsonLines['lineOf']): Placing {
  return (path) => {
    const [first, row, field] = path;
    const list = CSV_LISTS.find((one) => one === first);
    if (list === undefined) {
      const name = path
        .map((part, at) => (typeof part === 'number' ? `[${part}]` : `${at > 0 ? '.' : ''}${part}`))
        .join('');
      const last = [...path].reverse().find((part) => typeof part === 'string');
      return { path: `${HOUSE_FILE}:${lineOf(path)}:${name}`, field: String(last ?? HOUSE_FILE) };
    }
    const { file } = CSV_FILES[list];
    const columns: { readonly [field: string]: Column } = CSV_FILES[list].columns;
    const column = typeof field === 'string' ? (columns[field]?.column ?? field) : null;
    const line = typeof row === 'number' ? lists.get(list)?.lines[row] : undefined;
    const place = [file, line, column].filter((part) => part !== undefined && part !== null);
    return { path: place.join(':'), field: column ?? file };
  };
}

function missingFile(file: SeasonFile): Problem {
  const list = CSV_LISTS.find((one) => CSV_FILES[one].file === file);
  const columns = list && columnsOf(list).filter(([, { extra }]) => extra === undefined);
  return fileProblem({
    code: 'missing-file',
    path: file,
    bound: `a file ${file}`,
    message: `The folder has no ${file}.`,
    remedy: columns
      ? `Add it with this first line: ${columns.map(([, { column }]) => column).join(',')}`
      : 'Add it with the house’s name, its days, its cold store and its starter gear.',
  });
}

/** Leaves out what only follows from something that has been said about a file as a whole. */
function isNews(
  problem: Problem,
  lists: ReadonlyMap<CsvList, CsvReading>,
  headIsThere: boolean,
): boolean {
  const [file, line, column] = problem.path.split(':');
  if (file === HOUSE_FILE) return headIsThere;
  if (problem.code !== 'missing-field') return true;
  const list = CSV_LISTS.find((one) => CSV_FILES[one].file === file);
  const reading = list && lists.get(list);
  if (line === undefined || !reading) return false;
  return !reading.unreadable.has(Number(line)) && !reading.missingColumns.has(column ?? '');
}

const fileRank = (problem: Problem) =>
  SEASON_FILES.findIndex((file) => problem.path === file || problem.path.startsWith(`${file}:`));
const lineRank = (problem: Problem) => Number(/^[^:]+:(\d+)/.exec(problem.path)?.[1] ?? 0);

/**
 * The house of a season's files. Every problem of every file at once, in order of file and line,
 * each with a path such as `brews.csv:7:og`. What is wrong with the house that missing files are taken
 * from is not said: it is not what was brought.
 */
export function readSeason(files: SeasonBytes, wish: SeasonWish = {}): FolderReading {
  const onto = wish.onto ?? null;
  const problems: Problem[] = [];
  const texts = new Map<SeasonFile, string>();
  for (const file of SEASON_FILES) {
    const bytes = files[file];
    const text = bytes ? textOf(file, bytes, problems) : null;
    if (!bytes && onto === null && NEEDED_FILES.includes(file)) problems.push(missingFile(file));
    if (text !== null) texts.set(file, text);
  }
  const headText = texts.get(HOUSE_FILE);
  const { head, lineOf } =
    headText === undefined ? { head: null, lineOf: () => 1 } : readHead(headText, problems);
  const lists = new Map<CsvList, CsvReading>();
  const document: Record =
    files[HOUSE_FILE] === undefined && onto !== null ? { ...onto } : { ...head };
  const tables: FolderReading['tables'] = [];
  for (const list of CSV_LISTS) {
    const { file } = CSV_FILES[list];
    const text = texts.get(file);
    if (text === undefined && onto !== null && files[file] === undefined) {
      document[list] = onto[list];
      continue;
    }
    delete document[list];
    const reading =
      text === undefined
        ? null
        : readCsv(list, text, {
            ...(wish.columns?.[file] ? { columns: wish.columns[file] } : {}),
            ...(wish.corrections
              ? { corrections: wish.corrections.filter((one) => one.file === file) }
              : {}),
          });
    if (!reading) continue;
    tables.push({ file, list, table: reading.table });
    problems.push(...reading.problems);
    // a file without its columns counts as one that is not there
    if (reading.problems.some((problem) => problem.code === 'no-header')) continue;
    lists.set(list, reading);
    document[list] = reading.rows;
  }
  const parsed = parseHouse(document, placing(lists, lineOf));
  const brought = (problem: Problem) => {
    const [file] = problem.path.split(':');
    return onto === null || SEASON_FILES.some((one) => one === file && files[one] !== undefined);
  };
  problems.push(
    ...parsed.problems.filter(
      (problem) => brought(problem) && isNews(problem, lists, head !== null),
    ),
  );
  problems.sort((a, b) => fileRank(a) - fileRank(b) || lineRank(a) - lineRank(b));
  const sound = problems.every((problem) => problem.level !== 'error');
  return { house: sound ? parsed.house : null, rest: parsed.rest, problems, tables };
}
