// Each brew inside its own window and the season, and never in the past.
import { isoDay } from '../timeline/calendar.ts';
import { brewDay, brewName, brewSubject, hardByBrew, plural } from './rule.ts';

export const brewWindow = hardByBrew({
  id: 'brew-window',
  title: "Inside the brew's window",
  level: 'hard',
  unit: 'days',
  says: 'A brew is not brewed before its first possible day, outside the season, or in the past.',
  at(t, b, found) {
    const p = t.problem;
    const day = t.day[b] as number;
    const early = (p.brews[b]?.earliest ?? 0) - day;
    if (early > 0) found(early, b, 0);
    else if (day > p.to) found(day - p.to, b, 1);
  },
  subject: brewSubject,
  explain: (t, f) =>
    f.other === 0
      ? `${brewName(t, f.subject)} on ${brewDay(t, f.subject)} is ${plural(f.amount, 'day')} before ${isoDay(t.problem.brews[f.subject]?.earliest ?? 0)}, its first possible day.`
      : `${brewName(t, f.subject)} on ${brewDay(t, f.subject)} is ${plural(f.amount, 'day')} after the season's last brew day.`,
  remedy: (t, f) =>
    f.other === 0
      ? `Brew ${brewName(t, f.subject)} later, or give it an earlier first day.`
      : 'Let the season end later.',
});
