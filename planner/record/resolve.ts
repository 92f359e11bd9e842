// News to an entry of the record: worked out with the plan in force at hand, or refused with the ways out.
import type { House, IsoDay, News, Plan, Problem } from '../model/index.ts';
import { sayDay } from '../tasks/days.ts';
import { conflict } from './conflicts.ts';
import type { RecordEntry, RecordFact } from './entry.ts';
import { type RecordState, readLedger, standing } from './fold.ts';
import type { Ledger } from './ledger.ts';
import { brewedFact } from './news/brewed.ts';
import { harvestedFact } from './news/harvested.ts';
import { goneFact } from './news/jar-gone.ts';
import { pinnedFact, unpinnedFact } from './news/pinned.ts';
import { slippedFact } from './news/slipped.ts';
import { taskDoneFact } from './news/task-done.ts';
import { asProblem, type Refusal } from './refusal.ts';

/** What news is worked out from. */
export type Asked = {
  state: RecordState;
  ledger: Ledger;
  house: House;
  inForce: Plan;
  today: IsoDay;
};
export type Resolved = { fact: RecordFact } | { refusals: Refusal[] };

/**
 * Works out what a piece of news comes to.
 * @param state the record folded, as `foldRecord` gives it; nothing in it is changed
 * @param inForce the plan that people follow: source, draw, generation and cells of a pitch are taken from it
 * @returns the entry to append, numbered after the last one; or all problems, and then nothing is to be applied.
 * News of one record must be resolved one after the other: each with the state that holds the one before.
 */
export function resolveNews(
  news: News,
  state: RecordState,
  house: House,
  inForce: Plan,
  today: IsoDay,
): { entry: RecordEntry } | { problems: Problem[] } {
  const { ledger } = readLedger(state.entries);
  const asked = { state, ledger, house, inForce, today };
  const refusals = inTheFuture(news, today);
  const resolved = news.kind === 'undone' ? { fact: undoneFact(news.entry) } : factOf(news, asked);
  if ('refusals' in resolved) refusals.push(...resolved.refusals);
  if (refusals.length > 0 || !('fact' in resolved)) return { problems: refusals.map(asProblem) };

  const entry: RecordEntry = { no: nextNo(state.entries), news, fact: resolved.fact };
  const clash =
    entry.fact.kind === 'undone'
      ? undoConflict(entry, entry.fact.entry, state.entries)
      : conflict(ledger, entry);
  return clash === null ? { entry } : { problems: [asProblem(clash)] };
}

const undoneFact = (entry: number): RecordFact => ({ kind: 'undone', entry });

function factOf(news: Exclude<News, { kind: 'undone' }>, asked: Asked): Resolved {
  switch (news.kind) {
    case 'brewed':
      return brewedFact(news, asked);
    case 'slipped':
      return slippedFact(news, asked);
    case 'harvested':
      return harvestedFact(news, asked);
    case 'jar-gone':
      return goneFact(news, asked);
    case 'task-done':
      return taskDoneFact(news, asked);
    case 'pinned':
      return pinnedFact(news, asked);
    case 'unpinned':
      return unpinnedFact(news, asked);
  }
}

function nextNo(entries: readonly RecordEntry[]): number {
  return entries.reduce((most, entry) => Math.max(most, entry.no), 0) + 1;
}

/** What happened has a day, and that is not after today. */
function inTheFuture(news: News, today: IsoDay): Refusal[] {
  const happened =
    news.kind === 'brewed' ||
    news.kind === 'harvested' ||
    news.kind === 'jar-gone' ||
    news.kind === 'task-done';
  if (!happened || news.day <= today) return [];
  return [
    {
      code: 'in-the-future',
      field: 'day',
      value: news.day,
      bound: `on or before ${today}`,
      message: `${sayDay(news.day)} is still to come: today is ${sayDay(today)}.`,
      remedy: 'Say it once it has happened, or correct the day.',
    },
  ];
}

/** Why an entry cannot be taken back, or null: it is not there, or what stands would no longer hold together. */
function undoConflict(
  undo: RecordEntry,
  no: number,
  entries: readonly RecordEntry[],
): Refusal | null {
  const entry = entries.find((one) => one.no === no);
  const about = { field: 'entry', value: String(no) };
  if (entry === undefined) {
    return {
      code: 'no-such-entry',
      ...about,
      bound: entries.length === 0 ? 'the record is empty' : `1 to ${nextNo(entries) - 1}`,
      message: `The record has no entry ${no}.`,
      remedy: 'Look the number up in the record.',
    };
  }
  if (!standing(entries).includes(entry)) {
    return {
      code: 'already-undone',
      ...about,
      message: `Entry ${no} has been taken back already.`,
      remedy: 'To have it again, take back the entry that took it back.',
    };
  }
  const clash = readLedger([...entries, undo]).clashes[0];
  if (clash === undefined) return null;
  return {
    code: 'others-rest-on-it',
    ...about,
    message: `With entry ${no} taken back, entry ${clash.entry.no} no longer holds: ${clash.refusal.message}`,
    remedy: `Take entry ${clash.entry.no} back first.`,
  };
}
