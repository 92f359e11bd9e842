// News to an entry of the record: worked out with the plan in force at hand, or refused with the ways out.
import type { House, IsoDay, News, Plan, Problem } from '../model/index.ts';
import { sayDay } from '../tasks/days.ts';
import type { Asked, Resolved } from './asked.ts';
import { conflict } from './conflicts.ts';
import type { RecordEntry, RecordFact } from './entry.ts';
import { expectedOf } from './expected.ts';
import { type RecordState, readLedger } from './fold.ts';
import { gravityFact, hoppedFact, lagFact, passedFact, slowFact } from './news/beer.ts';
import { brewedFact } from './news/brewed.ts';
import { harvestedFact } from './news/harvested.ts';
import { goneFact } from './news/jar-gone.ts';
import { sayWithYear } from './news/known.ts';
import { packsBoughtFact, packsLateFact, starterFailedFact } from './news/packs.ts';
import { forbiddenFact, pinnedFact, unpinnedFact } from './news/pinned.ts';
import {
  brewAddedFact,
  brewDroppedFact,
  dayClosedFact,
  notYetFact,
  resizedFact,
  tankOutFact,
} from './news/season.ts';
import { slippedFact } from './news/slipped.ts';
import {
  frozenFact,
  harvestLostFact,
  jarFoundFact,
  measuredFact,
  soundFact,
  suspectFact,
} from './news/slurry.ts';
import { taskDoneFact } from './news/task-done.ts';
import { houseNow } from './overlay.ts';
import { asProblem, type Refusal } from './refusal.ts';
import { undoConflict } from './undo.ts';

/**
 * Works out what a piece of news comes to.
 * @param state the record folded, as `foldRecord` gives it; nothing in it is changed
 * @param house the house as it was entered: what news changed about it is in the record
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
  const asked = { state, ledger, house: houseNow(house, state.overlay), inForce, today };
  const refusals = inTheFuture(news, today);
  const resolved = news.kind === 'undone' ? { fact: undoneFact(news.entry) } : factOf(news, asked);
  if ('refusals' in resolved) refusals.push(...resolved.refusals);
  if (refusals.length > 0 || !('fact' in resolved)) return { problems: refusals.map(asProblem) };

  const expected = expectedOf(news, asked);
  const entry: RecordEntry = {
    no: nextNo(state.entries),
    news,
    fact: resolved.fact,
    ...(expected.length > 0 ? { expected } : {}),
  };
  const clash =
    entry.fact.kind === 'undone'
      ? undoConflict(entry, entry.fact.entry, state.entries, house)
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
    case 'not-yet':
      return notYetFact(news, asked);
    case 'brew-added':
      return brewAddedFact(news, asked);
    case 'brew-dropped':
      return brewDroppedFact(news, asked);
    case 'resized':
      return resizedFact(news, asked);
    case 'slow':
      return slowFact(news, asked);
    case 'gravity':
      return gravityFact(news, asked);
    case 'lag':
      return lagFact(news, asked);
    case 'hopped':
      return hoppedFact(news, asked);
    case 'passed':
      return passedFact(news, asked);
    case 'harvested':
      return harvestedFact(news, asked);
    case 'harvest-lost':
      return harvestLostFact(news, asked);
    case 'jar-found':
      return jarFoundFact(news, asked);
    case 'jar-gone':
      return goneFact(news, asked);
    case 'frozen':
      return frozenFact(news, asked);
    case 'measured':
      return measuredFact(news, asked);
    case 'suspect':
      return suspectFact(news, asked);
    case 'sound':
      return soundFact(news, asked);
    case 'packs-bought':
      return packsBoughtFact(news, asked);
    case 'packs-late':
      return packsLateFact(news, asked);
    case 'starter-failed':
      return starterFailedFact(news, asked);
    case 'tank-out':
      return tankOutFact(news, asked);
    case 'day-closed':
      return dayClosedFact(news, asked);
    case 'task-done':
      return taskDoneFact(news, asked);
    case 'pinned':
      return pinnedFact(news, asked);
    case 'unpinned':
      return unpinnedFact(news, asked);
    case 'source-forbidden':
    case 'source-allowed':
      return forbiddenFact(news, asked);
  }
}

export function nextNo(entries: readonly RecordEntry[]): number {
  return entries.reduce((most, entry) => Math.max(most, entry.no), 0) + 1;
}

/** Kinds of news with a day on which it happened. */
const HAPPENED = new Set<News['kind']>([
  'brewed',
  'hopped',
  'passed',
  'harvested',
  'harvest-lost',
  'jar-gone',
  'frozen',
  'measured',
  'suspect',
  'sound',
  'starter-failed',
  'task-done',
]);

/** What happened has a day, and that is not after today. */
function inTheFuture(news: News, today: IsoDay): Refusal[] {
  if (!('day' in news) || news.day === null || !HAPPENED.has(news.kind)) return [];
  if (news.day <= today) return [];
  return [
    {
      code: 'in-the-future',
      field: 'day',
      value: news.day,
      bound: `on or before ${today}`,
      message: `${sayWithYear(news.day, today)} is still to come: today is ${sayDay(today)}.`,
      remedy: 'Say it once it has happened, or correct the day.',
    },
  ];
}
