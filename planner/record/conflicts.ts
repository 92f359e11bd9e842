// What in the record would contradict a new entry: only the record is asked, no plan and no house.
import { sayDay } from '../tasks/days.ts';
import {
  alreadyBrewed,
  brewedConflict,
  emptiedConflict,
  gravityConflict,
  harvestedConflict,
  hoppedConflict,
  needsHarvest,
  notBrewed,
  readConflict,
  slowConflict,
} from './beer-conflicts.ts';
import {
  allowConflict,
  closedConflict,
  dropConflict,
  forbidConflict,
  notBeforeConflict,
  pinConflict,
  tankOutConflict,
  unpinConflict,
} from './decision-conflicts.ts';
import { brewsOf, type RecordEntry, type RecordFact } from './entry.ts';
import type { Ledger } from './ledger.ts';
import type { Refusal } from './refusal.ts';
import {
  frozenConflict,
  goneConflict,
  lateConflict,
  passedConflict,
  slurryConflict,
  soundConflict,
  starterFailedConflict,
  suspectConflict,
} from './yeast-conflicts.ts';

/** What in the record contradicts an entry, with the ways out; null: nothing does. */
export function conflict(ledger: Ledger, entry: RecordEntry): Refusal | null {
  const { fact } = entry;
  const dropped = droppedConflict(ledger, fact);
  if (dropped !== null) return dropped;
  switch (fact.kind) {
    case 'brewed':
      return brewedConflict(ledger, fact.brewed);
    case 'harvested':
      return harvestedConflict(ledger, fact.harvested);
    case 'read':
      return readConflict(ledger, fact.brew, fact.day, fact.settledMl);
    case 'emptied':
      return emptiedConflict(ledger, fact.brew, fact.day);
    case 'discarded':
      return needsHarvest(ledger, fact.brew);
    case 'slow':
      return slowConflict(ledger, fact.brew, fact.until);
    case 'gravity':
      return gravityConflict(ledger, fact.brew);
    case 'lag':
      return notBrewed(ledger, fact.brew, 'seen to foam');
    case 'hopped':
      return (
        (entry.news.kind === 'task-done' ? doneOnce(ledger, entry.news.task) : null) ??
        hoppedConflict(ledger, fact.brew, fact.day)
      );
    case 'passed':
      return passedConflict(ledger, fact.brew, fact.day);
    case 'not-before':
      return notBeforeConflict(ledger, fact.brew, fact.day);
    case 'brew-added':
      return twice(ledger.added.get(fact.row.brew), 'row.brew', fact.row.brew, 'added');
    case 'brew-dropped':
      return dropConflict(ledger, fact.brew);
    case 'resized':
      return alreadyBrewed(ledger, fact.brew, 'made another size');
    case 'jar-found':
      return twice(ledger.found.get(fact.row.jar), 'row.jar', `jar ${fact.row.jar}`, 'found');
    case 'jar-gone':
      return goneConflict(ledger, fact.jar, fact.day);
    case 'measured':
      return slurryConflict(ledger, fact.of, fact.day);
    case 'marked':
      if (fact.as === 'sound') return soundConflict(ledger, fact.of);
      return fact.as === 'frozen' && fact.of.kind !== 'beer'
        ? frozenConflict(ledger, fact.of, fact.day)
        : suspectConflict(ledger, fact.of);
    case 'tank-out':
      return tankOutConflict(ledger, fact);
    case 'day-closed':
      return closedConflict(ledger, fact.day);
    case 'begun':
      return (
        alreadyBrewed(ledger, fact.begun.brew, 'given a starter') ??
        (entry.news.kind === 'task-done' ? doneOnce(ledger, entry.news.task) : null)
      );
    case 'starter-failed':
      return starterFailedConflict(ledger, fact.brew, fact.day);
    case 'bought':
      return entry.news.kind === 'task-done' ? doneOnce(ledger, entry.news.task) : null;
    case 'packs-late':
      return lateConflict(ledger, fact.yeast, fact.was);
    case 'ticked':
      return entry.news.kind === 'task-done' ? tickConflict(ledger, entry.news.task, fact) : null;
    case 'pinned':
      return pinConflict(ledger, fact.pin);
    case 'unpinned':
      // records of before know no single parts
      return unpinConflict(ledger, fact.brew, fact.what ?? null);
    case 'source-forbidden':
      return forbidConflict(ledger, fact.brew, fact.source);
    case 'source-allowed':
      return allowConflict(ledger, fact.brew, fact.source);
    case 'undone':
      return null;
  }
}

function droppedConflict(ledger: Ledger, fact: RecordFact): Refusal | null {
  for (const brew of brewsOf(fact)) {
    const dropped = ledger.dropped.get(brew);
    if (dropped === undefined) continue;
    return {
      code: 'was-dropped',
      field: 'brew',
      value: brew,
      message: `${brew} was dropped from the season (entry ${dropped.no}).`,
      remedy: `Take entry ${dropped.no} back first if it is brewed after all.`,
    };
  }
  return null;
}

function twice(
  was: { no: number } | undefined,
  field: string,
  what: string,
  done: 'added' | 'found',
): Refusal | null {
  if (was === undefined) return null;
  return {
    code: `already-${done}`,
    field,
    value: what,
    message: `${what.charAt(0).toUpperCase()}${what.slice(1)} was ${done} already (entry ${was.no}).`,
    remedy: `Give it another name, or take entry ${was.no} back.`,
  };
}

function tickConflict(
  ledger: Ledger,
  key: string,
  fact: RecordFact & { kind: 'ticked' },
): Refusal | null {
  const was = ledger.done.get(key);
  if (was === undefined) {
    if (fact.needs === null) return null;
    const { brew, been } = fact.needs;
    return been === 'brewed'
      ? notBrewed(ledger, brew, 'worked on in its tank')
      : needsHarvest(ledger, brew);
  }
  return {
    code: 'already-done',
    field: 'task',
    value: key,
    message: `This task was done on ${sayDay(was.day)} (entry ${was.no}).`,
    remedy: `There is nothing to do; if that is wrong, take entry ${was.no} back.`,
  };
}

function doneOnce(ledger: Ledger, key: string): Refusal | null {
  return tickConflict(ledger, key, { kind: 'ticked', needs: null });
}
