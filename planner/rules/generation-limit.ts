// Slurry of too late a generation is not pitched.
import { givenGeneration } from '../timeline/kept.ts';
import { FRESH } from '../timeline/problem.ts';
import type { Timeline } from '../timeline/timeline.ts';
import { beerOf, brewName, brewSubject, hardByBrew, plural, sourceBeer } from './rule.ts';
import { comesBefore } from './yeast-forward.ts';

/** The limit for what brew b is pitched with: the house's, the strain's, and the one after strong beer. */
export function generationLimit(t: Timeline, b: number): number {
  return limitAfter(t, b, sourceBeer(t, b)?.ogP ?? 0);
}

function limitAfter(t: Timeline, b: number, sourceP: number): number {
  const s = t.problem.settings;
  const strain = t.problem.yeasts[t.yeast[b] as number]?.maxGeneration ?? s.maxGeneration;
  const strong = sourceP > s.strongBeerP ? s.maxGenerationAfterStrong : s.maxGeneration;
  return Math.min(s.maxGeneration, strain, strong);
}

export const generationLimitRule = hardByBrew({
  id: 'generation-limit',
  title: 'Generation limit',
  level: 'hard',
  unit: 'generations',
  says: 'Slurry past its generation limit is not pitched. A fresh pack is generation 0; slurry out of its first beer is generation 1.',
  relaxedTo: {
    home: 0.03,
    nano: 0.04,
    unit: 'hazard',
    says: 'How much more a pitch past the limit is risked.',
    source: 'a guess; common practice, no source',
  },
  at(t, b, found) {
    const over = (t.generation[b] as number) - generationLimit(t, b);
    if (over > 0) found(over, b, 0);
  },

  bars(t, b, source) {
    if (source === FRESH || !comesBefore(t, b, source)) return false;
    const nJars = t.problem.jars.length;
    const generation =
      source < nJars
        ? (t.problem.jars[source]?.generation ?? 0)
        : givenGeneration(t, source - nJars);
    return generation > limitAfter(t, b, beerOf(t, source)?.ogP ?? 0);
  },
  subject: brewSubject,
  explain: (t, f) =>
    `${brewName(t, f.subject)} would get generation ${t.generation[f.subject]}, ${plural(f.amount, 'generation')} past the limit of ${generationLimit(t, f.subject)}.`,
  remedy: () => 'Begin a new line with fresh packs.',
});
