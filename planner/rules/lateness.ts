// Regret: beer ready later than it is wanted.
import { isoDay } from '../timeline/calendar.ts';
import { brewName, brewSubject, costByBrew, money, plural } from './rule.ts';

export const lateness = costByBrew({
  id: 'lateness',
  title: 'Late beer',
  level: 'cost',
  follows: 'slot',
  part: 'risk',
  unit: 'money',
  weight: {
    home: 0.4,
    nano: 6,
    unit: 'currency a day and priority',
    says: 'How much a day of lateness hurts.',
    source: 'a house choice; a week late is worth a few pints at home',
  },
  says: 'Each day that a beer is ready late costs, times its priority.',
  at(t, b, weight, found) {
    const p = t.problem;
    const days = t.late[b] as number;
    if (days > 0) found(money(p, days * (p.brews[b]?.priority ?? 1) * weight), b, days);
  },
  subject: brewSubject,
  explain: (t, f) =>
    `${brewName(t, f.subject)} is ready ${plural(f.other, 'day')} after ${isoDay(t.problem.brews[f.subject]?.readyBy ?? 0)}.`,
  remedy: (t, f) => `Brew ${brewName(t, f.subject)} earlier, or want it later.`,
});
