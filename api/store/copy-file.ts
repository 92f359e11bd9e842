// Copies a database file while it is in use, in a thread of its own: answers are not held up meanwhile.
import { open } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { Worker } from 'node:worker_threads';

// NOTE: the thread is a text and no file, so that it runs from the source and from the build alike.
const THREAD = `
const { parentPort, workerData } = require('node:worker_threads');
const { createClient } = require(workerData.library);
const client = createClient({ url: workerData.url, timeout: 5000 });
client.execute({ sql: 'VACUUM INTO ?', args: [workerData.into] }).then(
  () => { client.close(); parentPort.postMessage({ code: null, message: '' }); },
  (error) => { client.close(); parentPort.postMessage({ code: error.code ?? '', message: String(error.message) }); },
);
`;

class CopyError extends Error {
  override name = 'CopyError';
  readonly code: string;
  constructor(code: string, message: string) {
    super(message);
    this.code = code;
  }
}

/**
 * Writes a whole, consistent copy of a database into a new file and syncs it to the disk.
 * @throws what the disk or the database had against it, with its code
 */
export async function copyDatabase(url: string, into: string): Promise<void> {
  const library = createRequire(import.meta.url).resolve('@libsql/client');
  const worker = new Worker(THREAD, { eval: true, workerData: { url, into, library } });
  const { code, message } = await new Promise<{ code: string | null; message: string }>(
    (resolve, reject) => worker.once('message', resolve).once('error', reject),
  );
  if (code !== null) throw new CopyError(code, message);
  // SQLite leaves the syncing of such a copy to its caller (https://www.sqlite.org/lang_vacuum.html).
  const file = await open(into, 'r+');
  try {
    await file.chmod(0o600);
    await file.sync();
  } finally {
    await file.close();
  }
}
