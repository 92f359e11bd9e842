// Regret: far more yeast than the brew needs.
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
    const times = (t.pitchedB[b] as number) / Math.max(1e-9, t.needB[b] as number);
    const amount = money(t.problem, Math.max(0, times - 1.5) * weight);
    if (amount > 0) found(amount, b, Math.round(times * 100));
  },
  subject: brewSubject,
  explain: (t, f) =>
    `${brewName(t, f.subject)} gets ${(f.other / 100).toFixed(1)} times the cells it needs.`,
  remedy: () => 'Use smaller packs, or pitch part of one and keep the rest cold.',
});
