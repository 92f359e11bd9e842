// A season folder on disk to a house, and a house to a season folder.
import { mkdir, readdir, readFile, stat, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { House, Problem } from '../../planner/index.ts';
import { fileProblem } from './problem.ts';
import {
  type FolderReading,
  NEEDED_FILES,
  readSeason,
  SEASON_FILES,
  type SeasonFile,
} from './read.ts';
import { writeSeason } from './write.ts';

export { columnsOf } from './columns.ts';
export {
  type FolderReading,
  NEEDED_FILES,
  readSeason,
  SEASON_FILES,
  type SeasonBytes,
  type SeasonWish,
} from './read.ts';
export { type SeasonTexts, writeSeason } from './write.ts';

const MAX_FILE_MB = 20;

const codeOf = (error: unknown): string =>
  error instanceof Error && 'code' in error ? String(error.code) : 'unknown';

function folderProblem(folder: string, error: unknown): Problem {
  const code = codeOf(error);
  const missing = code === 'ENOENT';
  return fileProblem({
    code: missing ? 'no-folder' : 'unreadable-folder',
    path: folder,
    value: folder,
    bound: `a folder with ${NEEDED_FILES.join(', ')}`,
    message: missing
      ? `There is no folder ${folder}.`
      : code === 'ENOTDIR'
        ? `${folder} is a file; a season is a folder.`
        : `${folder} cannot be opened (${code}).`,
    remedy: missing
      ? 'Correct the path of the season’s folder.'
      : code === 'ENOTDIR'
        ? 'Name the folder that it lies in.'
        : 'Check that you may read it.',
  });
}

function unreadableFile(file: string, why: string, remedy: string): Problem {
  const message = `${file} cannot be read: ${why}.`;
  return fileProblem({ code: 'unreadable-file', path: file, message, remedy });
}

/** The bytes of one file, undefined where it is not there; what else goes wrong is a problem. */
async function bytesOf(folder: string, file: SeasonFile, problems: Problem[]) {
  const path = join(folder, file);
  try {
    const { size } = await stat(path);
    if (size <= MAX_FILE_MB * 1_000_000) return await readFile(path);
    const why = `it has ${Math.round(size / 1_000_000)} MB, more than ${MAX_FILE_MB}`;
    problems.push(unreadableFile(file, why, 'Give only the rows of this season.'));
  } catch (error) {
    const code = codeOf(error);
    if (code === 'ENOENT') return undefined;
    const why = code === 'EISDIR' ? 'it is a folder' : code;
    problems.push(unreadableFile(file, why, 'Check that it is a file and that you may read it.'));
  }
  return undefined;
}

/** Reads a season folder: the house, or what is sound of it, and every problem at once. */
export async function readFolder(folder: string): Promise<FolderReading> {
  let names: string[];
  try {
    names = await readdir(folder);
  } catch (error) {
    return { house: null, rest: null, problems: [folderProblem(folder, error)], tables: [] };
  }
  const found: Problem[] = [];
  const pairs = await Promise.all(
    SEASON_FILES.map(async (file) => [file, await bytesOf(folder, file, found)] as const),
  );
  const reading = readSeason(Object.fromEntries(pairs));
  const unreadable = new Set(found.map((problem) => problem.path));
  const problems = reading.problems
    .filter((problem) => !(problem.code === 'missing-file' && unreadable.has(problem.path)))
    .map((problem) => {
      const other = names.find((name) => name.toLowerCase() === problem.path);
      return problem.code === 'missing-file' && other !== undefined
        ? { ...problem, remedy: `Rename ${other} to ${problem.path}.` }
        : problem;
    });
  return { ...reading, problems: [...found, ...problems] };
}

/** Writes a house as a season folder; the folder is made where it is not there. */
export async function writeFolder(folder: string, house: House): Promise<void> {
  await mkdir(folder, { recursive: true });
  const texts = Object.entries(writeSeason(house));
  await Promise.all(texts.map(([file, text]) => writeFile(join(folder, file), text)));
}
