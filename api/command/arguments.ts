// What the command line asks for, checked: everything that is wrong with it is said at once.
import { parseArgs } from 'node:util';
import { IsoDay } from '../../planner/index.ts';

export const USAGE = `Plans a season folder (house.json, brews.csv, tanks.csv, yeasts.csv, jars.csv).

  npm run plan -- FOLDER [options]

  --ics FILE    writes the tasks as a calendar file
  --json        prints the whole plan as JSON, and nothing else, on stdout
  --steps N     how long to search; the default is the planner's own budget
  --seed N      another seed gives another search; the same one the same plan (default 1)
  --today DATE  the day on which the plan is made, YYYY-MM-DD
  --help        prints this
`;

export type Asked = {
  folder: string;
  ics: string | null;
  json: boolean;
  steps: number | null;
  seed: number;
  today: string | null;
};

export type ReadArguments =
  | { kind: 'help' }
  | { kind: 'asked'; asked: Asked }
  | { kind: 'wrong'; sentences: string[] };

const OPTIONS = {
  ics: { type: 'string' },
  json: { type: 'boolean' },
  steps: { type: 'string' },
  seed: { type: 'string' },
  today: { type: 'string' },
  help: { type: 'boolean', short: 'h' },
} as const;

const NAMES = Object.keys(OPTIONS).map((name) => `--${name}`);

function wholeNumber(
  name: string,
  text: string | undefined,
  most: number,
  sentences: string[],
): number | null {
  if (text === undefined) return null;
  const number = /^\d+$/.test(text) ? Number(text) : Number.NaN;
  if (number <= most) return number;
  sentences.push(`--${name} is “${text}”; it must be a whole number from 0 to ${most}.`);
  return null;
}

/** Reads the arguments that follow `plan`. */
export function readArguments(args: readonly string[]): ReadArguments {
  const { positionals, tokens } = parseArgs({
    args: [...args],
    options: OPTIONS,
    allowPositionals: true,
    strict: false,
    tokens: true,
  });
  const sentences: string[] = [];
  const given = new Map<string, string>();
  for (const token of tokens) {
    if (token.kind !== 'option') continue;
    if (!Object.hasOwn(OPTIONS, token.name)) {
      sentences.push(`There is no option ${token.rawName}; there are ${NAMES.join(', ')}.`);
      continue;
    }
    const wantsValue = OPTIONS[token.name as keyof typeof OPTIONS].type === 'string';
    const valueMissing = !token.value || (!token.inlineValue && token.value.startsWith('--'));
    if (wantsValue && valueMissing) {
      sentences.push(`--${token.name} needs a value after it.`);
    } else if (!wantsValue && token.value !== undefined) {
      sentences.push(`--${token.name} takes no value, but “${token.value}” was given.`);
    } else if (given.has(token.name)) {
      sentences.push(`--${token.name} stands there twice; give it once.`);
    }
    given.set(token.name, token.value ?? '');
  }
  if (given.has('help')) return { kind: 'help' };

  const [folder, ...more] = positionals;
  if (folder === undefined) sentences.push('Name the season’s folder: npm run plan -- FOLDER');
  if (more.length > 0) {
    sentences.push(`One folder at a time: “${more.join('”, “')}” is too much.`);
  }
  const steps = wholeNumber('steps', given.get('steps'), 1_000_000_000, sentences);
  const seed = wholeNumber('seed', given.get('seed'), 4_294_967_295, sentences);
  const today = given.get('today') ?? null;
  if (today !== null && !IsoDay.safeParse(today).success) {
    sentences.push(`--today is “${today}”; it must be a day written YYYY-MM-DD.`);
  }
  if (sentences.length > 0 || folder === undefined) return { kind: 'wrong', sentences };
  const asked = {
    folder,
    ics: given.get('ics') ?? null,
    json: given.has('json'),
    steps,
    seed: seed ?? 1,
    today,
  };
  return { kind: 'asked', asked };
}
