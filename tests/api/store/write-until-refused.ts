// Run by troubles.test.ts where the disk has no room: makes calendar addresses over the API until one is refused.
import { pathToFileURL } from 'node:url';
import { openApp } from '../../builders/app.ts';

const [folder = ''] = process.argv.slice(2);
process.env.TMPDIR = folder;
const open = await openApp();
let acknowledged = 0;
let answer = await open.ask('POST', '/api/feeds', {});
while (answer.status === 201 && acknowledged < 100_000) {
  const { json } = answer as { json: { made: { id: string } } };
  acknowledged += 1;
  // Long enough to fill a small disk soon; the list of addresses stays short.
  await open.ask('DELETE', `/api/feeds/${json.made.id}`);
  await rename(acknowledged);
  answer = await open.ask('POST', '/api/feeds', {});
}

async function rename(count: number): Promise<void> {
  const { json } = await open.ask('GET', '/api/house');
  const { house, revision } = json as { house: object; revision: number };
  const named = { ...house, name: `Edit ${count}` };
  await open.ask('PUT', '/api/house', named, { 'If-Match': String(revision) });
}

const read = await open.ask('GET', '/api/plan');
process.stdout.write(
  JSON.stringify({
    status: answer.status,
    body: answer.json,
    acknowledged,
    readStatus: read.status,
    database: pathToFileURL(`${open.folder}/barmline.db`).href,
  }),
);
// Ended without closing: what is on the disk is what a user would find.
process.exit(0);
