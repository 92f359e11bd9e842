// The files of a season folder as a request brings them: a JSON map, or a form with one part a file.
import type { Context } from 'hono';
import { type Problem, parseHouse } from '../../planner/index.ts';
import {
  columnsOf,
  type FolderReading,
  readSeason,
  SEASON_FILES,
  type SeasonBytes,
  type SeasonWish,
} from '../folder/index.ts';
import { refuse } from './errors.ts';
import { ImportRequest, type ImportTable } from './import-shapes.ts';
import { parsed } from './valid.ts';

export type Import = Omit<FolderReading, 'tables'> & {
  tables: ImportTable[];
  apply: boolean;
  startOver: boolean;
};

/** What a form may say beside its files. */
const ImportFields = ImportRequest.pick({ apply: true, startOver: true });

type Reading = Omit<Import, 'apply' | 'startOver'>;

/** Sorts the files by the names that a season knows; what has another name is told and left aside. */
function reading(files: ReadonlyMap<string, Uint8Array>, wish: SeasonWish = {}): Reading {
  const known: { [file: string]: Uint8Array } = {};
  const others: Problem[] = [];
  for (const [path, bytes] of files) {
    // Only the last part of a name counts: what is sent is never looked up on a disk.
    const name = path.split(/[\\/]/).at(-1) ?? path;
    const file = SEASON_FILES.find((one) => one === name.toLowerCase());
    if (file !== undefined && !Object.hasOwn(known, file)) known[file] = bytes;
    else {
      others.push({
        code: file === undefined ? 'unknown-file' : 'doubled-file',
        path: name.slice(0, 80),
        value: name.slice(0, 80),
        bound: SEASON_FILES.join(', '),
        message:
          file === undefined
            ? `${name.slice(0, 80)} is not a file of a season and was left aside.`
            : `${file} came twice; the second one was left aside.`,
        remedy: `A season has ${SEASON_FILES.join(', ')}.`,
        level: 'warning',
      });
    }
  }
  const season = readSeason(known as SeasonBytes, wish);
  return {
    ...season,
    problems: [...season.problems, ...others],
    tables: season.tables.map(({ file, list, table }) => ({
      file,
      list,
      known: columnsOf(list).map(([, { column }]) => column),
      ...table,
    })),
  };
}

/** More parts than any season folder has files. */
const MAX_PARTS = 100;

async function formParts(c: Context): Promise<[string, FormDataEntryValue][]> {
  const form = await c.req
    .formData()
    .catch(() =>
      refuse(
        400,
        'bad-form',
        'The form cannot be read: its Content-Type has to name the boundary between its parts.',
      ),
    );
  const parts = [...form.entries()];
  if (parts.length <= MAX_PARTS) return parts;
  return refuse(413, 'too-many-parts', `The form has more than ${MAX_PARTS} parts.`);
}

/** What an import brings. @throws a refusal where the request itself is not as it has to be */
export async function readImport(c: Context): Promise<Import> {
  const kind = c.req.header('Content-Type') ?? '';
  if (!kind.toLowerCase().startsWith('multipart/form-data')) {
    const { files, columns, corrections, onto, ...rest } = parsed(
      ImportRequest,
      await c.req.json(),
      '(body)',
    );
    const encoder = new TextEncoder();
    const bytes = Object.entries(files).map(
      ([name, text]) => [name, encoder.encode(text)] as const,
    );
    // what is sound of it is taken: an edit may stand half finished beside the files
    const ground = onto === undefined || onto === null ? null : parseHouse(onto).rest;
    return { ...reading(new Map(bytes), { onto: ground, columns, corrections }), ...rest };
  }
  const files = new Map<string, Uint8Array>();
  const fields: Record<string, unknown> = {};
  for (const [name, part] of await formParts(c)) {
    if (typeof part !== 'string') files.set(part.name, new Uint8Array(await part.arrayBuffer()));
    else fields[name] = part === 'true' ? true : part === 'false' ? false : part;
  }
  return { ...reading(files), ...parsed(ImportFields, fields, '(form)') };
}
