// How much dearer a change is the closer it is to today.
import type { Problem } from '../timeline/problem.ts';

/** 1 far away, about 5 today; ten times that inside the freeze window, where only a hard rule should move things. */
export function nearness(p: Problem, day: number): number {
  const ahead = Math.max(0, day - p.today);
  return (1 + 28 / (7 + ahead)) * (ahead <= p.settings.freezeDays ? 10 : 1);
}
