// A starter begins today or later; its days are days on which starters are handled.
import { isoDay } from '../timeline/calendar.ts';
import { brewName, brewSubject, hardByBrew, plural } from './rule.ts';

export const starterDay = hardByBrew({
  id: 'starter-day',
  title: 'A starter needs its days',
  level: 'hard',
  unit: 'days',
  says: 'A starter is begun, chilled and decanted on work days or permitted evenings, and not before today.',
  at(t, b, found) {
    const { starter, first } = t.problem.days;
    // one that has been begun is a fact
    if ((t.starterLitres[b] as number) <= 0 || t.problem.brews[b]?.begun) return;
    const begins = t.starterStart[b] as number;
    if (begins < t.problem.today) found(t.problem.today - begins, b, 0);
    if (!starter[begins - first]) found(1, b, 1);
    const chill = t.starterChill[b] as number;
    if (chill >= 0 && !starter[chill - first]) found(1, b, 1);
    // decanted on the brew day
    if (chill >= 0 && !starter[(t.day[b] as number) - first]) found(1, b, 1);
  },
  subject: brewSubject,
  explain: (t, f) =>
    f.other === 0
      ? `The starter for ${brewName(t, f.subject)} would have had to begin on ${isoDay(t.starterStart[f.subject] ?? 0)}, ${plural(f.amount, 'day')} ago.`
      : `The starter for ${brewName(t, f.subject)} would be handled on a day without such work.`,
  remedy: (t, f) => `Brew ${brewName(t, f.subject)} later or pitch it without a starter.`,
});
