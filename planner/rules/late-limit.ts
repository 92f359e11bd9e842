// A beer that cannot be ready soon enough after it is wanted is left out rather than brewed.
import { isoDay } from '../timeline/calendar.ts';
import { brewName, brewSubject, hardByBrew, plural } from './rule.ts';

export const lateLimit = hardByBrew({
  id: 'late-limit',
  title: 'Not too late to matter',
  level: 'hard',
  unit: 'days',
  says: 'A beer is not brewed if it would be ready too long after it is wanted.',
  at(t, b, found) {
    const most = t.problem.settings.maxLateDays;
    const over = (t.late[b] as number) - most;
    if (over > 0) found(over, b, 0);
  },
  subject: brewSubject,
  explain: (t, f) =>
    `${brewName(t, f.subject)} would be ready on ${isoDay(t.ready[f.subject] ?? 0)}, ${plural(f.amount, 'day')} past the limit of ${t.problem.settings.maxLateDays} days after ${isoDay(t.problem.brews[f.subject]?.readyBy ?? 0)}.`,
  remedy: (t, f) =>
    `Want ${brewName(t, f.subject)} later, brew it earlier, or raise the limit of late days.`,
});
