// What the record says against news of a beer: brewed, harvested, its jars read, its tank emptied.
import type { BrewedFact, HarvestedFact, IsoDay } from '../model/index.ts';
import { sayDay } from '../tasks/days.ts';
import { sayMl } from '../tasks/words.ts';
import { keptOfStarter, mayKeepPart } from './kept-part.ts';
import { drawnMl, type Ledger } from './ledger.ts';
import type { Refusal } from './refusal.ts';

/** Tolerance for amounts read off a jar, mL. */
const HALF_ML = 0.5;

const takeBack = (no: number) => `Take entry ${no} back, then say it anew.`;

export function alreadyBrewed(ledger: Ledger, brew: string, doing: string): Refusal | null {
  const was = ledger.brewed.get(brew);
  if (was === undefined) return null;
  return {
    code: 'already-brewed',
    field: 'brew',
    value: brew,
    message: `${brew} was brewed on ${sayDay(was.fact.day)} (entry ${was.no}), so it cannot be ${doing}.`,
    remedy: `If that is wrong, take entry ${was.no} back first.`,
  };
}

export function notBrewed(ledger: Ledger, brew: string, doing: string): Refusal | null {
  if (ledger.brewed.has(brew)) return null;
  return {
    code: 'not-brewed',
    field: 'brew',
    value: brew,
    message: `${brew} is not recorded as brewed, so it cannot be ${doing}.`,
    remedy: `Say first on which day ${brew} was brewed.`,
  };
}

export function needsHarvest(ledger: Ledger, brew: string): Refusal | null {
  if (ledger.harvested.has(brew)) return null;
  return {
    code: 'not-harvested',
    field: 'brew',
    value: brew,
    message: `The harvest of ${brew} is not recorded.`,
    remedy: `Say first how many mL were harvested from ${brew}, and on which day.`,
  };
}

export function brewedConflict(ledger: Ledger, fact: BrewedFact): Refusal | null {
  const again = alreadyBrewed(ledger, fact.brew, 'brewed again');
  if (again !== null) return again;
  for (const other of ledger.brewed.values()) {
    if (other.fact.tank !== fact.tank) continue;
    const until = other.fact.emptiedOn;
    const together = other.fact.day === fact.day;
    if (together || (other.fact.day < fact.day && until !== null && until > fact.day)) {
      return {
        code: 'tank-taken',
        field: 'tank',
        value: fact.tank,
        message: `${fact.tank} held ${other.fact.brew} on ${sayDay(fact.day)} (entry ${other.no}).`,
        remedy: `Name another tank or another day, or take entry ${other.no} back.`,
      };
    }
  }
  const out = outOfUse(ledger, fact);
  if (out !== null) return out;
  const { source } = fact;
  if (source.kind === 'jar') {
    const gone = ledger.gone.get(source.jar);
    return gone === undefined || gone.day > fact.day
      ? null
      : {
          code: 'jar-gone',
          field: 'brew',
          value: fact.brew,
          message: `${fact.brew} was to be pitched from jar ${source.jar}, which is gone since ${sayDay(gone.day)} (entry ${gone.no}).`,
          remedy: `Plan anew and adopt the plan, or take entry ${gone.no} back if the jar was there.`,
        };
  }
  if (source.kind === 'fresh') return null;
  const harvest = ledger.harvested.get(source.brew);
  if (harvest === undefined) {
    return {
      ...(needsHarvest(ledger, source.brew) as Refusal),
      field: 'brew',
      value: fact.brew,
      message: `${fact.brew} takes its yeast out of ${source.brew}, whose harvest is not recorded.`,
    };
  }
  if (harvest.fact.day > fact.day) {
    return {
      code: 'before-harvest',
      field: 'day',
      value: fact.day,
      bound: `on or after ${harvest.fact.day}`,
      message: `${fact.brew} takes its yeast out of ${source.brew}, which was harvested on ${sayDay(harvest.fact.day)} (entry ${harvest.no}), after ${sayDay(fact.day)}.`,
      remedy: `Correct the day, or take entry ${harvest.no} back.`,
    };
  }
  const left = harvest.fact.settledMl - drawnMl(ledger, source.brew);
  if (source.drawMl <= left + HALF_ML) return null;
  return {
    code: 'more-than-there-is',
    field: 'drawnMl',
    value: String(Math.round(source.drawMl)),
    bound: `at most ${Math.round(left)} mL`,
    message: `${fact.brew} would take ${sayMl(source.drawMl)} out of the harvest of ${source.brew}, which holds ${sayMl(left)} (entry ${harvest.no}).`,
    remedy: `Say how many mL you poured, or say how many mL the harvest of ${source.brew} holds.`,
  };
}

