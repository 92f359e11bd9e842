// A full disk, a read-only folder, a locked and a damaged file, each made for real: a sentence, and nothing overwritten.
import { execFileSync, spawn, spawnSync } from 'node:child_process';
import {
  chmodSync,
  chownSync,
  closeSync,
  mkdirSync,
  mkdtempSync,
  openSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
  writeSync,
} from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { createClient } from '@libsql/client';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { openStore } from '../../../api/store/index.ts';
import { type OpenApp, openApp } from '../../builders/app.ts';

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'barmline-trouble-'));
});
afterEach(() => {
  chmodSync(folder, 0o700);
  rmSync(folder, { recursive: true, force: true });
});

const script = (name: string) => fileURLToPath(new URL(`./${name}`, import.meta.url));
const isRoot = process.getuid?.() === 0;
const NOBODY = 65_534;

/** Room for so many kilobytes: a small disk of its own where the machine lets us mount one. */
function smallDisk(place: string, kilobytes: number): boolean {
  mkdirSync(place);
  return (
    isRoot &&
    spawnSync('mount', ['-t', 'tmpfs', '-o', `size=${kilobytes}k`, 'tmpfs', place]).status === 0
  );
}

type Refused = {
  status: number;
  body: { error: { code: string; message: string } };
  acknowledged: number;
  readStatus: number;
  database: string;
};

async function expectRefusedWell(refused: Refused) {
  expect(refused.status, JSON.stringify(refused.body)).toBe(507);
  expect(refused.body.error.code).toBe('disk-full');
  expect(refused.body.error.message).toMatch(/no room left. Nothing was changed. Make room/);
  expect(refused.readStatus).toBe(200);
  const client = createClient({ url: refused.database });
  expect(Object.values((await client.execute('PRAGMA integrity_check')).rows[0] ?? {})).toEqual([
    'ok',
  ]);
  const feeds = await client.execute('SELECT count(*) AS n FROM feed');
  expect(feeds.rows[0]?.n).toBe(refused.acknowledged);
  client.close();
}

describe('a full disk', () => {
  test('files may not grow any more: the write is refused, reading goes on, nothing is lost', async () => {
    const shell = `trap '' XFSZ; ulimit -f 1500; exec "$0" --import tsx "$1" "$2"`;
    const args = ['-c', shell, process.execPath, script('write-until-refused.ts'), folder];
    const said = execFileSync('bash', args, {
      encoding: 'utf8',
      stdio: ['ignore', 'pipe', 'inherit'],
    });
    await expectRefusedWell(JSON.parse(said) as Refused);
  }, 300_000);

  const disk = mkdtempSync(join(tmpdir(), 'barmline-disk-'));
  const mountable = smallDisk(join(disk, 'probe'), 64);
  if (mountable) spawnSync('umount', [join(disk, 'probe')]);
  rmSync(disk, { recursive: true, force: true });

  test.skipIf(!mountable)(
    `a disk of three megabytes${mountable ? '' : ' (skipped: this user may not mount one)'}`,
    async () => {
      const place = join(folder, 'disk');
      smallDisk(place, 3000);
      try {
        const args = ['--import', 'tsx', script('write-until-refused.ts'), place];
        const said = execFileSync(process.execPath, args, { encoding: 'utf8' });
        await expectRefusedWell(JSON.parse(said) as Refused);
      } finally {
        spawnSync('umount', ['-l', place]);
      }
    },
    300_000,
  );
});

