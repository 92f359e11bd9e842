// `npm run fuzz`: ten times as many requests and texts as `npm test`, other ones each time.
//
// `npm run fuzz -- 50000` chooses how many; `npm run fuzz -- 50000 7` also which, to see a failure again.
import { root, runTool } from '../../api/prepare.mjs';

const [requests = '20000', seed = String(Date.now() % 2 ** 31)] = process.argv.slice(2);
console.log(`${requests} requests, seed ${seed}; again: npm run fuzz -- ${requests} ${seed}`);
process.exitCode = await runTool(
  'vitest/vitest.mjs',
  ['run', '--config', 'tests/vitest.config.ts', 'tests/fuzz'],
  { cwd: root, stdio: ['ignore', 1, 2], env: { FUZZ_REQUESTS: requests, FUZZ_SEED: seed } },
);
