// Nothing pitched that came out of kettle-soured beer.
import { beerOf, brewName, brewSubject, hardByBrew, sourceBeer } from './rule.ts';

export const kettleSoured = hardByBrew({
  id: 'kettle-soured',
  title: 'Nothing out of soured beer',
  level: 'hard',
  unit: 'pitches',
  says: 'Yeast out of kettle-soured beer is not pitched again.',
  relaxedTo: {
    home: 0.15,
    nano: 0.2,
    unit: 'hazard',
    says: 'How much more a pitch out of kettle-soured beer is risked.',
    source: 'a guess; common practice, no source',
  },
  at(t, b, found) {
    if (sourceBeer(t, b)?.souring === 'kettle') found(1, b, 0);
  },

  bars: (t, _b, source) => beerOf(t, source)?.souring === 'kettle',
  subject: brewSubject,
  explain: (t, f) =>
    `${brewName(t, f.subject)} would get yeast that has been through soured wort (${sourceBeer(t, f.subject)?.name}).`,
  remedy: () => 'Pitch it from a beer that was not soured, or from fresh packs.',
});
