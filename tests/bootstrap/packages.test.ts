// Packages are installed when they are not there or not the ones of the lock file, and only then.
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { ran, remove, root } from './copy.ts';

// A project with one package that lies in its own folder: npm needs no network for it.
let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'barmline-packages-'));
  mkdirSync(join(folder, 'api'));
  cpSync(join(root, 'api', 'prepare.mjs'), join(folder, 'api', 'prepare.mjs'));
  mkdirSync(join(folder, 'hydrometer'));
  writeJson('hydrometer/package.json', { name: 'hydrometer', version: '1.0.0' });
  writeJson('package.json', {
    name: 'bench',
    version: '1.0.0',
    dependencies: { hydrometer: 'file:hydrometer' },
  });
  writeJson('package-lock.json', {
    name: 'bench',
    version: '1.0.0',
    lockfileVersion: 3,
    requires: true,
    packages: {
      '': { name: 'bench', version: '1.0.0', dependencies: { hydrometer: 'file:hydrometer' } },
      hydrometer: { version: '1.0.0' },
      'node_modules/hydrometer': { resolved: 'hydrometer', link: true },
    },
  });
});
afterAll(() => remove(folder));

const writeJson = (file: string, value: unknown) =>
  writeFileSync(join(folder, file), JSON.stringify(value, null, 2));

const install = () =>
  ran(
    ['--input-type=module', '-e', "await (await import('./api/prepare.mjs')).installPackages()"],
    folder,
    { NODE_ENV: 'production' },
  );

test('installs once, again after a broken-off install, and says when it cannot', async () => {
  const first = await install();
  expect([first.code, first.stderr]).toEqual([0, expect.stringContaining('Installing packages')]);
  expect(first.stdout).toBe('');
  expect(readFileSync(join(folder, 'node_modules/hydrometer/package.json'), 'utf8')).toContain(
    '1.0.0',
  );

  expect(await install()).toMatchObject({ code: 0, stderr: '' });

  // npm writes this list last: without it an install was broken off
  rmSync(join(folder, 'node_modules', '.package-lock.json'));
  expect((await install()).stderr).toContain('Installing packages');

  const lock = readFileSync(join(folder, 'package-lock.json'), 'utf8');
  writeFileSync(
    join(folder, 'package-lock.json'),
    lock.replace('"node_modules/hydrometer"', '"node_modules/thermometer"'),
  );
  const failed = await install();
  expect(failed.code).toBe(1);
  expect(failed.stderr).toMatch(/Installing packages failed \(npm ci ended with code \d+\)/);
}, 120_000);
