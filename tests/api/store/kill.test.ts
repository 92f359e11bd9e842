// A server killed under writes: nothing acknowledged is lost, and nothing is there by half.
import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { expect, test } from 'vitest';
import { readHouse } from '../../../api/store/house.ts';
import { openStore } from '../../../api/store/index.ts';
import { readRecord } from '../../../api/store/record.ts';

const script = fileURLToPath(new URL('./write-until-killed.ts', import.meta.url));

/** Lets the writer run until it has acknowledged so many more entries, then kills it. @returns the last one */
function writeAndKill(url: string, more: number): Promise<number> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, ['--import', 'tsx', script, url]);
    let said = '';
    let err = '';
    child.stderr.on('data', (chunk) => {
      err += chunk;
    });
    child.stdout.on('data', (chunk) => {
      said += chunk;
      if (said.split('\n').length > more) child.kill('SIGKILL');
    });
    child.on('exit', (_code, signal) => {
      if (signal !== 'SIGKILL') reject(new Error(err));
      // What comes after the last line break was not said in full.
      else resolve(Number(said.split('\n').slice(0, -1).at(-1)));
    });
  });
}

test('three times over', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'barmline-kill-'));
  const url = pathToFileURL(join(folder, 'barmline.db')).href;
  try {
    for (let round = 1; round <= 3; round += 1) {
      const acknowledged = await writeAndKill(url, 3 * round);
      const store = await openStore({ url });
      const numbers = (await readRecord(store.db, 1)).map(({ entry }) => entry.no);
      expect(numbers).toEqual(numbers.map((_, at) => at + 1));
      expect(numbers.length).toBeGreaterThanOrEqual(acknowledged);
      expect((await readHouse(store.db))?.house.name).toBe(`After entry ${numbers.length}`);
      store.close();
    }
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}, 120_000);
