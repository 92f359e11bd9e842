// The best plan so far in words: its cost by part, how far from the best possible it can be, what is amiss, how far the search is.
import type { Progress } from '../../planner/index.ts';
import { money } from './money.ts';
import { count } from './words.ts';

type Coin = { currency: string; minorPerMajor: number };

export function bestWords(run: { progress: Progress | null }, coin: Coin | null): string {
  const { progress } = run;
  if (progress === null) return 'laying out a first plan.';
  const steps = `${progress.stepsDone.toLocaleString('en-GB')} of ${progress.steps.toLocaleString('en-GB')} steps`;
  const troubles = [
    progress.hard > 0 ? 'rules still broken' : '',
    progress.leftOut > 0 ? `${count(progress.leftOut, 'brew')} left out` : '',
  ].filter((word) => word !== '');
  const cost = coin ? costWords(progress, coin) : 'working';
  return `${[cost, ...boundWords(progress), ...troubles].join(', ')}; ${steps}.`;
}

function costWords({ costMinor, parts }: Progress, coin: Coin): string {
  const all = `best so far ${money(costMinor, coin)} in all`;
  if (!parts) return all;
  const { cashMinor, workMinor, riskMinor } = parts;
  return `${all} (cash ${money(cashMinor, coin)}, work ${money(workMinor, coin)}, risk ${money(riskMinor, coin)})`;
}

function boundWords({ hard, costMinor, boundMinor }: Progress): string[] {
  if (hard > 0 || boundMinor === null) return [];
  if (costMinor <= boundMinor) return ['the best possible'];
  // rounded up: never closer than it is
  if (boundMinor <= 0) return [];
  return [
    `at most ${Math.ceil((100 * (costMinor - boundMinor)) / boundMinor)} % above the best possible`,
  ];
}
