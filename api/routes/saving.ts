// Saving a house: against the revision that was edited, never losing what has happened.
import { checkHouse, type House, houseNow, type Problem } from '../../planner/index.ts';
import { readState, type State } from '../runs/state.ts';
import { putAwayEntries } from '../store/calendar.ts';
import { readRevision, type StoredHouse, saveHouse } from '../store/house.ts';
import type { Db, Store } from '../store/index.ts';
import { retire } from '../store/plans.ts';
import { refuse, refuseProblems } from './errors.ts';
import { changedSince } from './house-changes.ts';

/** The revision in If-Match: `"12"` or `12`; 0 says that there is no house yet. */
export function revisionOf(ifMatch: string | undefined): number {
  if (ifMatch === undefined) {
    return refuse(
      428,
      'no-revision',
      'If-Match is missing: send the revision of the house that was edited, as GET /api/house tells it.',
    );
  }
  const digits = /^(?:W\/)?"?(\d{1,12})"?$/.exec(ifMatch.trim())?.[1];
  if (digits === undefined) {
    return refuse(
      400,
      'bad-revision',
      'If-Match has to be the number of a revision, such as "12", as GET /api/house tells it.',
    );
  }
  return Number(digits);
}

function missing(path: string, what: string, why: string): Problem {
  return {
    code: 'in-the-record',
    path,
    value: null,
    bound: null,
    message: `${what} is not in the house any more, but ${why}.`,
    remedy: 'Keep it under its name, take the news back first, or begin a new season.',
    level: 'error',
  };
}

/** Things that have happened name tanks, yeasts, jars and brews: those have to stay. */
export function lostFacts(entered: House, { facts, overlay }: State['record']): Problem[] {
  const house = houseNow(entered, overlay);
  const brews = new Set(house.brews.map((row) => row.brew));
  const tanks = new Set(house.tanks.map((row) => row.tank));
  const yeasts = new Set(house.yeasts.map((row) => row.yeast));
  const jars = new Set(house.jars.map((row) => row.jar));
  const problems: Problem[] = [];
  for (const fact of facts.brewed) {
    const why = `${fact.brew} was brewed on ${fact.day}`;
    if (!brews.has(fact.brew)) problems.push(missing('brews', `The brew ${fact.brew}`, why));
    if (!tanks.has(fact.tank)) problems.push(missing('tanks', `The tank ${fact.tank}`, why));
    if (!yeasts.has(fact.yeast)) problems.push(missing('yeasts', `The yeast ${fact.yeast}`, why));
    if (fact.source.kind === 'jar' && !jars.has(fact.source.jar)) {
      problems.push(missing('jars', `The jar ${fact.source.jar}`, `${why} with it`));
    }
  }
  for (const fact of facts.harvested) {
    const why = `it was harvested on ${fact.day}`;
    if (!brews.has(fact.brew)) problems.push(missing('brews', `The brew ${fact.brew}`, why));
  }
  return problems;
}

export type Saving = {
  house: House;
  revision: number;
  startOver: boolean;
  /** It is the house that comes along. */
  demo?: boolean;
};

/** Saves a house or refuses, all in one transaction. */
export function save(store: Store, saving: Saving): Promise<StoredHouse> {
  const problems = checkHouse(saving.house).filter((problem) => problem.level === 'error');
  if (problems.length > 0) return refuseProblems(problems);
  return store.write(async (tx) => {
    const state = await readState(tx);
    await insistOnRevision(tx, state, saving.revision);
    if (state !== null && !saving.startOver) {
      const lost = lostFacts(saving.house, state.record);
      if (lost.length > 0) return refuseProblems(lost, 409, 'in-the-record');
    }
    if (saving.startOver) {
      await retire(tx, 'in-force', 'superseded');
      await retire(tx, 'draft', 'superseded');
      await putAwayEntries(tx, store.now());
    }
    return saveHouse(tx, { demo: false, ...saving, at: store.now() });
  });
}

async function insistOnRevision(tx: Db, state: State | null, revision: number): Promise<void> {
  const current = state?.stored.revision ?? 0;
  if (revision === current) return;
  const since =
    state === null || revision > current
      ? []
      : changedSince(await readRevision(tx, revision), state.stored);
  return refuse(
    409,
    'stale-revision',
    `Nothing was changed: the house is at revision ${current} now, and the edit was made on revision ${revision}.`,
    since,
  );
}
