// Regret: a fading style that stands ready long before it is wanted.
import { FAR } from '../timeline/problem.ts';
import { brewName, brewSubject, costByBrew, money, plural } from './rule.ts';

export const freshness = costByBrew({
  id: 'freshness',
  title: 'Freshness lost',
  level: 'cost',
  follows: 'slot',
  part: 'risk',
  unit: 'money',
  weight: {
    home: 0.15,
    nano: 3,
    unit: 'currency a day',
    says: 'How much a day of standing costs a fading style.',
    source: 'a house choice',
  },
  says: 'A style that fades costs for each day that it stands ready too long before it is wanted.',
  at(t, b, weight, found) {
    const p = t.problem;
    const brew = p.brews[b];
    if (!brew?.fades || brew.readyBy === FAR) return;
    const over = brew.readyBy - (t.ready[b] as number) - p.settings.freshDays;
    if (over > 0) found(money(p, over * weight), b, over);
  },
  subject: brewSubject,
  explain: (t, f) =>
    `${brewName(t, f.subject)} stands ready ${plural(f.other, 'day')} longer than it stays fresh.`,
  remedy: (t, f) => `Brew ${brewName(t, f.subject)} later.`,
});
