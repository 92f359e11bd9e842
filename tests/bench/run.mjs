// `npm run bench`: prepares a clone, then measures and writes docs/benchmarks.md. `-- --quick` measures less.
import { buildPage, buildServer, installPackages, run } from '../../api/prepare.mjs';

await installPackages();
await buildServer();
await buildPage();
process.exitCode = await run(
  process.execPath,
  ['--import', 'tsx', 'tests/bench/bench.ts', ...process.argv.slice(2)],
  { stdio: ['ignore', 1, 2] },
);
