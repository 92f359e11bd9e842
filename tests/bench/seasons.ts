// Measures the planning of the two shared seasons: time, cost against the plain baselines, spread over seeds.
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { readFolder } from '../../api/folder/index.ts';
import { defaultToday, type Plan, plan } from '../../planner/index.ts';
import { cpuSeconds, type Row } from './measure.ts';

const SEASONS = [
  { name: 'lantern-shed', targetSeconds: 3 },
  { name: 'quay-seven', targetSeconds: 15 },
] as const;

/** SHA-256 over names and contents of a folder's files, the first twelve digits. */
function checksum(folder: string): string {
  const hash = createHash('sha256');
  for (const file of readdirSync(folder).sort())
    hash.update(file).update(readFileSync(join(folder, file)));
  return hash.digest('hex').slice(0, 12);
}

const middle = (xs: readonly number[]): number =>
  [...xs].sort((a, b) => a - b)[Math.floor(xs.length / 2)] ?? 0;

export async function seasonRows(seeds: number): Promise<Row[]> {
  const rows: Row[] = [];
  for (const { name, targetSeconds } of SEASONS) {
    const folder = new URL(`../seasons/${name}`, import.meta.url).pathname;
    const { house } = await readFolder(folder);
    if (!house) throw new Error(`${name} cannot be read`);
    const plans: Plan[] = [];
    const seconds: number[] = [];
    for (let seed = 1; seed <= seeds; seed++) {
      const run = cpuSeconds(() => plan({ house, today: defaultToday(house), seed }));
      plans.push(run.result);
      seconds.push(run.seconds);
    }
    const first = plans[0] as Plan;
    const costs = plans.map((p) => p.totals.costMinor);
    const note = `folder ${checksum(folder)}, ${seeds} seeds, ${first.steps} steps`;
    const add = (what: string, value: number, unit: string, target: number | null, more = '') =>
      rows.push({
        what: `${name}: ${what}`,
        value,
        unit,
        target,
        better: 'less',
        note: more || note,
      });
    add('planned in', middle(seconds), 's', targetSeconds);
    add('hard rules broken, worst seed', Math.max(...plans.map((p) => p.totals.hard)), '', 0);
    add('brews left out, worst seed', Math.max(...plans.map((p) => p.totals.leftOut)), 'brews', 0);
    add('cost, middle seed', middle(costs) / first.minorPerMajor, first.currency, null);
    add(
      'cost, worst seed against the best',
      Math.max(...costs) / Math.min(...costs),
      'times',
      null,
    );
    const { freshOnly, dateOrder } = first.baselines;
    add(
      'cost against fresh packs for everything',
      middle(costs) / freshOnly.costMinor,
      'times',
      1,
      `the baseline leaves ${freshOnly.leftOut} out`,
    );
    add(
      'cost against re-pitching in date order',
      middle(costs) / dateOrder.costMinor,
      'times',
      1,
      `the baseline leaves ${dateOrder.leftOut} out`,
    );
  }
  return rows;
}
