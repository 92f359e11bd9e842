// Regret on re-planning: a brew moved against the plan in force, dearer the closer to today.
import { isoDay } from '../timeline/calendar.ts';
import { nearness } from './nearness.ts';
import { brewDay, brewName, brewSubject, costByBrew, money, tankName } from './rule.ts';

export const moved = costByBrew({
  id: 'moved',
  title: 'Brews moved',
  level: 'cost',
  follows: 'slot',
  part: 'risk',
  unit: 'money',
  againstInForce: true,
  weight: {
    home: 2,
    nano: 25,
    unit: 'currency a move',
    says: 'How much it costs to move a brew that people have planned for.',
    source: 'a house choice',
  },
  says: 'Moving a brew against the plan in force costs, more the closer it is to today and the farther it moves.',
  at(t, b, weight, found) {
    const p = t.problem;
    const was = p.inForce[b];
    if (!was) return;
    const day = t.day[b] as number;
    const days = Math.abs(day - was.day);
    const moves = (days > 0 ? 1 + Math.min(days, 56) / 14 : 0) + (was.tank !== t.tank[b] ? 0.5 : 0);
    if (moves > 0)
      found(money(p, moves * weight * nearness(p, Math.min(day, was.day))), b, was.day);
  },
  subject: brewSubject,
  explain: (t, f) =>
    t.day[f.subject] === f.other
      ? `${brewName(t, f.subject)} changes to ${tankName(t, f.subject)}.`
      : `${brewName(t, f.subject)} moves from ${isoDay(f.other)} to ${brewDay(t, f.subject)}.`,
  remedy: (t, f) => `Pin ${brewName(t, f.subject)} where it was.`,
});
