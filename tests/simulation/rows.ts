// The season of sixty brews lived through, and its figures as rows of the benchmarks.
import { GENERATED_TODAY, generatedSeason, shapeOf } from '../bench/generated.ts';
import type { Row } from '../bench/measure.ts';
import { bundledWorker } from '../builders/worker.ts';
import { liveSeason, type Season, type Told } from './season.ts';

const BREWS = 60;
/** The first plan is searched long enough to be worth following; re-plans take the server's own budget. */
const FIRST_STEPS = 60_000;

/** The value below which this share of them lies. */
function quantile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? 0;
}

const row = (what: string, value: number, unit: string, target: number | null, note = ''): Row => ({
  what,
  value,
  unit,
  target,
  better: 'less',
  note,
});

/** Median, 90 % and worst of the entries that changed. */
function entryRows(name: string, told: readonly Told[]): Row[] {
  if (told.length === 0) return [];
  const entries = told.map((one) => one.entries);
  const note = `${told.length} told, ${told.filter((one) => one.replanned).length} re-planned`;
  return [
    row(`${name}: entries changed, median`, quantile(entries, 0.5), 'entries', null, note),
    row(`${name}: entries changed, 90 %`, quantile(entries, 0.9), 'entries', null, note),
    row(`${name}: entries changed, worst`, Math.max(...entries), 'entries', null, note),
    row(
      `${name}: of these new, gone or at another time, median`,
      quantile(
        told.map((one) => one.shifted),
        0.5,
      ),
      'entries',
      null,
      'the others say something else: an amount, a share alive, done',
    ),
  ];
}

export function rowsOf(season: Season): Row[] {
  const { told, violations, refused } = season;
  const slips = told.filter((one) => one.kind === 'slipped');
  const about = `${season.days} days, ${season.brewed} brewed, ${season.polls} polls read by ical.js`;
  const share = slips.map((one) => one.entries / Math.max(1, one.expected ?? 1));
  const waited = told.filter((one) => one.replanned).map((one) => one.seconds);
  return [
    row('promises broken (facts, UIDs, marks, suspects)', violations.length, '', 0, about),
    row('news that the record refused', refused.length, '', null, `${told.length} taken`),
    ...entryRows('any news', told),
    ...entryRows('a slip', slips),
    row(
      'median slip against the tasks of its brew, tank and descendants',
      quantile(share, 0.5),
      'times',
      1,
    ),
    row(
      'a slip: entries changed elsewhere, median',
      quantile(
        slips.map((one) => one.elsewhere ?? 0),
        0.5,
      ),
      'entries',
      null,
      'of other brews in other tanks',
    ),
    ...entryRows(
      'a harvest',
      told.filter((one) => one.kind === 'harvested' || one.kind === 'harvest-lost'),
    ),
    ...entryRows(
      'a count',
      told.filter((one) => one.kind === 'measured'),
    ),
    ...entryRows(
      'a bad culture',
      told.filter((one) => one.kind === 'suspect'),
    ).slice(-2),
    row('from news to draft, median', quantile(waited, 0.5), 's', null, 'wall clock, load and all'),
    row('from news to draft, 90 %', quantile(waited, 0.9), 's', null),
    row(
      'entries that left and came back',
      season.returned,
      'entries',
      null,
      'each under its old UID and a higher SEQUENCE, else a promise is broken',
    ),
  ];
}

/** Lives the season through and says each day; a broken promise is printed and ends the command with 1. */
export async function simulationRows(seed = 1): Promise<Row[]> {
  const season = await liveSeason({
    house: generatedSeason(shapeOf(BREWS, 0)),
    from: GENERATED_TODAY,
    seed,
    workerUrl: await bundledWorker(),
    firstSteps: FIRST_STEPS,
    steps: null,
    progress: (line) => process.stderr.write(`${line}\n`),
  });
  for (const line of [...season.violations, ...season.refused]) process.stderr.write(`${line}\n`);
  if (season.violations.length > 0) process.exitCode = 1;
  return rowsOf(season);
}
