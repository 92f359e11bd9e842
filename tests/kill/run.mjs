// `npm run kill`: prepares a clone, then kills the real server again and again. `-- 50` for fifty rounds.
import { buildServer, installPackages, run } from '../../api/prepare.mjs';

await installPackages();
await buildServer();
process.exitCode = await run(
  process.execPath,
  ['--import', 'tsx', 'tests/kill/kill.ts', ...process.argv.slice(2)],
  { stdio: ['ignore', 1, 2] },
);
