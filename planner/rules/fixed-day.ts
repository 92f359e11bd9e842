// A brew with a fixed or pinned day is on that day.
import { isoDay } from '../timeline/calendar.ts';
import type { BrewData } from '../timeline/problem.ts';
import { brewDay, brewName, brewSubject, hardByBrew, plural } from './rule.ts';

const held = (brew: BrewData | undefined): number =>
  !brew ? -1 : brew.pinDay >= 0 ? brew.pinDay : brew.fixedDay;

export const fixedDay = hardByBrew({
  id: 'fixed-day',
  title: 'Fixed days hold',
  level: 'hard',
  unit: 'days',
  says: 'A brew with a fixed or pinned day is brewed on that day.',
  at(t, b, found) {
    const day = held(t.problem.brews[b]);
    if (day >= 0 && day !== t.day[b]) found(Math.abs(day - (t.day[b] as number)), b, day);
  },
  subject: brewSubject,
  explain: (t, f) =>
    `${brewName(t, f.subject)} is fixed to ${isoDay(f.other)} but stands on ${brewDay(t, f.subject)}, ${plural(f.amount, 'day')} off.`,
  remedy: (t, f) => `Change the fixed day of ${brewName(t, f.subject)}, or take the pin out.`,
});
