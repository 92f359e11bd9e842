// Regret on re-planning: a pitch that comes from elsewhere than the plan in force said.

import { nearness } from './nearness.ts';
import { brewName, brewSubject, costByBrew, money, sourceName, sourceNameOf } from './rule.ts';

export const sourceChanged = costByBrew({
  id: 'source-changed',
  title: 'Sources changed',
  level: 'cost',
  follows: 'source',
  part: 'risk',
  unit: 'money',
  againstInForce: true,
  weight: {
    home: 1,
    nano: 12,
    unit: 'currency a change',
    says: 'How much it costs to pitch a brew from elsewhere than planned.',
    source: 'a house choice',
  },
  says: 'Pitching a brew from another source than the plan in force said costs, more the closer it is to today.',
  at(t, b, weight, found) {
    const p = t.problem;
    const was = p.inForce[b];
    if (!was || was.source === t.source[b]) return;
    found(money(p, weight * nearness(p, t.day[b] as number)), b, was.source);
  },
  subject: brewSubject,
  explain: (t, f) =>
    `${brewName(t, f.subject)} is pitched from ${sourceNameOf(t, f.subject)} instead of ${sourceName(t, f.other)}.`,
  remedy: (t, f) => `Pin the source of ${brewName(t, f.subject)}.`,
});
