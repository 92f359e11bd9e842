// Nothing pitched that came out of beer with fruit, spice, smoke or the like.
import { beerOf, brewName, brewSubject, hardByBrew, sourceBeer } from './rule.ts';

export const additions = hardByBrew({
  id: 'additions',
  title: 'Nothing out of fruit, spice or smoke',
  level: 'hard',
  unit: 'pitches',
  says: 'Yeast out of beer with fruit, spice, smoke or the like is not pitched again.',
  relaxedTo: {
    home: 0.08,
    nano: 0.1,
    unit: 'hazard',
    says: 'How much more a pitch out of such a beer is risked.',
    source: 'a guess; common practice, no source',
  },
  at(t, b, found) {
    const beer = sourceBeer(t, b);
    if (beer && beer.additions.length > 0) found(1, b, 0);
  },

  bars: (t, _b, source) => (beerOf(t, source)?.additions.length ?? 0) > 0,
  subject: brewSubject,
  explain: (t, f) => {
    const beer = sourceBeer(t, f.subject);
    return `${brewName(t, f.subject)} would get yeast out of ${beer?.name}, brewed with ${beer?.additions.join(', ')}.`;
  },
  remedy: () => 'Pitch it from a plain beer or from fresh packs.',
});
