// A plan as it is read in a terminal: the brews in a table, where the yeast goes, what to do next, what it costs.
import { DateTime } from 'luxon';
import {
  money,
  type Plan,
  type PlannedBrew,
  type PlannedHarvest,
  type Range,
  type Task,
  type Totals,
} from '../../planner/index.ts';
import { plain, table, wrapped } from './table.ts';

const NEXT_TASKS = 8;

/** `Sat 2027-01-09` */
const dayText = (day: string) =>
  DateTime.fromISO(day, { zone: 'utc' }).toFormat('ccc yyyy-MM-dd', { locale: 'en' });

const count = (amount: number, one: string, many = `${one}s`) =>
  `${amount} ${amount === 1 ? one : many}`;

const percent = (share: number) => Math.round(share * 100);
const shares = ({ low, likely, high }: Range) =>
  `${percent(low)}–${percent(likely)}–${percent(high)}`;

/** Millilitres as they are measured out: whole below a litre, litres above ten. */
const volume = (ml: number) =>
  ml >= 10_000 ? `${(ml / 1000).toFixed(1)} L` : `${Math.round(ml)} mL`;

/** Both ends in one unit. */
const volumeRange = ({ low, high }: Range) =>
  high >= 10_000
    ? `${(low / 1000).toFixed(1)}–${(high / 1000).toFixed(1)} L`
    : `${Math.round(low)}–${Math.round(high)} mL`;

/** What is pitched, in a few words. */
function pitchText({ source, starter }: PlannedBrew): string {
  const grown = starter ? `, ${starter.litres} L starter` : '';
  switch (source.kind) {
    case 'fresh':
      return `${count(source.packs, 'fresh pack')}${grown}`;
    case 'jar':
      return `${volume(source.drawMl)} of jar ${source.jar}${grown}`;
    case 'harvest':
      return source.ofStarter
        ? `${volume(source.drawMl)} kept from the starter of ${source.brew}${grown}`
        : `${volume(source.drawMl)} out of ${source.brew}${grown}`;
  }
}

function brewRows(plan: Plan): string[][] {
  return plan.brews.map((brew) => [
    dayText(brew.day),
    brew.done ? `${brew.brew} (brewed)` : brew.brew,
    brew.tank,
    brew.yeast,
    pitchText(brew),
    String(brew.generation),
    shares(brew.viability),
    brew.emptiedOn,
    brew.readyOn,
    brew.daysLate > 0 ? `${brew.daysLate} d late` : '',
  ]);
}

function brewLines(plan: Plan): string[] {
  if (plan.brews.length === 0) return ['No brew could be placed.'];
  const columns = [
    { head: 'Day' },
    { head: 'Brew' },
    { head: 'Tank' },
    { head: 'Yeast' },
    { head: 'Pitched' },
    { head: 'Gen', right: true },
    { head: 'Alive %', right: true },
    { head: 'Emptied' },
    { head: 'Ready' },
    { head: '' },
  ];
  return [
    ...table(columns, brewRows(plan)),
    '',
    'Gen: generation of the yeast that is pitched; a fresh pack is 0, slurry out of its first beer is 1.',
    'Alive: share of the cells alive when they are drawn, low–likely–high (an 80 % interval).',
  ];
}

function jarText(jar: PlannedHarvest['jars'][number]): string {
  const { untilPassed } = jar;
  const kept = untilPassed === undefined ? 'kept' : `in reserve until ${untilPassed} is passed`;
  return `${volume(jar.ml)} ${jar.for === null ? kept : `for ${jar.for}`}`;
}

function harvestLines(plan: Plan): string[] {
  if (plan.harvests.length === 0) return [];
  const columns = [
    { head: 'Day' },
    { head: 'Harvest' },
    { head: 'Expected', right: true },
    { head: 'Low–high', right: true },
    { head: 'Discard by' },
    { head: 'Jars' },
  ];
  const rows = plan.harvests.map((harvest) => [
    dayText(harvest.day),
    `${harvest.ofStarter ? `${harvest.brew}, its starter` : harvest.brew}${harvest.done ? ' (done)' : ''}`,
    volume(harvest.settledMl.likely),
    volumeRange(harvest.settledMl),
    harvest.discardBy,
    harvest.jars.map(jarText).join(', '),
  ]);
  return ['', 'Harvests, as settled slurry', ...table(columns, rows)];
}

