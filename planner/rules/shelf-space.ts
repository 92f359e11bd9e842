// No more jars in the cold store at once than it holds.
import { isoDay } from '../timeline/calendar.ts';
import type { Timeline } from '../timeline/timeline.ts';
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
    `On ${isoDay(f.other)} there ${f.amount === 1 ? 'is' : 'are'} ${plural(f.amount, 'jar')} more than the ${t.problem.house.store.maxJars} that the cold store holds.${reserves(t, f.other)}`,
  remedy: () => 'Keep fewer jars, use larger ones, or make room in the cold store.',
};

/** The reserves that stand among them: what a house may give up first. */
function reserves(t: Timeline, day: number): string {
  const names = t.problem.brews.flatMap(({ name }, b) =>
    (t.reserveUntil[b] as number) > day && (t.harvestDay[b] as number) <= day ? [name] : [],
  );
  return names.length === 0 ? '' : ` In reserve then: yeast of ${names.join(', ')}.`;
}
