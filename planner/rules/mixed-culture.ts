// Nothing is ever pitched out of a mixed culture.
import { beerOf, brewName, brewSubject, hardByBrew, sourceBeer } from './rule.ts';

export const mixedCulture = hardByBrew({
  id: 'mixed-culture',
  title: 'Nothing out of a mixed culture',
  level: 'hard',
  unit: 'pitches',
  says: 'Yeast out of mixed-culture beer is never pitched into another beer.',
  at(t, b, found) {
    if (sourceBeer(t, b)?.souring === 'mixed') found(1, b, 0);
  },

  bars: (t, _b, source) => beerOf(t, source)?.souring === 'mixed',
  subject: brewSubject,
  explain: (t, f) =>
    `${brewName(t, f.subject)} would get the mixed culture of ${sourceBeer(t, f.subject)?.name}.`,
  remedy: () => 'Pitch it from clean beer or from fresh packs.',
});
