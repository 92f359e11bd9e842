// No regular expression of the program can be made to run for ever: each is found in the source and examined.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { isSafe } from 'redos-detector';
import { expect, test } from 'vitest';

const root = fileURLToPath(new URL('..', import.meta.url));

type Found = { place: string; source: string; flags: string };

// What may stand before a regular expression and not before a division.
const LITERAL =
  /(?:[=(,:;!&|?{}[\]>]|\breturn|^)\s*\/((?![*/])(?:\\.|\[(?:\\.|[^\]\\\n])*\]|[^/\\[\n])+)\/([dgimsuvy]*)/gm;

/** Every regular expression written out in the source, comments left aside. */
function found(): Found[] {
  return ['api', 'app', 'planner'].flatMap((folder) =>
    readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
      .filter((name) => /\.(ts|tsx|mjs)$/.test(name))
      .flatMap((name) => {
        const text = readFileSync(join(root, folder, name), 'utf8')
          .replaceAll(/^\s*(?:\/\/|\*|\/\*).*$/gm, '')
          // JSX closes its elements with a slash, too.
          .replaceAll(/<\/?[\w.]*\s*>/g, '');
        return [...text.matchAll(LITERAL)].map(([, source = '', flags = '']) => ({
          place: `${folder}/${name}`,
          source,
          flags,
        }));
      }),
  );
}

/** Those that take time by the square of a text, and what bounds the text. */
const BOUNDED: Readonly<Record<string, string>> = {
  'api/environment.ts /\\/+$/': 'a variable of whoever starts the server',
};

const PUMPED = 20_000;
const MOST_MS = 250;

/** What a text has to be made of to lead this expression astray: its own marks and one of each common class. */
function attacks(source: string): string[] {
  const marks = [...new Set([...source.replaceAll(/\\./g, ''), ...'a1 "\\.-|,\n'])];
  const texts = marks.flatMap((one) => marks.map((other) => `${one}${other}`.repeat(PUMPED / 2)));
  return texts.flatMap((text) => [`${text}\u0000`, `a${text}\u0000`]);
}

/** Time of this process alone, ms: what else the machine does is not the expression's fault. */
function costMs(pattern: RegExp, text: string): number {
  const from = process.cpuUsage();
  text.replace(pattern, '');
  const { user, system } = process.cpuUsage(from);
  return (user + system) / 1000;
}

/** The longest that the expression needs for any of them. Doubled length, fourfold time: 20,000 marks need seconds. */
function slowestMs(pattern: RegExp): number {
  let slowest = 0;
  for (const text of attacks(pattern.source)) {
    let cost = costMs(pattern, text);
    // The first time may have had to compile it, or to tidy up after others.
    if (cost > MOST_MS) cost = Math.min(cost, costMs(pattern, text), costMs(pattern, text));
    slowest = Math.max(slowest, cost);
    if (slowest > MOST_MS) return slowest;
  }
  return slowest;
}

const all = found();

test('they are found: at least those of the edges', () => {
  expect(all.length).toBeGreaterThan(60);
  const places = new Set(all.map(({ place }) => place));
  for (const place of ['api/routes/saving.ts', 'api/environment.ts', 'planner/model/common.ts'])
    expect([...places]).toContain(place);
});

test('the examination itself finds what blows up', () => {
  for (const bad of [/^(a+)+$/, /^([a-b]*)([a-c]*)$/, /(x|x)*y/])
    expect(isSafe(bad).safe).toBe(false);
  expect(slowestMs(/\d+$/)).toBeGreaterThan(MOST_MS);
});

test("expressions made while running are made of the program's own words alone: places of the contract, names of lists, letters of jar codes", () => {
  const made = ['api', 'app', 'planner'].flatMap((folder) =>
    readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
      .filter((name) => /\.(ts|tsx|mjs)$/.test(name))
      .filter((name) => readFileSync(join(root, folder, name), 'utf8').includes('new RegExp('))
      .map((name) => `${folder}/${name}`),
  );
  expect(made.sort()).toEqual([
    'api/routes/places.ts',
    'planner/record/news/known.ts',
    'planner/tasks/jar-codes.ts',
  ]);
});

test.each(all.map((one) => [`${one.place} /${one.source}/${one.flags}`, one] as const))(
  '%s',
  (name, { source, flags }) => {
    // The examination knows no flag v; as far as it can tell, u reads these alike.
    const pattern = new RegExp(source, flags.replace(/[gdyv]/g, ''));
    const { safe, error } = isSafe(pattern, { maxScore: 200, maxSteps: 20_000, timeout: 500 });
    if (name in BOUNDED) expect(safe, 'explained, and not needed any more').toBe(false);
    // The examination takes it amiss where an expression may begin anywhere; then it is tried.
    else if (!safe)
      expect(slowestMs(new RegExp(source, flags)), `${error}, and slow`).toBeLessThan(MOST_MS);
  },
);
