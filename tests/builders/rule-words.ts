// What a rule says of itself, as the lines that its page in docs/rules and the tables of docs/planner.md must carry.
import { SETTING_KEYS, SETTINGS } from '../../planner/model/settings.ts';
import { RULES, type Rule } from '../../planner/rules/index.ts';
import { defaultSteps, mendingSteps } from '../../planner/search/search.ts';

const PARTS = { cash: 'cash', work: 'work', risk: 'risk and regret' } as const;

/** The line under the sentence on a rule's page: level, unit, weight and its source. */
export function standing(rule: Rule): string {
  if (rule.level === 'hard') {
    const forbids = `Forbids; counted in ${rule.unit}.`;
    const w = rule.relaxedTo;
    return w
      ? `${forbids} A house may relax it: it then is a hazard of ${w.home} at home and ${w.nano} in a nano brewery (${w.source}).`
      : `${forbids} It cannot be relaxed.`;
  }
  if (rule.level === 'left-out') {
    return `Comes after what is forbidden and before every cost; counted in ${rule.unit}.`;
  }
  const w = rule.weight;
  const weight = w
    ? `Weight: ${w.home} at home, ${w.nano} in a nano brewery, ${w.unit} (${w.source}).`
    : 'No weight of its own: its prices and minutes are settings of the house.';
  return rule.level === 'hazard'
    ? `Hazard. ${weight}`
    : `Costs, under ${PARTS[rule.part]}. ${weight}`;
}

const cell = (text: string | number): string => String(text).replaceAll('|', '\\|');
const row = (...cells: (string | number)[]): string => `| ${cells.map(cell).join(' | ')} |`;

/** Every rule in the order in which it is judged. */
export function ruleTable(): string {
  const lines = [
    row('rule', 'title', 'level', 'home', 'nano', 'unit'),
    '|---|---|---|---|---|---|',
  ];
  for (const rule of RULES) {
    const w =
      rule.level === 'hard' ? rule.relaxedTo : rule.level === 'left-out' ? null : rule.weight;
    const level =
      rule.level === 'hard' && rule.relaxedTo
        ? 'hard, relaxable'
        : rule.level === 'cost'
          ? `cost: ${rule.part}`
          : rule.level;
    lines.push(
      row(
        `[${rule.id}](rules/${rule.id}.md)`,
        rule.title,
        level,
        w?.home ?? '',
        w?.nano ?? '',
        w?.unit ?? rule.unit,
      ),
    );
  }
  return lines.join('\n');
}

/** Every setting with its default in both kinds of house. */
export function settingTable(): string {
  const lines = [
    row('setting', 'home', 'nano', 'unit', 'what it is', 'source'),
    '|---|---|---|---|---|---|',
  ];
  for (const key of SETTING_KEYS) {
    const s = SETTINGS[key];
    lines.push(row(`\`${key}\``, s.home, s.nano, s.unit, s.says, s.source));
  }
  return lines.join('\n');
}

/** The default budget for seasons of some sizes. */
export function budgetTable(): string {
  const lines = [row('brews', 'plans judged by default', 'in a re-plan'), '|---|---|---|'];
  for (const brews of [1, 6, 24, 60, 200]) {
    const steps = [defaultSteps(brews), mendingSteps(brews)].map((n) => n.toLocaleString('en'));
    lines.push(row(brews, ...steps));
  }
  return lines.join('\n');
}
