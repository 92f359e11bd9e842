// What the record says against news of yeast: jars gone, counted, frozen, suspect or sound; starters and packs.
import type { CultureRef, IsoDay, SlurryRef } from '../model/index.ts';
import { sayDay } from '../tasks/days.ts';
import { alreadyBrewed, needsHarvest, notBrewed } from './beer-conflicts.ts';
import { doubtsOf } from './doubts.ts';
import type { Ledger } from './ledger.ts';
import type { Refusal } from './refusal.ts';
import { capital, sayCulture } from './words.ts';

const NOTHING = 'There is nothing to do.';

const named = (of: CultureRef) => ({
  field: of.kind === 'jar' ? 'of.jar' : 'of.brew',
  value: of.kind === 'jar' ? of.jar : of.brew,
});

export function goneConflict(ledger: Ledger, jar: string, day: IsoDay): Refusal | null {
  const was = ledger.gone.get(jar);
  if (was !== undefined) {
    return {
      code: 'already-gone',
      field: 'jar',
      value: jar,
      message: `Jar ${jar} is recorded as gone on ${sayDay(was.day)} (entry ${was.no}).`,
      remedy: NOTHING,
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

/** Slurry has to be there to be looked at. */
export function slurryConflict(ledger: Ledger, of: SlurryRef, day: IsoDay): Refusal | null {
  if (of.kind === 'jar') {
    const gone = ledger.gone.get(of.jar);
    if (gone === undefined || gone.day >= day) return null;
    return {
      code: 'jar-gone',
      ...named(of),
      message: `Jar ${of.jar} is gone since ${sayDay(gone.day)} (entry ${gone.no}).`,
      remedy: `Correct the day, or take entry ${gone.no} back if the jar is there.`,
    };
  }
  const missing = needsHarvest(ledger, of.brew);
  if (missing !== null) return { ...missing, field: 'of.brew' };
  const harvest = ledger.harvested.get(of.brew);
  if (harvest === undefined || harvest.fact.day <= day) return null;
  return {
    code: 'before-harvest',
    field: 'day',
    value: day,
    bound: `on or after ${harvest.fact.day}`,
    message: `${of.brew} was harvested on ${sayDay(harvest.fact.day)} (entry ${harvest.no}), after ${sayDay(day)}.`,
    remedy: `Correct the day, or take entry ${harvest.no} back.`,
  };
}

function isThere(ledger: Ledger, of: CultureRef, doing: string): Refusal | null {
  if (of.kind === 'jar') return null;
  const missing =
    of.kind === 'beer' ? notBrewed(ledger, of.brew, doing) : needsHarvest(ledger, of.brew);
  return missing === null ? null : { ...missing, field: 'of.brew' };
}

export function suspectConflict(ledger: Ledger, of: CultureRef): Refusal | null {
  const missing = isThere(ledger, of, 'suspect');
  if (missing !== null) return missing;
  const was = doubtsOf(ledger).own(of);
  if (was?.as !== 'suspect') return null;
  return {
    code: 'already-suspect',
    ...named(of),
    message: `${capital(sayCulture(of))} is marked suspect already (entry ${was.no}).`,
    remedy: `${NOTHING} Once it has been checked, mark it sound.`,
  };
}

export function frozenConflict(ledger: Ledger, of: SlurryRef, day: IsoDay): Refusal | null {
  const missing = slurryConflict(ledger, of, day);
  if (missing !== null) return missing;
  const was = doubtsOf(ledger).own(of);
  if (was?.as !== 'frozen') return null;
  return {
    code: 'already-frozen',
    ...named(of),
    message: `${capital(sayCulture(of))} is recorded as frozen already (entry ${was.no}).`,
    remedy: 'Count it to have it pitched, or throw it away and say so.',
  };
}

/** Against marking a thing sound. Whether there was a doubt at all is asked of the house, which knows its jars. */
export function soundConflict(ledger: Ledger, of: CultureRef): Refusal | null {
  const missing = isThere(ledger, of, 'passed');
  if (missing !== null) return missing;
  const doubts = doubtsOf(ledger);
  const own = doubts.own(of);
  if (own?.as === 'suspect') return null;
  if (own?.as === 'frozen') {
    return {
      code: 'was-frozen',
      ...named(of),
      message: `${capital(sayCulture(of))} was frozen (entry ${own.no}): how much of it lives is not known.`,
      remedy: `Count it and say the count, or take entry ${own.no} back if it was not frozen.`,
    };
  }
  const { state, root } = doubts.of(of);
  if (state !== 'suspect' || root === null) return null;
  return {
    code: 'comes-of-a-suspect',
    ...named(of),
    message: `${capital(sayCulture(of))} comes of ${sayCulture(root.of)}, which is marked suspect (entry ${root.no}).`,
    remedy: `Once ${sayCulture(root.of)} has been checked, mark that sound; all that comes of it comes back with it.`,
  };
}

export function passedConflict(ledger: Ledger, brew: string, day: IsoDay): Refusal | null {
  const missing = notBrewed(ledger, brew, 'tasted');
  const brewed = ledger.brewed.get(brew);
  if (missing !== null || brewed === undefined) return missing;
  if (day <= brewed.fact.day) {
    return {
      code: 'before-the-brew',
      field: 'day',
      value: day,
      bound: `after ${brewed.fact.day}`,
      message: `${brew} was brewed on ${sayDay(brewed.fact.day)} (entry ${brewed.no}); it cannot have been passed on ${sayDay(day)}.`,
      remedy: `Correct the day, or take entry ${brewed.no} back.`,
    };
  }
  const doubts = doubtsOf(ledger);
  const beer: CultureRef = { kind: 'beer', brew };
  const own = doubts.own(beer);
  if (own !== null) {
    return {
      code: 'is-suspect',
      field: 'brew',
      value: brew,
      message: `${brew} is marked suspect (entry ${own.no}).`,
      remedy: `Mark ${brew} sound first if it is.`,
    };
  }
  const suspect = soundConflict(ledger, beer);
  if (suspect !== null) return { ...suspect, field: 'brew' };
  const was = ledger.passed.get(brew);
  if (was === undefined || doubts.of(beer).state !== 'sound') return null;
  return {
    code: 'already-passed',
    field: 'brew',
    value: brew,
    message: `${brew} was tasted and passed on ${sayDay(was.day)} (entry ${was.no}).`,
    remedy: NOTHING,
  };
}

export function starterFailedConflict(ledger: Ledger, brew: string, day: IsoDay): Refusal | null {
  const brewed = alreadyBrewed(ledger, brew, 'left without its starter');
  if (brewed !== null) return brewed;
  const begun = ledger.begun.get(brew);
  if (begun === undefined) {
    return {
      code: 'no-starter',
      field: 'brew',
      value: brew,
      message: `No starter is recorded as begun for ${brew}.`,
      remedy: 'Tick the task of beginning it first; if none was begun, there is nothing to do.',
    };
  }
  if (day >= begun.fact.day) return null;
  return {
    code: 'before-the-starter',
    field: 'day',
    value: day,
    bound: `on or after ${begun.fact.day}`,
    message: `The starter for ${brew} was begun on ${sayDay(begun.fact.day)} (entry ${begun.no}).`,
    remedy: `Correct the day, or take entry ${begun.no} back.`,
  };
}

export function lateConflict(ledger: Ledger, yeast: string, was: IsoDay): Refusal | null {
  if (ledger.bought.some(({ line }) => line.yeast === yeast && line.arrivesOn === was)) return null;
  return {
    code: 'no-such-delivery',
    field: 'expectedOn',
    value: was,
    message: `No packs of ${yeast} are recorded to come on ${sayDay(was)}.`,
    remedy: 'Say first that they were ordered, or name the day on which they were to come.',
  };
}
