// Regret: far more yeast than the brew needs.
import { KEPT, starterEndsB } from '../timeline/kept.ts';
import { brewName, brewSubject, costByBrew, money } from './rule.ts';

export const overPitch = costByBrew({
  id: 'over-pitch',
  title: 'Too much yeast',
  level: 'cost',
  follows: 'pitch',
  part: 'risk',
  unit: 'money',
  weight: {
    home: 1,
    nano: 10,
    unit: 'currency for each further need',
    says: 'How much it costs to pitch another whole need above one and a half.',
    source: 'a house choice; Verbelen et al. 2009: more pitch, less new growth',
  },
  says: 'Pitching more than one and a half times the need costs: less new growth, older cells.',
  at(t, b, weight, found) {
    let pitched = t.pitchedB[b] as number;
    // where nobody takes the part that could be kept of a starter, all of it is pitched
    if (t.crop[b] === KEPT && !t.draws[t.problem.jars.length + b]) {
      pitched = starterEndsB(t.problem, t, b);
    }
    const times = pitched / Math.max(1e-9, t.needB[b] as number);
    const amount = money(t.problem, Math.max(0, times - 1.5) * weight);
    if (amount > 0) found(amount, b, Math.round(times * 100));
  },
  subject: brewSubject,
  explain: (t, f) =>
    `${brewName(t, f.subject)} gets ${(f.other / 100).toFixed(1)} times the cells it needs.`,
  remedy: () => 'Use smaller packs, or pitch part of one and keep the rest cold.',
});
