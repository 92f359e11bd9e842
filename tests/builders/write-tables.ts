// Writes the tables of rules and settings into docs/planner.md: npx tsx tests/builders/write-tables.ts
import { readFileSync, writeFileSync } from 'node:fs';
import { budgetTable, ruleTable, settingTable } from './rule-words.ts';

const path = new URL('../../docs/planner.md', import.meta.url);
let page = readFileSync(path, 'utf8');
for (const [name, table] of [
  ['rules', ruleTable()],
  ['settings', settingTable()],
  ['budget', budgetTable()],
] as const) {
  const marked = new RegExp(`(<!-- ${name} -->)[\\s\\S]*?(<!-- /${name} -->)`);
  if (!marked.test(page)) throw new Error(`docs/planner.md has no markers for ${name}`);
  page = page.replace(marked, (_all, open, close) => `${open}\n\n${table}\n\n${close}`);
}
writeFileSync(path, page);
