// Hazard: strong beer before light.
import { brewName, brewSubject, hazardByBrew, sourceBeer } from './rule.ts';

export const strongToLight = hazardByBrew({
  id: 'strong-to-light',
  title: 'Strong beer before light',
  level: 'hazard',
  unit: 'hazard',
  weight: {
    home: 0.006,
    nano: 0.008,
    unit: 'hazard a °P',
    says: 'How much each °P that the source was stronger is risked.',
    source: 'a guess; direction: harvest from low gravity, light before strong',
  },
  says: 'Yeast out of a stronger beer is tired for a lighter one.',
  at(t, b, weight, found) {
    const beer = sourceBeer(t, b);
    const brew = t.problem.brews[b];
    if (!beer || !brew) return;
    const over = beer.ogP - brew.ogP;
    if (over > 0) found(weight * over, b, Math.round(over * 10));
  },
  subject: brewSubject,
  explain: (t, f) =>
    `${sourceBeer(t, f.subject)?.name} was ${(f.other / 10).toFixed(1)} °P stronger than ${brewName(t, f.subject)}.`,
  remedy: () => 'Brew the lighter one first.',
});
