// `npm run soak`: prepares a clone, then lets the server run for 30 minutes under load. `-- 5` for five.
import { buildServer, installPackages, run } from '../../api/prepare.mjs';

await installPackages();
await buildServer();
process.exitCode = await run(
  process.execPath,
  ['--import', 'tsx', 'tests/soak/soak.ts', ...process.argv.slice(2)],
  { stdio: ['ignore', 1, 2] },
);
