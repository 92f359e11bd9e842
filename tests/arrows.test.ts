// Arrows go one way: app → api (types) and planner, api → planner, planner → zod, luxon and itself.
import { readdirSync, readFileSync } from 'node:fs';
import { join, relative, resolve } from 'node:path';
import { expect, test } from 'vitest';

const root = resolve(new URL('..', import.meta.url).pathname);
const IMPORT =
  /^\s*(?:import|export)\s+(type\s)?[^'"]*?from\s+['"]([^'"]+)['"]|import\(\s*['"]([^'"]+)['"]|^\s*import\s+['"]([^'"]+)['"]/gm;

type Arrow = { file: string; to: string; type: boolean };

/** Every import of a folder's files: packages by name, files by their path in the repository. */
function arrows(folder: string): Arrow[] {
  return readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.(ts|tsx|mjs)$/.test(name))
    .flatMap((name) => {
      const file = join(folder, name);
      return [...readFileSync(join(root, file), 'utf8').matchAll(IMPORT)].map((m) => {
        const to = m[2] ?? m[3] ?? m[4] ?? '';
        return {
          file,
          to: to.startsWith('.') ? relative(root, resolve(root, file, '..', to)) : to,
          type: m[1] !== undefined,
        };
      });
    });
}

const inside = (arrow: Arrow, folder: string) => arrow.to.startsWith(`${folder}/`);
const named = (list: Arrow[]) => list.map((a) => `${a.file} → ${a.to}`);

test('the planner leans on zod, luxon and itself alone', () => {
  const all = arrows('planner');
  expect(all.length).toBeGreaterThan(100);
  expect(
    named(all.filter((a) => !inside(a, 'planner') && !['zod', 'luxon'].includes(a.to))),
  ).toEqual([]);
});

test('the API knows nothing of the app, and the app only the types of the API', () => {
  expect(named(arrows('api').filter((a) => inside(a, 'app')))).toEqual([]);
  expect(named(arrows('app').filter((a) => inside(a, 'api') && !a.type))).toEqual([]);
});

/** A formula alone, with nothing behind it: the page may take it so, or the whole planner would travel along. */
const lone = (arrow: Arrow) =>
  arrow.file.startsWith('app/') &&
  /^planner\/(science|tasks)\//.test(arrow.to) &&
  arrows('planner').every((a) => a.file !== arrow.to || a.type);

test('others enter the planner by its face, but for lone formulas on the page', () => {
  const outside = [...arrows('api'), ...arrows('app')].filter((a) => inside(a, 'planner'));
  expect(outside.length).toBeGreaterThan(5);
  expect(named(outside.filter((a) => a.to !== 'planner/index.ts' && !lone(a)))).toEqual([]);
});
