// Hazard: later generation.
import { brewName, brewSubject, hazardByBrew } from './rule.ts';

export const laterGeneration = hazardByBrew({
  id: 'later-generation',
  title: 'Later generation',
  level: 'hazard',
  unit: 'hazard',
  weight: {
    home: 0.006,
    nano: 0.004,
    unit: 'hazard a generation',
    says: 'How much each generation is risked.',
    source: 'a guess; contamination builds up over generations (Quain, policy of at most 10)',
  },
  says: 'Each generation of re-pitching adds a little to the chance that the culture has gone off.',
  at(t, b, weight, found) {
    const g = t.generation[b] as number;
    if (g > 0) found(weight * g, b, g);
  },
  subject: brewSubject,
  explain: (t, f) => `${brewName(t, f.subject)} gets generation ${f.other}.`,
  remedy: () => 'Begin a new line with fresh packs.',
});
