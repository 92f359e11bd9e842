// Names in news: does the house have such a brew, tank or jar, and what it has if not.
import { listed } from '../../tasks/words.ts';
import type { Refusal } from '../refusal.ts';

/** A refusal if a name is not among those there are, with the nearest ones; else nothing. */
export function unknown(
  what: 'brew' | 'tank' | 'jar',
  name: string,
  known: readonly string[],
): Refusal[] {
  if (known.includes(name)) return [];
  const near = nearest(name, known);
  return [
    {
      code: `unknown-${what}`,
      field: what,
      value: name,
      bound: `a ${what} of this season`,
      message: `There is no ${what} called ${name} in this season.`,
      remedy: near.length > 0 ? `Did you mean ${listed(near)}?` : `Add the ${what} first.`,
    },
  ];
}

/** Up to three names that begin alike, whatever their case. */
function nearest(name: string, known: readonly string[]): string[] {
  const start = name.trim().toLowerCase().slice(0, 3);
  return known.filter((one) => one.toLowerCase().startsWith(start)).slice(0, 3);
}
