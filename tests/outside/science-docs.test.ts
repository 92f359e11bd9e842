// Writes the tables of docs/science.md from what the models say, and fails when they say something else.
//
// To write them: npx vitest run --config tests/vitest.config.ts tests/outside/science-docs -u
import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { SETTING_KEYS, SETTINGS } from '../../planner/model/settings.ts';
import { agrees, OUTSIDE_VALUES, type OutsideValue } from './science-values/index.ts';
import { coverage, WORLDS } from './science-worlds.ts';

const ROOT = new URL('../../', import.meta.url);
const DOCS = new URL('docs/science.md', ROOT).pathname;
const SCIENCE = new URL('planner/science/', ROOT).pathname;

const table = (head: readonly string[], rows: readonly (readonly string[])[]): string =>
  [head, head.map(() => '---'), ...rows]
    .map((row) => `| ${row.map((cell) => cell.replaceAll('|', '\\|')).join(' | ')} |`)
    .join('\n');

/** The settings that the science reads; docs/planner.md lists them all. */
function settingsTable(): string {
  const code = readdirSync(SCIENCE, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts'))
    .map((name) => readFileSync(SCIENCE + name, 'utf8'))
    .join('\n');
  const used = SETTING_KEYS.filter((key) => new RegExp(`\\b(s|SETTINGS)\\.${key}\\b`).test(code));
  return table(
    ['setting', 'what it means', 'unit', 'bounds', 'home', 'brewery', 'source'],
    used.map((key) => {
      const { says, unit, min, max, home, nano, source } = SETTINGS[key];
      return [`\`${key}\``, says, unit, `${min}–${max}`, `${home}`, `${nano}`, source];
    }),
  );
}

function expectedText({ expected, digits }: OutsideValue): string {
  if ('value' in expected) {
    const value = expected.value.toFixed(digits);
    return expected.within < 1e-6 ? value : `${value} ± ${Number(expected.within.toPrecision(2))}`;
  }
  return `${expected.low.toFixed(digits)} to ${expected.high.toFixed(digits)}`;
}

function agreementTable(): string {
  return table(
    ['model', 'what', 'expected', 'got', '', 'source'],
    OUTSIDE_VALUES.map((v) => [
      v.model,
      v.what,
      expectedText(v),
      v.got().toFixed(v.digits),
      agrees(v.expected, v.got()) ? 'agrees' : `differs: ${v.differs ?? 'NOT EXPECTED'}`,
      v.source,
    ]),
  );
}

const percent = (share: number) => `${Math.round(share * 100)} %`;

function learningRows(): string[][] {
  return WORLDS.map((world) => {
    const c = coverage(world, 5, 300, 2027);
    return [
      world.name,
      percent(c.unlearnt),
      percent(c.learnt),
      `${Math.round(c.widthUnlearnt * 100)} points`,
      `${Math.round(c.width * 100)} points`,
    ];
  });
}

/** Numbers of a table as it stands, row by row. */
const numbers = (text: string) => (text.match(/\d+ (%|points)/g) ?? []).map((n) => parseInt(n, 10));

const block = (name: string) =>
  new RegExp(`(<!-- ${name}:begin -->\n)([\\s\\S]*?)(<!-- ${name}:end -->)`);

function withBlock(text: string, name: string, content: string): string {
  expect(text, `docs/science.md has lost its block "${name}"`).toMatch(block(name));
  return text.replace(
    block(name),
    (_, begin: string, _old, end: string) => `${begin}${content}\n${end}`,
  );
}

test('docs/science.md says what the models say', async () => {
  const docs = readFileSync(DOCS, 'utf8');
  let fresh = withBlock(docs, 'settings', settingsTable());
  fresh = withBlock(fresh, 'agreement', agreementTable());
  // Simulated shares may flip by a house on another machine: only a real difference rewrites them.
  const rows = learningRows();
  const old = numbers(block('learning').exec(docs)?.[2] ?? '');
  const now = numbers(rows.flat().join(' '));
  const same =
    old.length === now.length && old.every((n, i) => Math.abs(n - (now[i] ?? Number.NaN)) <= 2);
  if (!same)
    fresh = withBlock(
      fresh,
      'learning',
      table(['world', 'default', 'after five counts', 'width, default', 'width, after'], rows),
    );
  await expect(fresh).toMatchFileSnapshot(DOCS);
});

test('every file of the science is named in docs/science.md', () => {
  const docs = readFileSync(DOCS, 'utf8');
  const models = readdirSync(SCIENCE).filter(
    (name) => name.endsWith('.ts') && !['index.ts', 'chance.ts', 'units.ts'].includes(name),
  );
  for (const name of models) expect(docs).toContain(`\`${name}\``);
});

test('no model is without an outside value', () => {
  const models = new Set(OUTSIDE_VALUES.map((v) => v.model));
  for (const model of ['gravity', 'alcohol', 'need', 'packs', 'slurry', 'viability', 'harvest'])
    expect(models).toContain(model);
  for (const model of ['starters', 'carry-over', 'counting', 'tasting', 'units'])
    expect(models).toContain(model);
});