export function harvestedConflict(ledger: Ledger, fact: HarvestedFact): Refusal | null {
  const missing = notBrewed(ledger, fact.brew, 'harvested');
  if (missing !== null) return missing;
  const was = ledger.harvested.get(fact.brew);
  if (was !== undefined) {
    return {
      code: 'already-harvested',
      field: 'brew',
      value: fact.brew,
      message: `The harvest of ${fact.brew} is recorded on ${sayDay(was.fact.day)} (entry ${was.no}).`,
      remedy: takeBack(was.no),
    };
  }
  const brewed = ledger.brewed.get(fact.brew);
  if (brewed === undefined) return null;
  // on brew day nothing is harvested from a beer, but a part of its starter may have been kept
  const ofStarter = fact.day === brewed.fact.day && mayKeepPart(brewed.fact);
  if (fact.day <= brewed.fact.day && !ofStarter) {
    return {
      code: 'before-the-brew',
      field: 'day',
      value: fact.day,
      bound: `after ${brewed.fact.day}`,
      message: `${fact.brew} was brewed on ${sayDay(brewed.fact.day)} (entry ${brewed.no}); it cannot be harvested on ${sayDay(fact.day)}.`,
      remedy: `Correct the day, or take entry ${brewed.no} back.`,
    };
  }
  const emptied = brewed.fact.emptiedOn;
  if (emptied === null || fact.day <= emptied) return null;
  return {
    code: 'tank-empty',
    field: 'day',
    value: fact.day,
    bound: `on or before ${emptied}`,
    message: `${fact.brew} left its tank on ${sayDay(emptied)}; nothing can be harvested from it on ${sayDay(fact.day)}.`,
    remedy: 'Correct the day, or take back that the beer was packaged.',
  };
}

export function readConflict(
  ledger: Ledger,
  brew: string,
  day: IsoDay,
  settledMl: number,
): Refusal | null {
  const missing = needsHarvest(ledger, brew);
  const was = ledger.harvested.get(brew);
  if (missing !== null || was === undefined) return missing;
  if (day < was.fact.day) {
    return {
      code: 'before-harvest',
      field: 'day',
      value: day,
      bound: `on or after ${was.fact.day}`,
      message: `${brew} was harvested on ${sayDay(was.fact.day)} (entry ${was.no}); its jars cannot be read on ${sayDay(day)}.`,
      remedy: takeBack(was.no),
    };
  }
  if (day === was.fact.day && settledMl === was.fact.settledMl) {
    return {
      code: 'already-harvested',
      field: 'settledMl',
      value: String(settledMl),
      message: `${brew} is already recorded as harvested on ${sayDay(was.fact.day)} with ${sayMl(settledMl)} (entry ${was.no}).`,
      remedy: `There is nothing to do; if that is wrong, take entry ${was.no} back.`,
    };
  }
  const drawn = drawnMl(ledger, brew);
  if (settledMl + HALF_ML >= drawn) return null;
  return {
    code: 'less-than-was-drawn',
    field: 'settledMl',
    value: String(settledMl),
    bound: `at least ${Math.round(drawn)} mL`,
    message: `${sayMl(drawn)} of the harvest of ${brew} have been pitched; it cannot have held only ${sayMl(settledMl)}.`,
    remedy:
      'Enter the mL of all jars, those already pitched included, or take the pitch back and say how many mL it took.',
  };
}

