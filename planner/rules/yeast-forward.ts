// Yeast flows forward: nothing is drawn before it is there.

import { isoDay } from '../timeline/calendar.ts';
import { FAR, FRESH } from '../timeline/problem.ts';
import { brewName, brewSubject, eachChoice, type HardRule, plural, sourceNameOf } from './rule.ts';

export const yeastForward: HardRule = {
  id: 'yeast-forward',
  title: 'Yeast flows forward',
  level: 'hard',
  unit: 'days',
  says: 'Slurry is drawn only after it was harvested and has settled, a pack only once it can have arrived.',
  check(t, found) {
    eachChoice(t, (b) => {
      const early = t.drawnEarly[b] as number;
      if (early > 0) found(Math.min(early, 1000), b, 0);
    });
  },

  bars(t, b, source, useDay) {
    const p = t.problem;
    if (source === FRESH) {
      const yeast = p.yeasts[t.yeast[b] as number];
      return useDay < p.today + p.house.orderLeadDays && yeast?.row.packsOnHand === 0;
    }
    const nJars = p.jars.length;
    if (source < nJars) {
      const jar = p.jars[source];
      return (
        !jar || jar.gone || useDay < Math.max(p.today, jar.harvestedDay + p.house.store.settleDays)
      );
    }
    const from = source - nJars;
    return (
      !t.placed[from] ||
      (t.day[from] as number) >= (t.day[b] as number) ||
      useDay < Math.max(p.today, t.usableFrom[from] as number)
    );
  },
  subject: brewSubject,
  explain: (t, f) => {
    const b = f.subject;
    const name = brewName(t, b);
    if ((t.drawnEarly[b] as number) >= FAR)
      return `${name} has no yeast: ${sourceNameOf(t, b)} cannot be had or cannot give enough.`;
    return t.source[b] === FRESH
      ? `Packs for ${name} are needed on ${isoDay(t.useDay[b] as number)}, ${plural(f.amount, 'day')} before an order could arrive.`
      : `${name} wants ${sourceNameOf(t, b)} on ${isoDay(t.useDay[b] as number)}, ${plural(f.amount, 'day')} before it can be drawn.`;
  },
  remedy: (t, f) => `Brew ${brewName(t, f.subject)} later, or pitch it from another source.`,
};
