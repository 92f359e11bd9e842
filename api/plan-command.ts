// `npm run plan -- FOLDER`: a season folder in; a plan, and if wanted its JSON and its calendar, out.
import { stat, writeFile } from 'node:fs/promises';
import { dirname, resolve } from 'node:path';
import {
  defaultToday,
  type House,
  type Plan,
  type Progress,
  plan,
  seasonOver,
  tasks,
} from '../planner/index.ts';
import { type Asked, readArguments, USAGE } from './command/arguments.ts';
import { planText } from './command/plan-text.ts';
import { problemLines, refusalText } from './command/problems-text.ts';
import { DEFAULT_PORT } from './environment.ts';
import { calendarText } from './feed/calendar.ts';
import { looseEntries } from './feed/entries.ts';
import { readFolder } from './folder/index.ts';

const BAD_INPUT = 2;
const REDRAW_MS = 100;

const out = (text: string) => process.stdout.write(text);
const err = (text: string) => process.stderr.write(text);

/** Why the calendar file could not be written, before any time is spent on planning; null if it can. */
async function obstacle(file: string): Promise<string | null> {
  const folder = dirname(resolve(file));
  const parent = await stat(folder).catch(() => null);
  if (!parent?.isDirectory()) {
    return `--ics is “${file}”, but there is no folder ${folder}: make it, or name another file.`;
  }
  const there = await stat(file).catch(() => null);
  return there?.isDirectory() ? `--ics is “${file}”, which is a folder: name a file in it.` : null;
}

/** Shows how far the search is on a terminal; says nothing into a file or a pipe. */
function progressShown(): { watch: (progress: Progress) => boolean; clear: () => void } {
  if (!process.stderr.isTTY) return { watch: () => false, clear: () => undefined };
  let drawnAt = 0;
  return {
    watch: ({ stepsDone, steps, hard, leftOut }) => {
      const now = performance.now();
      if (now - drawnAt > REDRAW_MS) {
        drawnAt = now;
        const share = steps === 0 ? 100 : Math.floor((100 * stepsDone) / steps);
        err(`\r\x1b[KPlanning … ${share} %, rules broken ${hard}, brews left out ${leftOut}`);
      }
      return false;
    },
    clear: () => err('\r\x1b[K'),
  };
}

function planned(house: House, asked: Asked): Plan {
  const { watch, clear } = progressShown();
  try {
    const { seed, steps } = asked;
    return plan({ house, today: asked.today ?? defaultToday(house), seed, steps }, watch);
  } finally {
    clear();
  }
}

async function writeCalendar(file: string, house: House, made: Plan): Promise<string | null> {
  // The same plan gives the same bytes: its own day stands for the moment of writing.
  const changedAt = new Date(`${made.today}T00:00:00Z`);
  const entries = looseEntries(tasks(made, house), house.name, changedAt);
  const text = calendarText({
    name: `${house.name}: yeast tasks`,
    timeZone: house.timeZone,
    base: `http://127.0.0.1:${DEFAULT_PORT}`,
    entries,
  });
  try {
    await writeFile(file, text);
    return null;
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? String(error.code) : 'unknown';
    return `${file} cannot be written (${code}): check the disk and that you may write there.`;
  }
}

/**
 * Runs the command.
 * @param args what follows `plan` on the command line
 * @returns the exit code: 0 a plan was made, 2 what was given cannot be used, 1 it could not be written
 */
export async function run(args: readonly string[]): Promise<number> {
  const read = readArguments(args);
  if (read.kind === 'help') {
    out(USAGE);
    return 0;
  }
  if (read.kind === 'wrong') {
    err(`${read.sentences.join('\n')}\n\n${USAGE}`);
    return BAD_INPUT;
  }
  const { asked } = read;
  const blocked = asked.ics === null ? null : await obstacle(asked.ics);
  const { house, rest, problems } = await readFolder(asked.folder);
  if (house === null || blocked !== null) {
    if (house === null) err(refusalText(asked.folder, problems, rest));
    if (blocked !== null) err(`${blocked}\n`);
    return BAD_INPUT;
  }
  if (problems.length > 0) err(`${problemLines(problems).join('\n')}\n\n`);

  const over = seasonOver(house, asked.today ?? defaultToday(house));
  if (over !== null) {
    err(refusalText(asked.folder, [over], house));
    return BAD_INPUT;
  }
  const made = planned(house, asked);
  const failure = asked.ics === null ? null : await writeCalendar(asked.ics, house, made);
  out(asked.json ? `${JSON.stringify(made, null, 2)}\n` : planText(made, tasks(made, house)));
  if (failure !== null) {
    err(`${failure}\n`);
    return 1;
  }
  if (asked.ics !== null) err(`The calendar is in ${asked.ics}.\n`);
  return 0;
}
