// `npm run simulate`: prepares a clone, then lives a season of sixty brews over the API and publishes what came of it.
import { installPackages, run } from '../../api/prepare.mjs';

await installPackages();
process.exitCode = await run(
  process.execPath,
  ['--import', 'tsx', 'tests/bench/bench.ts', 'simulation'],
  { stdio: ['ignore', 1, 2] },
);
