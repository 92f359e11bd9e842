// Cash: each delivery of packs.
import { isoDay } from '../timeline/calendar.ts';
import { type CostRule, money } from './rule.ts';

export const deliveries: CostRule = {
  id: 'deliveries',
  title: 'Deliveries',
  level: 'cost',
  follows: 'plan',
  part: 'cash',
  unit: 'money',
  weight: null,
  says: 'Each delivery costs; packs wanted close together share one.',
  check(t, _weight, found) {
    const each = money(t.problem, t.problem.house.deliveryCost);
    if (each === 0) return;
    for (let i = 0; i < t.deliveryCount; i++) found(each, i, t.deliveryDay[i] as number);
  },
  subject: (_t, f) => isoDay(f.other),
  explain: (_t, f) => `A delivery that arrives by ${isoDay(f.other)}.`,
  remedy: () => 'Bring fresh pitches closer together so that they share a delivery.',
};
