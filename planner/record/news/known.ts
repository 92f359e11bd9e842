// Names in news: does the house have such a brew, tank or jar, and which one was most likely meant if not.
import { nearest } from '../../model/checks/report.ts';
import type { Refusal } from '../refusal.ts';

/** A refusal if a name is not among those there are; else nothing. */
export function unknown(
  what: 'brew' | 'tank' | 'jar',
  name: string,
  known: readonly string[],
): Refusal[] {
  if (known.includes(name)) return [];
  const meant = nearest(name, known);
  return [
    {
      code: `unknown-${what}`,
      field: what,
      value: name,
      bound: `a ${what} of this season`,
      message: `There is no ${what} called ${name} in this season.`,
      remedy: meant === null ? `Add the ${what} to the season first.` : `Did you mean ${meant}?`,
    },
  ];
}
