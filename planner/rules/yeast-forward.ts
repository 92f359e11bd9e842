// Yeast flows forward: nothing is drawn before it is there.

import { isoDay } from '../timeline/calendar.ts';
import { FRESH } from '../timeline/problem.ts';
import type { Timeline } from '../timeline/timeline.ts';
import { brewName, brewSubject, hardByBrew, plural, sourceNameOf } from './rule.ts';

/** Whether there is a source at all for brew b: packs, a jar, or the harvest of a brew begun before it. */
export function comesBefore(t: Timeline, b: number, source: number): boolean {
  const from = source - t.problem.jars.length;
  return from < 0 || (t.placed[from] === 1 && (t.day[from] as number) < (t.day[b] as number));
}

/** Days that count for what is not there at all. */
const NOT_AT_ALL = 1000;

export const yeastForward = hardByBrew({
  id: 'yeast-forward',
  title: 'Yeast flows forward',
  level: 'hard',
  unit: 'days',
  says: 'Slurry is drawn only after it was harvested and has settled, a pack only once it can have arrived.',
  at(t, b, found) {
    const early = t.drawnEarly[b] as number;
    if (early > 0) found(Math.min(early, NOT_AT_ALL), b, 0);
  },

  bars(t, b, source, useDay) {
    const p = t.problem;
    if (source === FRESH) {
      const yeast = p.yeasts[t.yeast[b] as number];
      return useDay < p.today + p.house.orderLeadDays && yeast?.handCount === 0;
    }
    const nJars = p.jars.length;
    if (source < nJars) {
      const jar = p.jars[source];
      return (
        !jar || jar.gone || useDay < Math.max(p.today, jar.harvestedDay + p.house.store.settleDays)
      );
    }
    const from = source - nJars;
    return !comesBefore(t, b, source) || useDay < Math.max(p.today, t.usableFrom[from] as number);
  },
  subject: brewSubject,
  explain: (t, f) => {
    const b = f.subject;
    const name = brewName(t, b);
    if (f.amount >= NOT_AT_ALL)
      return `${name} has no yeast: ${sourceNameOf(t, b)} cannot be had or cannot give enough.`;
    return t.source[b] === FRESH
      ? `Packs for ${name} are needed on ${isoDay(t.useDay[b] as number)}, ${plural(f.amount, 'day')} before an order could arrive.`
      : `${name} wants ${sourceNameOf(t, b)} on ${isoDay(t.useDay[b] as number)}, ${plural(f.amount, 'day')} before it can be drawn.`;
  },
  remedy: (t, f) => `Brew ${brewName(t, f.subject)} later, or pitch it from another source.`,
});
