// Whether the slack setting is one: plans made with and without it, each lived through the same drawn seasons.
import { readFolder } from '../../api/folder/index.ts';
import { defaultToday, type House, type Plan, plan, steadiness } from '../../planner/index.ts';
import type { Row } from './measure.ts';
import { middle } from './timed.ts';

const SLACK_DAYS = 5;
/** Rules that only a house with slack pays for: left out where two plans' costs are compared. */
const SLACK_RULES = new Set(['no-slack', 'thin-yeast', 'thin-harvest']);

const costOf = ({ totals, costs }: Plan): number =>
  costs.reduce(
    (sum, line) => (SLACK_RULES.has(line.rule) ? sum - line.amountMinor : sum),
    totals.costMinor,
  );

async function season(name: string): Promise<House> {
  const { house } = await readFolder(new URL(`../seasons/${name}`, import.meta.url).pathname);
  if (!house) throw new Error(`${name} cannot be read`);
  return house;
}

/** Percent points more, with slack than without, over seeds that nothing was tuned on. */
export async function slackRows(quick: boolean): Promise<Row[]> {
  const house = await season('lantern-shed');
  const today = defaultToday(house);
  const seeds = Array.from({ length: quick ? 2 : 10 }, (_, i) => 7001 + i);
  const more = { day: [] as number[], source: [] as number[], cost: [] as number[] };
  for (const seed of seeds) {
    const plain = plan({ house, today, seed });
    const rules = { ...house.rules, slackDays: SLACK_DAYS };
    const slack = plan({ house: { ...house, rules }, today, seed });
    const [a, b] = [plain, slack].map((made) => steadiness(made, house, { seed: seed * 17 }));
    more.day.push(100 * ((b?.keepsDay ?? 0) - (a?.keepsDay ?? 0)));
    more.source.push(100 * ((b?.keepsSource ?? 0) - (a?.keepsSource ?? 0)));
    more.cost.push(100 * (costOf(slack) / costOf(plain) - 1));
  }
  const won = more.source.filter((points, i) => points > 0 || (more.day[i] ?? 0) > 0).length;
  const row = (what: string, values: number[], better: Row['better'], target: number | null) => ({
    what: `slack of ${SLACK_DAYS} days, lantern-shed: ${what}`,
    value: middle(values),
    target,
    better,
    note: `${seeds.length} seeds, 1,000 drawn seasons each; worst ${Math.min(...values).toFixed(1)}, best ${Math.max(...values).toFixed(1)}`,
  });
  return [
    {
      ...row('re-pitches that keep their source, more', more.source, 'more', 0.01),
      unit: 'percent points',
    },
    {
      ...row('brews that keep their day, more', more.day, 'more', null),
      unit: 'percent points',
    },
    {
      what: `slack of ${SLACK_DAYS} days, lantern-shed: plans that win on day or source`,
      value: (100 * won) / seeds.length,
      unit: '% of seeds',
      target: 90,
      better: 'more',
      note: `${won} of ${seeds.length}`,
    },
    { ...row('dearer, slack itself not counted', more.cost, 'less', null), unit: '%' },
  ];
}
