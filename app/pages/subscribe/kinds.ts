// The kinds of task in words.
import type { TaskKind } from '../../../planner/index.ts';

export const KIND_WORDS: readonly (readonly [TaskKind, string])[] = [
  ['order', 'Order yeast'],
  ['check-jar', 'Check the jar'],
  ['starter', 'Make the starter'],
  ['chill-decant', 'Chill and decant'],
  ['take-out', 'Take out of the cold'],
  ['brew-pitch', 'Brew and pitch'],
  ['dry-hop', 'Dry hop'],
  ['crash', 'Cold crash'],
  ['harvest', 'Harvest'],
  ['read-volume', 'Read the settled volume'],
  ['package', 'Package'],
  ['clean', 'Clean'],
  ['discard-by', 'Discard'],
];

/** What a feed holds, in words. */
export function kindsWords(kinds: readonly TaskKind[] | null): string {
  if (kinds === null) return 'All tasks';
  const words = KIND_WORDS.filter(([kind]) => kinds.includes(kind)).map(([, says]) => says);
  return `Only: ${words.join(', ').toLowerCase()}`;
}
