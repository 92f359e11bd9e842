// Prediction against what happened, over all that was told and still holds.
import type { CultureRef, Expected, Hindsight, Lag, News, Outcome } from '../model/index.ts';
import type { RecordEntry } from './entry.ts';
import { standing } from './fold.ts';

/** @param entries the record, in order; what was taken back counts for nothing */
export function hindsightOf(entries: readonly RecordEntry[]): Hindsight {
  const holding = standing(entries);
  const readings = lastReadings(holding);
  const outcomes = holding.flatMap((entry) =>
    (entry.expected ?? []).flatMap((expected) => outcome(entry, expected, readings)),
  );
  const strains: Hindsight['strains'] = [];
  for (const { yeast, figure, within } of outcomes) {
    if (within === null) continue;
    let row = strains.find((one) => one.yeast === yeast && one.figure === figure);
    if (row === undefined) {
      row = { yeast, figure, told: 0, within: 0 };
      strains.push(row);
    }
    row.told += 1;
    if (within) row.within += 1;
  }
  return { outcomes, strains, lags: lagsOf(holding) };
}

/** No published model foretells a lag from what a brewer knows, so it stands beside what was pitched; told again, the last counts. */
function lagsOf(entries: readonly RecordEntry[]): Lag[] {
  const last = new Map<string, Lag>();
  for (const { no, fact } of entries) {
    if (fact.kind !== 'lag') continue;
    const { brew, yeast, generation, viability, hours } = fact;
    last.set(brew, { entry: no, brew, yeast, generation, viability, hours });
  }
  return [...last.values()];
}

/** Jars are read again once they have settled: the last reading is what the beer gave. */
function lastReadings(entries: readonly RecordEntry[]): ReadonlyMap<string, number> {
  const readings = new Map<string, number>();
  for (const { news } of entries) {
    if (news.kind === 'harvested') readings.set(news.brew, news.settledMl);
  }
  return readings;
}

function outcome(
  { no, news }: RecordEntry,
  expected: Expected,
  readings: ReadonlyMap<string, number>,
): Outcome[] {
  const told = figureOf(news, expected, readings);
  if (told === null) return [];
  const { low, high } = expected;
  const within =
    low === null || high === null ? null : told.happened >= low && told.happened <= high;
  return [{ ...expected, ...told, entry: no, within }];
}

type Told = { happened: number; of: CultureRef; day: string | null };

function figureOf(
  news: News,
  { figure }: Expected,
  readings: ReadonlyMap<string, number>,
): Told | null {
  switch (news.kind) {
    case 'harvested': {
      const happened = readings.get(news.brew) ?? news.settledMl;
      return { happened, of: { kind: 'harvest', brew: news.brew }, day: news.day };
    }
    case 'measured': {
      const { of, day, stained, total, viability, millionPerMl } = news;
      const alive = stained !== null && total !== null ? 1 - stained / total : viability;
      const happened = figure === 'viability' ? alive : millionPerMl;
      return happened === null ? null : { happened, of, day };
    }
    case 'gravity': {
      const happened = figure === 'og' ? news.og : news.fg;
      const of = { kind: 'beer' as const, brew: news.brew };
      return happened === null ? null : { happened, of, day: null };
    }
    default:
      return null;
  }
}
