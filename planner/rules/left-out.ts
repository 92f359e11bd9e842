// Wanted brews that the plan does not brew.
import { brewName, brewSubject, type LeftOutRule } from './rule.ts';

export const leftOut: LeftOutRule = {
  id: 'left-out',
  title: 'Brews left out',
  level: 'left-out',
  unit: 'priority',
  says: 'Every wanted brew that finds no place counts with its priority.',
  check(t, found) {
    for (let b = 0; b < t.placed.length; b++) {
      if (!t.placed[b]) found(t.problem.brews[b]?.priority ?? 1, b, 0);
    }
  },
  subject: brewSubject,
  explain: (t, f) => `${brewName(t, f.subject)} finds no place in this season.`,
  remedy: (t, f) => `Give ${brewName(t, f.subject)} more time, a tank or a brew day.`,
};