export function emptiedConflict(ledger: Ledger, brew: string, day: IsoDay): Refusal | null {
  const missing = notBrewed(ledger, brew, 'packaged');
  const brewed = ledger.brewed.get(brew);
  if (missing !== null || brewed === undefined) return missing;
  if (brewed.fact.emptiedOn !== null) {
    return {
      code: 'already-emptied',
      field: 'task',
      value: brew,
      message: `${brew} left its tank on ${sayDay(brewed.fact.emptiedOn)} already.`,
      remedy: 'There is nothing to do; if that day is wrong, take that entry back.',
    };
  }
  const harvest = keptOfStarter(ledger, brew) ? undefined : ledger.harvested.get(brew);
  const first = harvest?.fact.day ?? brewed.fact.day;
  if (harvest === undefined ? day > first : day >= first) return null;
  const no = harvest?.no ?? brewed.no;
  return {
    code: 'before-the-brew',
    field: 'day',
    value: day,
    bound: `${harvest === undefined ? 'after' : 'on or after'} ${first}`,
    message: `${brew} was ${harvest === undefined ? 'brewed' : 'harvested'} on ${sayDay(first)} (entry ${no}); it cannot have been packaged on ${sayDay(day)}.`,
    remedy: `Correct the day, or take entry ${no} back.`,
  };
}

function outOfUse(ledger: Ledger, fact: BrewedFact): Refusal | null {
  const out = ledger.tanksOut.find(
    ({ tank, from, to }) => tank === fact.tank && from <= fact.day && fact.day <= to,
  );
  if (out !== undefined) {
    return {
      code: 'tank-out',
      field: 'tank',
      value: fact.tank,
      message: `${fact.tank} is out of use from ${sayDay(out.from)} to ${sayDay(out.to)} (entry ${out.no}).`,
      remedy: `Name another tank or another day, or take entry ${out.no} back.`,
    };
  }
  const closed = ledger.closed.get(fact.day);
  if (closed === undefined) return null;
  return {
    code: 'day-closed',
    field: 'day',
    value: fact.day,
    message: `${sayDay(fact.day)} was closed (entry ${closed.no}), so ${fact.brew} cannot have been brewed on it.`,
    remedy: `Correct the day, or take entry ${closed.no} back.`,
  };
}

export function slowConflict(ledger: Ledger, brew: string, until: IsoDay): Refusal | null {
  const missing = notBrewed(ledger, brew, 'slow');
  const brewed = ledger.brewed.get(brew);
  if (missing !== null || brewed === undefined) return missing;
  const emptied = brewed.fact.emptiedOn;
  if (emptied !== null) {
    return {
      code: 'already-emptied',
      field: 'brew',
      value: brew,
      message: `${brew} left its tank on ${sayDay(emptied)}, so it no longer ferments there.`,
      remedy: 'There is nothing to do; if it is still in its tank, take back that it was packaged.',
    };
  }
  if (until > brewed.fact.day) return null;
  return {
    code: 'before-the-brew',
    field: 'until',
    value: until,
    bound: `after ${brewed.fact.day}`,
    message: `${brew} was brewed on ${sayDay(brewed.fact.day)} (entry ${brewed.no}), not before ${sayDay(until)}.`,
    remedy: 'Name the day until which it stays in its tank.',
  };
}

export function gravityConflict(ledger: Ledger, brew: string): Refusal | null {
  return notBrewed(ledger, brew, 'measured');
}

export function hoppedConflict(ledger: Ledger, brew: string, day: IsoDay): Refusal | null {
  const missing = notBrewed(ledger, brew, 'hopped');
  const brewed = ledger.brewed.get(brew);
  if (missing !== null || brewed === undefined) return missing;
  const was = ledger.hopped.get(brew);
  if (was !== undefined) {
    return {
      code: 'already-hopped',
      field: 'brew',
      value: brew,
      message: `${brew} is recorded as dry-hopped on ${sayDay(was.day)} (entry ${was.no}).`,
      remedy: takeBack(was.no),
    };
  }
  const { day: first, emptiedOn } = brewed.fact;
  if (day >= first && (emptiedOn === null || day <= emptiedOn)) return null;
  return {
    code: day < first ? 'before-the-brew' : 'tank-empty',
    field: 'day',
    value: day,
    bound: day < first ? `on or after ${first}` : `on or before ${emptiedOn}`,
    message:
      day < first
        ? `${brew} was brewed on ${sayDay(first)} (entry ${brewed.no}); it cannot have been dry-hopped on ${sayDay(day)}.`
        : `${brew} left its tank on ${sayDay(emptiedOn ?? first)}; it cannot have been dry-hopped there on ${sayDay(day)}.`,
    remedy: `Correct the day, or take entry ${brewed.no} back.`,
  };
}