describe('a folder or file that may only be read', () => {
  /** Opens the database as somebody who may not write there. @returns what the start would say */
  function openedByNobody(): string {
    const code =
      `import(${JSON.stringify(new URL('../../../api/store/index.ts', import.meta.url).href)})` +
      `.then(({ openStore }) => openStore({ url: ${JSON.stringify(pathToFileURL(join(folder, 'barmline.db')).href)} }))` +
      `.then(() => console.log('opened'), (error) => console.log(error.name + ': ' + error.message));`;
    return execFileSync(process.execPath, ['--import', 'tsx', '--input-type=module', '-e', code], {
      encoding: 'utf8',
      env: { ...process.env, TMPDIR: tmpdir(), HOME: '/nonexistent' },
      ...(isRoot ? { uid: NOBODY, gid: NOBODY } : {}),
    });
  }

  test.each([
    ['the folder, with nothing in it', false],
    ['folder and database', true],
  ])('%s: a sentence, and not one byte is changed', async (_what, withDatabase) => {
    const file = join(folder, 'barmline.db');
    if (withDatabase) {
      (await openStore({ url: pathToFileURL(file).href })).close();
      chmodSync(file, 0o444);
    }
    const before = withDatabase ? readFileSync(file) : null;
    if (isRoot) chownSync(folder, 0, 0);
    chmodSync(folder, 0o555);
    const said = openedByNobody();
    expect(said).toMatch(/^StoreError: /);
    expect(said).toContain(file);
    expect(said).toMatch(/Nothing was changed. (Give the folder|Check that the data folder)/);
    if (before !== null) expect(readFileSync(file).equals(before)).toBe(true);
    else expect(() => statSync(file)).toThrow();
  });
});

describe('a database that another program holds', () => {
  let open: OpenApp;
  afterEach(() => open.close());

  test('writing is refused with a sentence until it lets go; reading goes on', async () => {
    open = await openApp();
    const library = createRequire(import.meta.url).resolve('@libsql/client');
    const code = `
      const { createClient } = require(${JSON.stringify(library)});
      const client = createClient({ url: ${JSON.stringify(`file:${join(open.folder, 'barmline.db')}`)} });
      client.transaction('write').then(() => { console.log('held'); setTimeout(() => {}, 1e6); });`;
    const other = spawn(process.execPath, ['-e', code], { stdio: ['ignore', 'pipe', 'inherit'] });
    const gone = new Promise((resolve) => other.on('exit', resolve));
    await new Promise((resolve) => other.stdout.once('data', resolve));
    const answer = await open.ask('POST', '/api/feeds', {});
    expect(answer.status, answer.text).toBe(503);
    expect(answer.text).toMatch(/Another program holds the database. Nothing was changed./);
    expect((await open.ask('GET', '/api/plan')).status).toBe(200);
    other.kill('SIGKILL');
    await gone;
    // A refused write must not spoil the ones after it.
    for (let count = 0; count < 6; count += 1) {
      const later = await open.ask('POST', '/api/feeds', {});
      expect(later.status, later.text + open.reported.join()).toBe(201);
    }
  }, 60_000);
});

describe('a damaged database', () => {
  test('a torn page in the middle is told at the start, and the file is left as it is', async () => {
    const url = pathToFileURL(join(folder, 'barmline.db')).href;
    (await openStore({ url })).close();
    const client = createClient({ url });
    await client.execute('PRAGMA wal_checkpoint(TRUNCATE)');
    client.close();
    const file = join(folder, 'barmline.db');
    const handle = openSync(file, 'r+');
    // The page size is 4096: the second half of the file, all noise.
    const half = Math.floor(statSync(file).size / 8192) * 4096;
    writeSync(handle, Buffer.alloc(8192, 0xa5), 0, 8192, half);
    closeSync(handle);
    const before = readFileSync(file);
    await expect(openStore({ url })).rejects.toThrow(
      /damaged.*left as it is.*newest file of the folder backups/s,
    );
    // 18 and 19 are the version of the file format, which WAL sets: nothing of the content.
    const after = readFileSync(file);
    expect(after.subarray(100).equals(before.subarray(100))).toBe(true);
  });

  test('a file that is no database, and an empty name, give the sentence', async () => {
    writeFileSync(join(folder, 'barmline.db'), 'notes on hops '.repeat(500));
    const url = pathToFileURL(join(folder, 'barmline.db')).href;
    await expect(openStore({ url })).rejects.toThrow(/damaged, or is no database/);
  });
});
