// No more jars in the cold store at once than it holds.
import { isoDay } from '../timeline/calendar.ts';
import { type HardRule, plural } from './rule.ts';

export const shelfSpace: HardRule = {
  id: 'shelf-space',
  title: 'Room on the shelf',
  level: 'hard',
  unit: 'jars',
  says: 'No more jars stand in the cold store at once than it holds.',
  check(t, found) {
    if (t.shelfOver > 0) found(t.shelfOver, 0, t.shelfOverDay);
  },
  subject: (_t, f) => isoDay(f.other),
  explain: (t, f) =>
    `On ${isoDay(f.other)} there ${f.amount === 1 ? 'is' : 'are'} ${plural(f.amount, 'jar')} more than the ${t.problem.house.store.maxJars} that the cold store holds.`,
  remedy: () => 'Keep fewer jars, use larger ones, or make room in the cold store.',
};
