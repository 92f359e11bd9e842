// What the record says against decisions: slips, pins, sources ruled out, brews dropped, tanks and days taken out.
import type { IsoDay, Pin, SourceRef } from '../model/index.ts';
import { sayDay } from '../tasks/days.ts';
import { alreadyBrewed } from './beer-conflicts.ts';
import { type Ledger, sourceKey } from './ledger.ts';
import type { Refusal } from './refusal.ts';
import { capital, saySourceRef } from './words.ts';

const NOTHING = 'There is nothing to do.';

export function notBeforeConflict(ledger: Ledger, brew: string, day: IsoDay): Refusal | null {
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

export function pinConflict(ledger: Ledger, pin: Pin): Refusal | null {
  const { brew, day, source } = pin;
  const brewed = alreadyBrewed(ledger, brew, 'pinned');
  if (brewed !== null) return brewed;
  const slipped = ledger.notBefore.get(brew);
  if (slipped !== undefined && day !== null && day < slipped.day) {
    return {
      code: 'against-a-slip',
      field: 'day',
      value: day,
      bound: `on or after ${slipped.day}`,
      message: `${brew} slipped to ${sayDay(slipped.day)} (entry ${slipped.no}), so it cannot be pinned to ${sayDay(day)}.`,
      remedy: `Pin it to ${sayDay(slipped.day)} or later, or take entry ${slipped.no} back.`,
    };
  }
  const shut = day === null ? undefined : ledger.closed.get(day);
  if (shut !== undefined && day !== null) {
    return {
      code: 'day-closed',
      field: 'day',
      value: day,
      message: `${sayDay(day)} is closed (entry ${shut.no}), so ${brew} cannot be pinned to it.`,
      remedy: `Pin it to another day, or take entry ${shut.no} back.`,
    };
  }
  return source === null ? null : pinnedSourceConflict(ledger, brew, source);
}

function pinnedSourceConflict(ledger: Ledger, brew: string, source: SourceRef): Refusal | null {
  const about = { field: 'source', value: saySourceRef(source) };
  const barred = ledger.forbidden.get(brew)?.get(sourceKey(source));
  if (barred !== undefined) {
    return {
      code: 'source-forbidden',
      ...about,
      message: `${brew} is not to get ${saySourceRef(source)} (entry ${barred.no}).`,
      remedy: `Allow that source for ${brew} again first.`,
    };
  }
  const gone = source.kind === 'jar' ? ledger.gone.get(source.jar) : undefined;
  if (gone !== undefined) {
    return {
      code: 'jar-gone',
      ...about,
      message: `${brew} cannot be pinned to ${saySourceRef(source)}, which is gone since ${sayDay(gone.day)} (entry ${gone.no}).`,
      remedy: `Name another source, or take entry ${gone.no} back if the jar is there.`,
    };
  }
  const begun = ledger.begun.get(brew);
  if (begun === undefined || sourceKey(begun.fact.source) === sourceKey(source)) return null;
  return {
    code: 'starter-begun',
    ...about,
    message: `The starter of ${brew} was begun with ${saySourceRef(begun.fact.source)} (entry ${begun.no}), so it cannot be pinned to ${saySourceRef(source)}.`,
    remedy: `Say that the starter failed, or take entry ${begun.no} back.`,
  };
}

export function unpinConflict(
  ledger: Ledger,
  brew: string,
  what: 'day' | 'tank' | 'source' | null,
): Refusal | null {
  const pin = ledger.pins.get(brew)?.pin;
  if (pin !== undefined && (what === null || pin[what] !== null)) return null;
  return {
    code: 'nothing-pinned',
    field: 'brew',
    value: brew,
    message:
      what === null ? `Nothing of ${brew} is pinned.` : `The ${what} of ${brew} is not pinned.`,
    remedy: NOTHING,
  };
}

export function forbidConflict(ledger: Ledger, brew: string, source: SourceRef): Refusal | null {
  const brewed = alreadyBrewed(ledger, brew, 'kept from a source');
  if (brewed !== null) return brewed;
  const about = { field: 'source', value: saySourceRef(source) };
  const was = ledger.forbidden.get(brew)?.get(sourceKey(source));
  if (was !== undefined) {
    return {
      code: 'already-forbidden',
      ...about,
      message: `${capital(saySourceRef(source))} is ruled out for ${brew} already (entry ${was.no}).`,
      remedy: NOTHING,
    };
  }
  const pinned = ledger.pins.get(brew);
  const held = pinned?.pin.source ?? null;
  if (pinned !== undefined && held !== null && sourceKey(held) === sourceKey(source)) {
    return {
      code: 'against-a-pin',
      ...about,
      message: `${brew} is pinned to ${saySourceRef(source)} (entry ${pinned.no}), so that cannot be ruled out.`,
      remedy: `Let the source of ${brew} go first.`,
    };
  }
  const begun = ledger.begun.get(brew);
  if (begun === undefined || sourceKey(begun.fact.source) !== sourceKey(source)) return null;
  return {
    code: 'starter-begun',
    ...about,
    message: `The starter of ${brew} was begun with ${saySourceRef(source)} (entry ${begun.no}).`,
    remedy: `Say that the starter failed, or take entry ${begun.no} back.`,
  };
}

export function allowConflict(ledger: Ledger, brew: string, source: SourceRef): Refusal | null {
  if (ledger.forbidden.get(brew)?.has(sourceKey(source))) return null;
  return {
    code: 'not-forbidden',
    field: 'source',
    value: saySourceRef(source),
    message: `${capital(saySourceRef(source))} is not ruled out for ${brew}.`,
    remedy: NOTHING,
  };
}

export function dropConflict(ledger: Ledger, brew: string): Refusal | null {
  const brewed = alreadyBrewed(ledger, brew, 'dropped');
  if (brewed !== null) return brewed;
  const begun = ledger.begun.get(brew);
  if (begun !== undefined) {
    return {
      code: 'starter-begun',
      field: 'brew',
      value: brew,
      message: `A starter for ${brew} was begun on ${sayDay(begun.fact.day)} (entry ${begun.no}).`,
      remedy: `Say that the starter failed, or take entry ${begun.no} back, then drop ${brew}.`,
    };
  }
  for (const { pin, no } of ledger.pins.values()) {
    if (pin.source?.kind !== 'harvest' || pin.source.brew !== brew) continue;
    return {
      code: 'against-a-pin',
      field: 'brew',
      value: brew,
      message: `${pin.brew} is pinned to the harvest of ${brew} (entry ${no}).`,
      remedy: `Let the source of ${pin.brew} go, then drop ${brew}.`,
    };
  }
  return null;
}

export function tankOutConflict(
  ledger: Ledger,
  out: { tank: string; from: IsoDay; to: IsoDay },
): Refusal | null {
  const about = { field: 'tank', value: out.tank };
  for (const { fact, no } of ledger.brewed.values()) {
    const until = fact.emptiedOn;
    if (fact.tank !== out.tank || fact.day < out.from || fact.day > out.to) continue;
    return {
      code: 'tank-taken',
      ...about,
      message: `${fact.brew} was brewed into ${out.tank} on ${sayDay(fact.day)} (entry ${no})${until === null ? '' : ` and left it on ${sayDay(until)}`}, so the tank was in use then.`,
      remedy: `Name days on which ${out.tank} held no beer, or take entry ${no} back.`,
    };
  }
  for (const { pin, no } of ledger.pins.values()) {
    if (pin.tank !== out.tank || pin.day === null) continue;
    if (pin.day < out.from || pin.day > out.to) continue;
    return {
      code: 'against-a-pin',
      ...about,
      message: `${pin.brew} is pinned to ${out.tank} on ${sayDay(pin.day)} (entry ${no}).`,
      remedy: `Let ${pin.brew} go or pin it elsewhere, then take ${out.tank} out of use.`,
    };
  }
  return null;
}

export function closedConflict(ledger: Ledger, day: IsoDay): Refusal | null {
  const was = ledger.closed.get(day);
  if (was !== undefined) {
    return {
      code: 'already-closed',
      field: 'day',
      value: day,
      message: `${sayDay(day)} is closed already (entry ${was.no}).`,
      remedy: NOTHING,
    };
  }
  for (const { pin, no } of ledger.pins.values()) {
    if (pin.day !== day) continue;
    return {
      code: 'against-a-pin',
      field: 'day',
      value: day,
      message: `${pin.brew} is pinned to ${sayDay(day)} (entry ${no}).`,
      remedy: `Let ${pin.brew} go or pin it to another day, then close ${sayDay(day)}.`,
    };
  }
  for (const { fact, no } of ledger.brewed.values()) {
    if (fact.day !== day) continue;
    return {
      code: 'already-brewed',
      field: 'day',
      value: day,
      message: `${fact.brew} was brewed on ${sayDay(day)} (entry ${no}), so that day was not closed.`,
      remedy: `Name another day, or take entry ${no} back.`,
    };
  }
  return null;
}
