// Names in news: does the house have such a thing, and which one was most likely meant if not; and whole rows.
import { checkHouse } from '../../model/check-house.ts';
import { nearest } from '../../model/checks/report.ts';
import type { House, Problem } from '../../model/index.ts';
import { sayDay } from '../../tasks/days.ts';
import type { Asked } from '../asked.ts';
import type { Refusal } from '../refusal.ts';

type What = 'brew' | 'tank' | 'jar' | 'yeast';
const LISTS = { brew: 'brews', tank: 'tanks', jar: 'jars', yeast: 'yeasts' } as const;

/** A refusal if the house as it is now has no such thing; else nothing. */
export function unknownIn(asked: Asked, what: What, name: string, field: string = what): Refusal[] {
  const rows: readonly { readonly [key in What]?: unknown }[] = asked.house[LISTS[what]];
  const known = rows.map((row) => String(row[what]));
  if (known.includes(name)) return [];
  const dropped = what === 'brew' ? asked.ledger.dropped.get(name) : undefined;
  if (dropped !== undefined) {
    return [
      {
        code: 'was-dropped',
        field,
        value: name,
        message: `${name} was dropped from the season (entry ${dropped.no}).`,
        remedy: `Take entry ${dropped.no} back first if it is brewed after all.`,
      },
    ];
  }
  const meant = nearest(name, known);
  return [
    {
      code: `unknown-${what}`,
      field,
      value: name,
      bound: `a ${what} of this season`,
      message: `There is no ${what} called ${name} in this season.`,
      remedy: meant === null ? `Add the ${what} to the season first.` : `Did you mean ${meant}?`,
    },
  ];
}

/** What is wrong with a row that news would add to the house, by the house's own checks. */
export function wrongRow(before: House, after: House, list: 'brews' | 'jars'): Refusal[] {
  const text = ({ code, message }: Problem) => `${code} ${message}`;
  const known = new Set(checkHouse(before).map(text));
  return checkHouse(after)
    .filter((problem) => problem.level === 'error' && !known.has(text(problem)))
    .map(({ code, path, value, bound, message, remedy }) => ({
      code,
      field: path.replace(new RegExp(`^${list}\\[\\d+\\]`), 'row'),
      value,
      bound,
      message,
      remedy,
    }));
}

/** A day with its year where that is not today's. */
export function sayWithYear(day: string, today: string): string {
  return day.slice(0, 4) === today.slice(0, 4) ? sayDay(day) : `${sayDay(day)} ${day.slice(0, 4)}`;
}
