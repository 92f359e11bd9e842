// A rule is whole or it is not there: file, line in the list, test, page, changelog; and nobody else names it.
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { SETTING_KEYS, SETTINGS } from '../../../planner/model/settings.ts';
import { RULES, type Rule } from '../../../planner/rules/index.ts';
import { budgetTable, ruleTable, settingTable, standing } from '../../builders/rule-words.ts';

const root = new URL('../../..', import.meta.url).pathname;
const read = (...path: string[]) => readFileSync(join(root, ...path), 'utf8');

/** Files of planner/rules that are no rules: what a rule is, the list, and what two of them share. */
const NO_RULES = ['rule.ts', 'index.ts', 'nearness.ts'];

const files = readdirSync(join(root, 'planner/rules'))
  .filter((file) => !NO_RULES.includes(file))
  .map((file) => file.replace(/\.ts$/, ''))
  .sort();

test('every file of a rule is in the list, under its own name, once', () => {
  expect(RULES.map((rule) => rule.id).sort()).toEqual(files);
});

const each = RULES.map((rule) => [rule.id, rule] as const);

test.each(each)('%s has a page that says what its file says', (id, rule) => {
  const blocks = read('docs/rules', `${id}.md`).trimEnd().split('\n\n');
  expect(blocks.slice(0, 3)).toEqual([`# ${rule.title}`, `> ${rule.says}`, standing(rule)]);
  const rest = blocks.slice(3).join('\n\n');
  for (const part of ['**Why.**', '**To change it.**', '**Example.**']) {
    expect(rest, `${part} in docs/rules/${id}.md`).toContain(part);
  }
});

test.each(each)('%s has a test of its own and a line in the changelog', (id) => {
  expect(existsSync(join(root, 'tests/planner/rules', `${id}.test.ts`))).toBe(true);
  expect(read('tests/planner/rules', `${id}.test.ts`)).toContain(`'${id}'`);
  expect(read('docs/changelog.md')).toContain(`\`${id}\``);
});

test('no page is left over from a rule that is gone', () => {
  const pages = readdirSync(join(root, 'docs/rules')).map((page) => page.replace(/\.md$/, ''));
  expect(pages.sort()).toEqual(files);
});

/** The weight that a house may set: of a cost or a hazard, or the hazard that a relaxed rule becomes. */
function weightOf(rule: Rule) {
  if (rule.level === 'hard') return rule.relaxedTo ?? null;
  return rule.level === 'left-out' ? null : rule.weight;
}

test.each(each)('%s is told in whole sentences, and its weight has a source', (_id, rule) => {
  for (const sentence of [rule.says, weightOf(rule)?.says]) {
    if (sentence !== undefined) expect(sentence).toMatch(/^[A-Z].*\.$/s);
  }
  expect(rule.title).not.toBe('');
  expect(rule.unit).not.toBe('');
  const weight = weightOf(rule);
  if (!weight) return;
  expect(weight.source).not.toBe('');
  for (const value of [weight.home, weight.nano]) {
    expect(Number.isFinite(value) && value >= 0).toBe(true);
  }
});

test.each(SETTING_KEYS)(
  'the setting %s has a sentence, a source and defaults inside its bounds',
  (key) => {
    const spec = SETTINGS[key];
    expect(spec.says).toMatch(/^[A-Z].*\.$/s);
    expect(spec.source).not.toBe('');
    for (const value of [spec.home, spec.nano]) {
      expect(value).toBeGreaterThanOrEqual(spec.min);
      expect(value).toBeLessThanOrEqual(spec.max);
      if ('whole' in spec && spec.whole) expect(Number.isInteger(value)).toBe(true);
    }
  },
);

/** Every TypeScript file of the project outside planner/rules, tests left aside. */
function sources(folder: string): string[] {
  return readdirSync(join(root, folder), { withFileTypes: true }).flatMap((entry) => {
    const path = `${folder}/${entry.name}`;
    if (path === 'planner/rules') return [];
    if (entry.isDirectory()) return sources(path);
    return /\.(ts|tsx|mjs)$/.test(entry.name) ? [path] : [];
  });
}

/**
 * Ids that are also words of the model (a state of a jar, a kind of change, a level, a column): for these
 * only what is clearly a rule's id counts, `rule === 'packs'`, `rule.id: 'packs'` and the like.
 */
const ALSO_WORDS = RULES.map((rule) => rule.id).filter(
  (id) => !id.includes('-') || RULES.some((rule) => rule.level === id),
);

test('nothing outside planner/rules names a rule', () => {
  const named: string[] = [];
  for (const path of ['planner', 'api', 'app'].flatMap(sources)) {
    const text = read(path);
    for (const { id } of RULES) {
      const pattern = ALSO_WORDS.includes(id)
        ? new RegExp(`\\brule(\\.id|Id)?\\s*(===?|!==?|:)\\s*['"\`]${id}['"\`]`)
        : new RegExp(`['"\`]${id}['"\`]`);
      if (pattern.test(text)) named.push(`${path} names ${id}`);
    }
  }
  expect(named).toEqual([]);
});

/** The text between two markers of a page. */
function between(page: string, name: string): string {
  const open = `<!-- ${name} -->\n`;
  const from = page.indexOf(open);
  const to = page.indexOf(`\n<!-- /${name} -->`);
  if (from < 0 || to < from) throw new Error(`docs/planner.md has no ${name} between its markers`);
  return page.slice(from + open.length, to).trim();
}

test.each([
  ['rules', ruleTable],
  ['settings', settingTable],
  ['budget', budgetTable],
] as const)('the table of %s in docs/planner.md is the one that the code gives', (name, table) => {
  // when this fails: npx tsx tests/builders/write-tables.ts
  expect(between(read('docs/planner.md'), name)).toBe(table());
});
