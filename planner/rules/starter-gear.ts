// No more starters at once than vessels, none larger than its vessel, none of dry yeast.
import { isoDay } from '../timeline/calendar.ts';
import { brewName, type HardRule, plural } from './rule.ts';

export const starterGear: HardRule = {
  id: 'starter-gear',
  title: 'Starter vessels',
  level: 'hard',
  unit: 'starters',
  says: 'No more starters stand at once than there are vessels, and none is larger than its vessel; dry yeast gets none.',
  check(t, found) {
    // counted over the whole plan, so once and not for every brew
    if (t.startersOver > 0) found(t.startersOver, -1, t.startersOverDay);
    const most = t.problem.house.starterGear.maxLitres;
    for (let i = 0; i < t.orderCount; i++) {
      const b = t.order[i] as number;
      const litres = t.starterLitres[b] as number;
      if (litres <= 0 || t.done[b]) continue;
      if (litres > most + 1e-9) found(Math.ceil(litres - most), b, 0);
      if (t.problem.yeasts[t.yeast[b] as number]?.dry) found(1, b, 1);
    }
  },
  subject: (t, f) => (f.subject < 0 ? isoDay(f.other) : brewName(t, f.subject)),
  explain: (t, f) =>
    f.subject < 0
      ? `On ${isoDay(f.other)} there ${f.amount === 1 ? 'is' : 'are'} ${plural(f.amount, 'starter')} more than the ${plural(t.problem.house.starterGear.vessels, 'vessel')}.`
      : f.other === 0
        ? `The starter for ${brewName(t, f.subject)} is larger than the vessel.`
        : `${brewName(t, f.subject)} is pitched with dry yeast, which gets no starter.`,
  remedy: () => 'Pitch more yeast without a starter, move one of the brews, or get another vessel.',
};
