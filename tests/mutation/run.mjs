// `npm run mutate`: changes the rules and the science in thousands of small ways and counts which changes no test notices.
//
// `npm run mutate -- rules/brew-day science/gravity` takes only these. A file is judged by its own tests
// (and, for science, by the published values), so that a test of something else cannot kill by chance.
// What came of each file is kept under .cache/mutation; --report only prints what is there.
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../..', import.meta.url));
const kept = join(root, '.cache', 'mutation');

/** Files with nothing to change: lists and words alone. */
const LEFT_ASIDE = new Set(['rules/index', 'science/index', 'science/sources']);

const filesOf = (folder) =>
  readdirSync(join(root, 'planner', folder))
    .filter((name) => name.endsWith('.ts'))
    .map((name) => `${folder}/${name.slice(0, -'.ts'.length)}`)
    .filter((name) => !LEFT_ASIDE.has(name));

/** The tests that speak of a file: its own, else (what rules or formulas share) all of the folder's. */
function testsOf(name) {
  const [folder] = name.split('/');
  const own = `tests/planner/${name}.test.ts`;
  const tests = existsSync(join(root, own)) ? [own] : [`tests/planner/${folder}/*.test.ts`];
  return folder === 'science' ? [...tests, 'tests/outside/science-*.test.ts'] : tests;
}

const settings = (name) => ({
  testRunner: 'vitest',
  vitest: { configFile: 'tests/mutation/vitest.config.ts', related: false },
  mutate: [`planner/${name}.ts`],
  // Words are no behaviour: what they have to say is held by the tests of each rule and by its page.
  // `?.` stands where the types cannot know that something is there: without it nothing differs.
  mutator: { excludedMutations: ['StringLiteral', 'OptionalChaining'] },
  // TypeScript 7 has no compiler API to rewrite a tsconfig with, and none has to be rewritten.
  tsconfigFile: 'none.json',
  coverageAnalysis: 'perTest',
  ignoreStatic: false,
  concurrency: 1,
  timeoutMS: 10_000,
  tempDirName: '.cache/mutation-sandbox',
  ignorePatterns: [
    '.build',
    '.data',
    '.ci',
    'app',
    'docs/pictures',
    'tests/browser',
    '/.cache/mutation',
  ],
  reporters: ['clear-text'],
  clearTextReporter: { reportTests: false, reportMutants: false, reportScoreTable: false },
  logLevel: 'error',
  allowConsoleColors: false,
});

/** The line of a mutant, as it is and as it was made. */
function wordsOf(mutant, source) {
  const line = mutant.location.start.line;
  const was = source.split('\n')[line - 1]?.trim() ?? '';
  return `${line}: ${mutant.mutatorName}: ${was.slice(0, 90)}  →  ${String(mutant.replacement).replaceAll(/\s+/g, ' ').slice(0, 70)}`;
}

async function judge(name) {
  process.env.MUTATION_TESTS = testsOf(name).join(',');
  const { Stryker } = await import('@stryker-mutator/core');
  const mutants = await new Stryker(settings(name)).runMutationTest();
  const source = readFileSync(join(root, 'planner', `${name}.ts`), 'utf8');
  const of = (...states) => mutants.filter(({ status }) => states.includes(status));
  const result = {
    name,
    killed: of('Killed', 'Timeout').length,
    survived: of('Survived', 'NoCoverage').map((mutant) => wordsOf(mutant, source)),
    broken: of('RuntimeError', 'CompileError').length,
  };
  mkdirSync(join(kept, name, '..'), { recursive: true });
  writeFileSync(join(kept, `${name}.json`), `${JSON.stringify(result, null, 2)}\n`);
  return result;
}

const share = (killed, all) =>
  all === 0 ? '     –' : `${((100 * killed) / all).toFixed(1).padStart(5)}%`;

function print(results) {
  let [killed, all] = [0, 0];
  for (const { name, killed: gone, survived } of results) {
    killed += gone;
    all += gone + survived.length;
    console.log(
      `${share(gone, gone + survived.length)}  ${name}: ${gone} of ${gone + survived.length}`,
    );
    for (const words of survived) console.log(`          ${words}`);
  }
  console.log(
    `\n${share(killed, all).trim()} of ${all} changes were noticed (${results.length} files).`,
  );
}

const wanted = process.argv.slice(2);
const all = [...filesOf('rules'), ...filesOf('science')];
const named = wanted.filter((word) => !word.startsWith('--'));
const unknown = named.filter((name) => !all.includes(name));
if (unknown.length > 0) {
  console.error(`No such file: ${unknown.join(', ')}. There are: ${all.join(', ')}.`);
  process.exit(2);
}
const chosen = named.length > 0 ? named : all;
const results = [];
for (const name of chosen) {
  const file = join(kept, `${name}.json`);
  if (wanted.includes('--report')) {
    if (existsSync(file)) results.push(JSON.parse(readFileSync(file, 'utf8')));
  } else {
    rmSync(file, { force: true });
    results.push(await judge(name));
  }
}
print(results);
