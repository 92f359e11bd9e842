// Brews only on brew days that are not closed.
import { isoDay } from '../timeline/calendar.ts';
import { brewDay, brewName, brewSubject, hardByBrew, plural } from './rule.ts';

export const brewDayRule = hardByBrew({
  id: 'brew-day',
  title: 'Brew days only',
  level: 'hard',
  unit: 'days',
  says: 'Beer is brewed only on the brew days of the house, never on a closed day.',
  at(t, b, found) {
    const { brew, first, count } = t.problem.days;
    const at = (t.day[b] as number) - first;
    if (brew[at]) return;
    let away = 1;
    while (away < count && !brew[at - away] && !brew[at + away]) away++;
    found(away, b, at + first);
  },
  subject: brewSubject,
  explain: (t, f) =>
    `${brewName(t, f.subject)} stands on ${isoDay(f.other)}, which is no brew day; the nearest is ${plural(f.amount, 'day')} away.`,
  remedy: (t, f) => `Move ${brewName(t, f.subject)}, or make ${brewDay(t, f.subject)} a brew day.`,
});
