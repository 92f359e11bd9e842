// Hazard: time in the cold store.
import { FRESH } from '../timeline/problem.ts';
import { brewName, brewSubject, hazardByBrew, plural } from './rule.ts';

export const oldSlurry = hazardByBrew({
  id: 'old-slurry',
  title: 'Time in the cold store',
  level: 'hazard',
  unit: 'hazard',
  weight: {
    home: 0.004,
    nano: 0.012,
    unit: 'hazard a week',
    says: 'How much a week in the cold store is risked.',
    source: 'a guess; storage advice from days to weeks (docs/science.md)',
  },
  says: 'Every week in the cold store gives strangers time to grow.',
  at(t, b, weight, found) {
    if (t.source[b] === FRESH) return;
    const age = t.ageDays[b] as number;
    if (age > 0) found((weight * age) / 7, b, age);
  },
  subject: brewSubject,
  explain: (t, f) => `${brewName(t, f.subject)} gets slurry ${plural(f.other, 'day')} old.`,
  remedy: () => 'Pitch it sooner, or from a younger harvest.',
});
