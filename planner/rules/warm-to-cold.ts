// Hazard: warm beer before cold.
import { fromStarter } from '../timeline/kept.ts';
import { brewName, brewSubject, hazardByBrew, sourceNameOf } from './rule.ts';

export const warmToCold = hazardByBrew({
  id: 'warm-to-cold',
  title: 'Warm beer before cold',
  level: 'hazard',
  unit: 'hazard',
  weight: {
    home: 0.003,
    nano: 0.004,
    unit: 'hazard a °C',
    says: 'How much each °C of going colder, beyond two, is risked.',
    source: 'a guess; common practice, no source',
  },
  says: 'Yeast that last worked warm is slow to start in a colder beer.',
  at(t, b, weight, found) {
    const source = t.source[b] as number;
    const from = t.problem.brews[source - t.problem.jars.length];
    const brew = t.problem.brews[b];
    if (source < t.problem.jars.length || !from || !brew || fromStarter(t, source)) return;
    const colder = from.fermentC - brew.fermentC - 2;
    if (colder > 0) found(weight * colder, b, Math.round(colder + 2));
  },
  subject: brewSubject,
  explain: (t, f) =>
    `${brewName(t, f.subject)} ferments ${f.other} °C colder than ${sourceNameOf(t, f.subject)} did.`,
  remedy: () => 'Brew the colder one first.',
});
