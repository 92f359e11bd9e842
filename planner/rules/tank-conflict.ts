// One brew at a time in a tank, its turnaround included, and none while the tank is out of use.

import { isoDay } from '../timeline/calendar.ts';
import { FAR } from '../timeline/problem.ts';
import { brewName, brewSubject, type HardRule, plural, tankName } from './rule.ts';

export const tankConflict: HardRule = {
  id: 'tank-conflict',
  title: 'One brew at a time in a tank',
  level: 'hard',
  unit: 'days',
  says: 'A tank holds one beer at a time, from the brew day until it is emptied and turned around.',
  check(t, found) {
    const { tanks } = t.problem;
    const { tankUntil, tankLast } = t;
    tankUntil.fill(-FAR);
    for (let i = 0; i < t.orderCount; i++) {
      const b = t.order[i] as number;
      const k = t.tank[b] as number;
      const day = t.day[b] as number;
      const until = tankUntil[k] as number;
      if (day < until) {
        const last = tankLast[k] as number;
        if (!(t.done[b] && t.done[last])) found(until - day, b, last);
      }
      const free = t.free[b] as number;
      if (free > until) {
        tankUntil[k] = free;
        tankLast[k] = b;
      }
      const out = tanks[k]?.out;
      if (!out || out.length === 0 || t.done[b]) continue;
      for (const o of out) {
        const from = Math.max(day, o.from);
        const to = Math.min(t.emptied[b] as number, o.to);
        if (from <= to) found(to - from + 1, b, -1);
      }
    }
  },
  subject: brewSubject,
  explain: (t, f) =>
    f.other < 0
      ? `${tankName(t, f.subject)} is out of use for ${plural(f.amount, 'day')} of ${brewName(t, f.subject)}.`
      : `${tankName(t, f.subject)} holds ${brewName(t, f.other)} until ${isoDay(t.free[f.other] ?? 0)}, ${plural(f.amount, 'day')} into ${brewName(t, f.subject)}.`,
  remedy: (t, f) => `Move ${brewName(t, f.subject)} to another day or tank.`,
};
