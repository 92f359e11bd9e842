// A house to the files of a season folder: what is read back is the same house.

import Papa from 'papaparse';
import { House } from '../../planner/index.ts';
import { writeCell } from './cells.ts';
import {
  CSV_FILES,
  CSV_LISTS,
  type CsvList,
  columnsOf,
  HOUSE_FILE,
  isOptional,
} from './columns.ts';
import type { SeasonFile } from './read.ts';

/** As spreadsheets write CSV (RFC 4180). */
const LINE_BREAK = '\r\n';

/** Written even where it is empty: a brewer looks for it. */
const ALWAYS_WRITTEN = new Set(['closed']);

type Row = { readonly [field: string]: unknown };

function csvText(list: CsvList, rows: readonly Row[]): string {
  const columns = columnsOf(list).filter(
    ([field, { extra, kind }]) =>
      extra === undefined || rows.some((row) => writeCell(row[field], kind) !== ''),
  );
  const table = [
    columns.map(([, { column }]) => column),
    ...rows.map((row) => columns.map(([field, { kind }]) => writeCell(row[field], kind))),
  ];
  return `${Papa.unparse(table, { newline: LINE_BREAK })}${LINE_BREAK}`;
}

/** What the model takes where nothing is said, so that it need not be written. */
function isDefault(key: string, value: unknown): boolean {
  if (ALWAYS_WRITTEN.has(key)) return false;
  const part = House.shape[key as keyof typeof House.shape];
  const silent = part?.safeParse(undefined);
  return silent?.success === true && JSON.stringify(silent.data) === JSON.stringify(value);
}

/** The text of each file of a season folder; what is optional only where there is something in it. */
export type SeasonTexts = { [file in Exclude<SeasonFile, 'counts.csv'>]: string } & {
  'counts.csv'?: string;
};

/** The texts of a house. */
export function writeSeason(house: House): SeasonTexts {
  const head = Object.entries(house).filter(
    ([key, value]) => !CSV_LISTS.some((list) => list === key) && !isDefault(key, value),
  );
  const texts = CSV_LISTS.filter((list) => !isOptional(list) || house[list].length > 0).map(
    (list) => [CSV_FILES[list].file, csvText(list, house[list])] as const,
  );
  return {
    [HOUSE_FILE]: `${JSON.stringify(Object.fromEntries(head), null, 2)}\n`,
    ...Object.fromEntries(texts),
  } as SeasonTexts;
}
