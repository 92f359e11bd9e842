// What in the record would contradict a new entry: only the record is asked, no plan and no house.
import type { IsoDay, Pin } from '../model/index.ts';
import { sayDay } from '../tasks/days.ts';
import {
  alreadyBrewed,
  brewedConflict,
  emptiedConflict,
  harvestedConflict,
  needsHarvest,
  notBrewed,
  readConflict,
} from './beer-conflicts.ts';
import type { RecordEntry, RecordFact } from './entry.ts';
import type { Ledger } from './ledger.ts';
import type { Refusal } from './refusal.ts';

/** What in the record contradicts an entry, with the ways out; null: nothing does. */
export function conflict(ledger: Ledger, entry: RecordEntry): Refusal | null {
  const { fact } = entry;
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
    case 'not-before':
      return notBeforeConflict(ledger, fact.brew, fact.day);
    case 'jar-gone':
      return goneConflict(ledger, fact.jar, fact.day);
    case 'begun':
      return (
        alreadyBrewed(ledger, fact.begun.brew, 'given a starter') ??
        (entry.news.kind === 'task-done' ? doneOnce(ledger, entry.news.task) : null)
      );
    case 'bought':
      return entry.news.kind === 'task-done' ? doneOnce(ledger, entry.news.task) : null;
    case 'ticked':
      return entry.news.kind === 'task-done' ? tickConflict(ledger, entry.news.task, fact) : null;
    case 'pinned':
      return pinConflict(ledger, fact.pin);
    case 'unpinned':
      return ledger.pins.has(fact.brew)
        ? null
        : {
            code: 'nothing-pinned',
            field: 'brew',
            value: fact.brew,
            message: `Nothing of ${fact.brew} is pinned.`,
            remedy: 'There is nothing to do.',
          };
    case 'undone':
      return null;
  }
}

function notBeforeConflict(ledger: Ledger, brew: string, day: IsoDay): Refusal | null {
  const brewed = alreadyBrewed(ledger, brew, 'put off');
  if (brewed !== null) return brewed;
  const pinned = ledger.pins.get(brew);
  const held = pinned?.pin.day ?? null;
  if (pinned === undefined || held === null || held >= day) return null;
  return {
    code: 'against-a-pin',
    field: 'to',
    value: day,
    bound: `on or before ${held}`,
    message: `${brew} is pinned to ${sayDay(held)} (entry ${pinned.no}), so it cannot slip to ${sayDay(day)}.`,
    remedy: `Unpin ${brew} or pin it to a later day, then say that it slipped.`,
  };
}

function goneConflict(ledger: Ledger, jar: string, day: IsoDay): Refusal | null {
  const was = ledger.gone.get(jar);
  if (was !== undefined) {
    return {
      code: 'already-gone',
      field: 'jar',
      value: jar,
      message: `Jar ${jar} is recorded as gone on ${sayDay(was.day)} (entry ${was.no}).`,
      remedy: 'There is nothing to do.',
    };
  }
  for (const { fact, no } of ledger.brewed.values()) {
    if (fact.source.kind !== 'jar' || fact.source.jar !== jar) continue;
    return {
      code: 'jar-opened',
      field: 'jar',
      value: jar,
      message: `Jar ${jar} was opened for ${fact.brew} on ${sayDay(fact.day)} (entry ${no}); it cannot be gone on ${sayDay(day)} as well.`,
      remedy: `There is nothing to do: what was left of an opened jar counts as thrown away. If it was not pitched, take entry ${no} back.`,
    };
  }
  return null;
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

function pinConflict(ledger: Ledger, pin: Pin): Refusal | null {
  const brewed = alreadyBrewed(ledger, pin.brew, 'pinned');
  if (brewed !== null) return brewed;
  const slipped = ledger.notBefore.get(pin.brew);
  if (slipped === undefined || pin.day === null || pin.day >= slipped.day) return null;
  return {
    code: 'against-a-slip',
    field: 'day',
    value: pin.day,
    bound: `on or after ${slipped.day}`,
    message: `${pin.brew} slipped to ${sayDay(slipped.day)} (entry ${slipped.no}), so it cannot be pinned to ${sayDay(pin.day)}.`,
    remedy: `Pin it to ${sayDay(slipped.day)} or later, or take entry ${slipped.no} back.`,
  };
}