function chainLines(plan: Plan): string[] {
  if (plan.chains.length === 0) return [];
  const lines = plan.chains.flatMap(({ yeast, root, brews, endsBecause }) => [
    ...wrapped(`${yeast}: ${[root, ...brews].join(' → ')}`, '  '),
    ...wrapped(`ends: ${endsBecause}`, '    '),
  ]);
  return ['', 'Where the yeast goes', ...lines];
}

function orderLines(plan: Plan): string[] {
  if (plan.orders.length === 0) return [];
  const lines = plan.orders.map(({ orderOn, arrivesOn, lines: packs, deliveryMinor }) => {
    const what = packs.map((line) => `${count(line.packs, 'pack')} of ${line.yeast}`).join(', ');
    const price = packs.reduce((sum, line) => sum + line.costMinor, deliveryMinor);
    return `  ${dayText(orderOn)}  ${what}, here by ${arrivesOn}, ${money(price, plan)} with delivery`;
  });
  return ['', 'Orders', ...lines.map(plain)];
}

function leftOutLines(plan: Plan): string[] {
  if (plan.leftOut.length === 0) return [];
  const lines = plan.leftOut.flatMap(({ brew, blockedBy, nearestDay, wayOut }) => [
    plain(`  ${brew}`),
    ...blockedBy.flatMap(({ says }) => wrapped(says, '    ')),
    ...(nearestDay === null
      ? []
      : [`    The nearest day that would work is ${dayText(nearestDay)}.`]),
    ...wrapped(wayOut, '    '),
  ]);
  return ['', 'Left out', ...lines];
}

function brokenLines(plan: Plan): string[] {
  if (plan.broken.length === 0) return [];
  const lines = plan.broken.flatMap(({ says, remedy }) => [
    ...wrapped(says, '  '),
    ...wrapped(remedy, '    '),
  ]);
  return ['', 'Rules that are broken', ...lines];
}

function taskLines(tasks: readonly Task[]): string[] {
  const next = tasks.filter((task) => !task.done).slice(0, NEXT_TASKS);
  if (next.length === 0) return [];
  return ['', 'Next tasks', ...next.map((task) => plain(`  ${dayText(task.day)}  ${task.title}`))];
}

function costLines(plan: Plan): string[] {
  const row = (name: string, totals: Totals) => [
    name,
    money(totals.cashMinor, plan),
    money(totals.workMinor, plan),
    money(totals.riskMinor, plan),
    money(totals.costMinor, plan),
    String(totals.packs),
    String(totals.leftOut),
  ];
  const columns = [
    { head: 'Cost' },
    { head: 'Cash', right: true },
    { head: 'Work', right: true },
    { head: 'Risk', right: true },
    { head: 'In all', right: true },
    { head: 'Packs', right: true },
    { head: 'Left out', right: true },
  ];
  const saved = plan.baselines.freshOnly.cashMinor - plan.totals.cashMinor;
  return [
    '',
    ...table(columns, [
      row('This plan', plan.totals),
      row('Fresh packs for everything', plan.baselines.freshOnly),
      row('Re-pitching in date order', plan.baselines.dateOrder),
    ]),
    saved >= 0
      ? `Cash saved against buying fresh: ${money(saved, plan)}.`
      : `In cash this plan costs ${money(-saved, plan)} more than buying fresh.`,
    ...wrapped(plan.bound?.says ?? plan.noBound ?? '', ''),
  ];
}

function headLines(plan: Plan): string[] {
  const wanted = plan.brews.length + plan.leftOut.length;
  const broken =
    plan.broken.length === 0 ? 'no rule broken' : `${count(plan.broken.length, 'rule')} broken`;
  return [
    plain(`${plan.house}, planned on ${dayText(plan.today)}`),
    `${plan.brews.length} of ${count(wanted, 'brew')} placed, ${broken}.`,
    '',
  ];
}

/** The lines of a plan for a terminal. */
export function planText(plan: Plan, tasks: readonly Task[]): string {
  return `${[
    ...headLines(plan),
    ...brewLines(plan),
    ...leftOutLines(plan),
    ...brokenLines(plan),
    ...chainLines(plan),
    ...harvestLines(plan),
    ...orderLines(plan),
    ...taskLines(tasks),
    ...costLines(plan),
    ...(plan.notes.length === 0 ? [] : ['', ...plan.notes.flatMap((note) => wrapped(note, ''))]),
  ].join('\n')}\n`;
}
