// `npm test`: prepares a bare clone, runs every kind of check, and ends with one line that counts them.
//
// `node tests/run.mjs types lint units browser` runs only the kinds that are named.
import { mkdirSync, readFileSync, rmSync } from 'node:fs';
import { join, relative } from 'node:path';
import { buildPage, buildServer, installPackages, root, runTool } from '../api/prepare.mjs';

const reports = join(root, '.build', 'reports');
const shown = { stdio: ['ignore', 1, 2] };
const one = (code) => ({
  passed: code === 0 ? 1 : 0,
  failed: code === 0 ? 0 : 1,
  skipped: 0,
  names: [],
});

/** Counts what Vitest reports. A file that does not even load holds no counted test: it counts as one. */
async function vitest(name, config, env = {}) {
  const report = join(reports, `${name}.json`);
  rmSync(report, { force: true });
  const args = ['run', '--config', config, '--reporter=default', '--reporter=json'];
  args.push(`--outputFile.json=${report}`);
  const code = await runTool('vitest/vitest.mjs', args, { ...shown, env });
  try {
    const result = JSON.parse(readFileSync(report, 'utf8'));
    const names = result.testResults.flatMap((file) => {
      const path = relative(root, file.name);
      const failed = file.assertionResults.filter((test) => test.status === 'failed');
      if (failed.length > 0) return failed.map((test) => `${path}: ${test.fullName}`);
      return file.status === 'failed' ? [`${path}: the file itself`] : [];
    });
    return {
      passed: result.numPassedTests,
      failed: code !== 0 && names.length === 0 ? 1 : names.length,
      skipped: result.numPendingTests + result.numTodoTests,
      names: [...names, ...skippedIn(result)],
    };
  } catch {
    return { passed: 0, failed: 1, skipped: 0, names: [] };
  }
}

/** What was not run here, in its own words. */
function skippedIn(result) {
  return result.testResults.flatMap((file) =>
    file.assertionResults
      .filter(({ status }) => status === 'pending' || status === 'skipped' || status === 'todo')
      .map((test) => `skipped: ${test.fullName}`),
  );
}

const KINDS = {
  types: async () => one(await runTool('typescript/bin/tsc', ['-p', '.'], shown)),
  lint: async () =>
    one(
      await runTool('@biomejs/biome/bin/biome', ['check', '--diagnostic-level=warn', '.'], shown),
    ),
  units: () => vitest('units', 'tests/vitest.config.ts'),
  browser: async () => {
    const { findOrGetBrowser } = await import('./browser/find-browser.mjs');
    const browser = await findOrGetBrowser();
    return vitest('browser', 'tests/browser/vitest.config.ts', { CHROMIUM_PATH: browser });
  },
};

const SAYS = {
  types: 'types (tsc)',
  lint: 'lint (biome)',
  units: 'unit, property, API and outside checks (vitest)',
  browser: 'browser (Chromium)',
};

async function main(wanted) {
  const unknown = wanted.filter((kind) => !(kind in KINDS));
  if (unknown.length > 0) {
    console.error(
      `No such kind of check: ${unknown.join(', ')}. There are: ${Object.keys(KINDS).join(', ')}.`,
    );
    return 2;
  }
  await installPackages();
  mkdirSync(reports, { recursive: true });
  const chosen = wanted.length > 0 ? wanted : Object.keys(KINDS);
  const results = [];
  const check = async (name, work) => {
    console.log(`\n── ${name}`);
    const from = performance.now();
    let counts = one(1);
    try {
      counts = await work();
    } catch (error) {
      console.error(error.message);
    }
    results.push({ name, ...counts, seconds: (performance.now() - from) / 1000 });
  };
  if (chosen.includes('units') || chosen.includes('browser')) {
    // Tests start the built server and the built commands. A failed build counts as a failed check.
    await check('build (vite)', async () => {
      await Promise.all([buildServer(), buildPage()]);
      return one(0);
    });
  }
  for (const kind of chosen) await check(SAYS[kind], KINDS[kind]);

  const sum = (key) => results.reduce((total, result) => total + result[key], 0);
  console.log('\n── summary');
  for (const { name, passed, failed, skipped, seconds, names } of results) {
    const verdict = failed > 0 ? 'FAILED' : 'ok';
    const took = `${seconds.toFixed(1)} s`.padStart(8);
    console.log(
      `${verdict.padEnd(7)}${took}  ${name}: ${passed} passed, ${failed} failed, ${skipped} skipped`,
    );
    for (const test of names) console.log(`        ${test}`);
  }
  const [passed, failed, skipped] = [sum('passed'), sum('failed'), sum('skipped')];
  console.log(`\n${passed} passed, ${failed} failed, ${skipped} skipped`);
  return failed > 0 ? 1 : 0;
}

main(process.argv.slice(2)).then(
  (code) => {
    process.exitCode = code;
  },
  (error) => {
    console.error(error.message);
    console.log('\n0 passed, 1 failed, 0 skipped');
    process.exitCode = 1;
  },
);
