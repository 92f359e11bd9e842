// What differs between two revisions of the house, place by place, for an edit that came too late.
import type { House, Problem } from '../../planner/index.ts';
import type { StoredHouse } from '../store/house.ts';

const MAX_SHOWN = 100;

const NAMED_BY = { tanks: 'tank', yeasts: 'yeast', jars: 'jar', brews: 'brew' } as const;

/** Every value of a house by its place; rows of the lists are placed by name and not by number. */
function places(house: House): Map<string, string> {
  const found = new Map<string, string>();
  for (const [key, value] of Object.entries(house)) {
    if (key in NAMED_BY) continue;
    found.set(key, JSON.stringify(value));
  }
  for (const [list, nameKey] of Object.entries(NAMED_BY)) {
    const rows = house[list as keyof typeof NAMED_BY] as readonly Record<string, unknown>[];
    for (const row of rows) {
      const name = String(row[nameKey]);
      for (const [key, value] of Object.entries(row)) {
        found.set(`${list}[${name}].${key}`, JSON.stringify(value));
      }
    }
  }
  return found;
}

/** The places whose values differ, with the value before and now (null: not there). */
export function houseChanges(
  before: House,
  now: House,
): { path: string; before: string | null; now: string | null }[] {
  const [old, fresh] = [places(before), places(now)];
  return [...new Set([...old.keys(), ...fresh.keys()])]
    .filter((path) => old.get(path) !== fresh.get(path))
    .map((path) => ({ path, before: old.get(path) ?? null, now: fresh.get(path) ?? null }));
}

/** The same as problems, for the answer to a stale edit. */
export function changedSince(edited: StoredHouse | null, now: StoredHouse): Problem[] {
  if (edited === null) {
    return [
      {
        code: 'changed-since',
        path: '(body)',
        value: null,
        bound: null,
        message:
          'The revision that was edited is no longer kept, so what changed since cannot be told.',
        remedy: 'Read the house again and make the edit anew.',
        level: 'error',
      },
    ];
  }
  return houseChanges(edited.house, now.house)
    .slice(0, MAX_SHOWN)
    .map(({ path, before, now: value }) => ({
      code: 'changed-since',
      path,
      value,
      bound: before,
      message:
        value === null
          ? `${path} was removed (it was ${before}).`
          : before === null
            ? `${path} was added: ${value}.`
            : `${path} was changed from ${before} to ${value}.`,
      remedy: 'Read the house again and make the edit on that.',
      level: 'error' as const,
    }));
}
