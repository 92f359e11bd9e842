// What the terminal shows after the start: the plan in short, and where to go from here.
import { DateTime } from 'luxon';
import { money, type Plan } from '../planner/index.ts';
import type { TaskRow } from './routes/shapes.ts';

const MAX_CHAINS = 12;
const MAX_TASKS = 6;

function dayText(day: string): string {
  return DateTime.fromISO(day, { zone: 'utc' }).toFormat('ccc d LLL', { locale: 'en' });
}

// A name is data: it does not get to steer the terminal.
function plain(text: string): string {
  return text.replace(/\p{Cc}/gu, ' ');
}

function chainLines(plan: Plan): string[] {
  const longest = [...plan.chains].sort((a, b) => b.brews.length - a.brews.length);
  const lines = longest
    .slice(0, MAX_CHAINS)
    .map(({ yeast, root, brews }) => `  ${yeast}: ${[root, ...brews].join(' → ')}`);
  const rest = longest.length - lines.length;
  return rest > 0 ? [...lines, `  … and ${rest} shorter`] : lines;
}

function savedLine(plan: Plan): string {
  const saved = plan.baselines.freshOnly.cashMinor - plan.totals.cashMinor;
  const against = `${money(plan.totals.cashMinor, plan)} for yeast instead of ${money(plan.baselines.freshOnly.cashMinor, plan)} with fresh packs for everything`;
  return saved >= 0
    ? `Cash saved against buying fresh: ${money(saved, plan)} (${against}).`
    : `Cash: ${against}.`;
}

/** The plan in a few lines. */
export function planLines(plan: Plan, next: readonly TaskRow[]): string[] {
  const placed = plan.brews.length;
  const wanted = placed + plan.leftOut.length;
  return [
    `${plan.house}: ${placed} of ${wanted} brews placed` +
      (plan.broken.length > 0 ? `, ${plan.broken.length} rules broken (see the page)` : ''),
    '',
    'Where the yeast goes:',
    ...chainLines(plan),
    '',
    ...(next.length === 0 ? [] : ['Next tasks:']),
    ...next.slice(0, MAX_TASKS).map((task) => `  ${dayText(task.day)}  ${task.title}`),
    ...(next.length === 0 ? [] : ['']),
    savedLine(plan),
  ].map(plain);
}
